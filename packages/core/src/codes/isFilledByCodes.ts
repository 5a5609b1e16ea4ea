const testsFilledByCodes = [
  'read-misfire-codes',
  'read-circuit-codes',
  'read-mixture-codes',
  'read-cam-codes',
] as const;

/** A test whose result a list of trouble codes gives; a model has those it knows. */
export type TestFilledByCodes = (typeof testsFilledByCodes)[number];

/** Whether a list of trouble codes gives the result of a test, see `observationsFromCodes`. @param test its id.
 * @example isFilledByCodes('read-misfire-codes') // true */
export function isFilledByCodes(test: string): test is TestFilledByCodes {
  return testsFilledByCodes.some((one) => one === test);
}
