/** Every name a saved case can use of a model: tests with outcomes and readings, intake features with values, causes, repairs, access, equipment.
 * @param {any} model @returns {Record<string, string>[]} */
export function partNames({ tests, context, causes, repairs, access, equipment }) {
  return [
    ...tests.flatMap((/** @type {any} */ { id: test, outcomes, readings = [] }) => [
      { test },
      ...outcomes.map((/** @type {any} */ { id }) => ({ test, outcome: id })),
      ...readings.map((/** @type {any} */ { id }) => ({ test, reading: id })),
    ]),
    ...context.flatMap((/** @type {any} */ { id: feature, values }) => [
      { feature },
      ...values.map((/** @type {any} */ { id }) => ({ feature, value: id })),
    ]),
    ...Object.entries({ cause: causes, repair: repairs, access, equipment }).flatMap(([kind, list]) =>
      list.map((/** @type {any} */ { id }) => ({ [kind]: id })),
    ),
  ];
}
