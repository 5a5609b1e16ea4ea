import type { ConditionalRow, Row } from '../model/row.ts';

/** Which row applies in every configuration of the parents: the structure of a table, without its numbers. */
export interface FirstMatches {
  readonly parents: readonly string[];
  /** Row index per configuration, last parent fastest. */
  readonly rowOf: Int16Array;
}

/** Parents of a table; each state as the ids it stands for (one, or two causes at once). */
export type Parents = readonly { readonly id: string; readonly states: readonly (readonly string[])[] }[];

/** Finds for every configuration of the parents the first row that matches. Rows end with a default, so one always does.
 * A state that stands for several (two causes at once) matches where any of them does. */
export function firstMatches(parents: Parents, rows: readonly ConditionalRow[]): FirstMatches {
  const configurations = parents.reduce((product, parent) => product * parent.states.length, 1);
  const rowOf = new Int16Array(configurations);
  const accepts = rows.map((row) =>
    parents.map((parent) =>
      parent.states.map((members) => {
        const wanted = row.when[parent.id];
        return wanted === undefined || members.some((member) => wanted.includes(member));
      }),
    ),
  );
  const digits = new Int32Array(parents.length);
  for (let configuration = 0; configuration < configurations; configuration += 1) {
    rowOf[configuration] = accepts.findIndex((row) => row.every((states, p) => states[digits[p]!]));
    for (let p = parents.length - 1; p >= 0; p -= 1) {
      digits[p]! += 1;
      if (digits[p]! < parents[p]!.states.length) break;
      digits[p] = 0;
    }
  }
  return { parents: parents.map((parent) => parent.id), rowOf };
}

/** The table P(state | parents) that rows of this structure mean: length = configurations times states, own state fastest. */
export function fillTable({ rowOf }: FirstMatches, rows: readonly Row[], states: readonly string[]): Float64Array {
  const numbers = rows.map((row) => states.map((state) => row.p[state] ?? 0));
  const count = states.length;
  const table = new Float64Array(rowOf.length * count);
  rowOf.forEach((row, configuration) => table.set(numbers[row]!, configuration * count));
  return table;
}
