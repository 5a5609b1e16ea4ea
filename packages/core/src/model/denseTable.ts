import type { ConditionalRow } from './model.ts';

/** The table that first-match rows mean: P(state | parents), parents in the order given, own state fastest.
 * Length = product of the parents' numbers of states times the number of own states. */
export function denseTable(
  parents: readonly { readonly id: string; readonly states: readonly string[] }[],
  states: readonly string[],
  rows: readonly ConditionalRow[],
): Float64Array {
  const configurations = parents.reduce((product, parent) => product * parent.states.length, 1);
  const table = new Float64Array(configurations * states.length);
  const matches = rows.map((row) =>
    parents.map((parent) => parent.states.map((state) => row.when[parent.id]?.includes(state) ?? true)),
  );
  const digits = new Int32Array(parents.length);
  for (let configuration = 0; configuration < configurations; configuration += 1) {
    const found = matches.findIndex((match) => match.every((accepts, p) => accepts[digits[p]!]));
    const row = rows[found];
    states.forEach((state, s) => {
      table[configuration * states.length + s] = row?.p[state] ?? 0;
    });
    for (let p = parents.length - 1; p >= 0; p -= 1) {
      digits[p]! += 1;
      if (digits[p]! < parents[p]!.states.length) break;
      digits[p] = 0;
    }
  }
  return table;
}
