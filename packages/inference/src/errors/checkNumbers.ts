import { InferenceOptionError } from './inferenceOptionError.ts';

/** A number that came from outside, and what it has to be. One that is `undefined` was left out. */
export type NumberRule = readonly [path: string, value: unknown, least: number, most: number, whole?: boolean];

/** Looks at numbers that came from outside. @throws InferenceOptionError with every one that is wrong */
export function checkNumbers(...rules: readonly NumberRule[]): void {
  const [first, ...others] = rules.flatMap(([path, value, least, most, whole]) => {
    const isNumber = typeof value === 'number';
    if (value === undefined || (isNumber && value >= least && value <= most && (!whole || value % 1 === 0))) return [];
    const kind = `a ${whole ? 'whole ' : ''}number from ${least} to ${most}`;
    const message = `found ${isNumber ? value : `a ${typeof value}`}, expected ${kind}`;
    return [{ code: 'option-invalid', path, message, hint: `give ${kind}` }];
  });
  if (first !== undefined) throw new InferenceOptionError([first, ...others]);
}
