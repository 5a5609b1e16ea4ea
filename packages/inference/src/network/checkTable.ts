import type { VariableDefinition } from './network.ts';

/** Checks P(variable | parents) and returns it as a copy whose rows sum to one (each divided by its left-to-right sum).
 * @param path JSON Pointer of the variable. @param report is told of every fault (code, path, message, hint), each naming the row by the parents' states. */
export function checkTable(
  variable: VariableDefinition,
  parents: readonly VariableDefinition[],
  path: string,
  rowTolerance: number,
  report: (code: string, path: string, message: string, hint: string) => void,
): Float64Array {
  const own = variable.states.length;
  const rows = parents.reduce((product, parent) => product * parent.states.length, 1);
  if (variable.table.length !== rows * own) {
    const shape = [...parents.map((parent) => parent.states.length), own].join(' x ');
    report(
      'table-length',
      `${path}/table`,
      `the table of '${variable.name}' has ${variable.table.length} entries, expected ${shape} = ${rows * own}`,
      'parents in the order given, own state fastest',
    );
    return new Float64Array(0);
  }
  const table = Float64Array.from(variable.table);
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    let sound = true;
    for (let state = 0; state < own; state += 1) {
      const at = row * own + state;
      const value = table[at]!;
      sum += value;
      const finite = Number.isFinite(value);
      if (finite && value >= 0) continue;
      sound = false;
      report(
        finite ? 'table-negative' : 'table-not-finite',
        `${path}/table/${at}`,
        `P(${variable.name} = ${variable.states[state]}${condition(parents, row)}) is ${value}`,
        'a probability is a number from 0 to 1',
      );
    }
    if (!sound) continue;
    if (!(Math.abs(sum - 1) <= rowTolerance)) {
      report(
        'row-not-one',
        `${path}/table/${row * own}`,
        `P(${variable.name}${condition(parents, row)}) sums to ${Number(sum.toPrecision(12))}, expected 1`,
        'correct the row, or raise rowTolerance if this is rounding',
      );
    } else if (sum !== 1) {
      for (let state = 0; state < own; state += 1) table[row * own + state]! /= sum;
    }
  }
  return table;
}

function condition(parents: readonly VariableDefinition[], row: number): string {
  let rest = row;
  const terms: string[] = [];
  for (let at = parents.length - 1; at >= 0; at -= 1) {
    const parent = parents[at]!;
    terms.unshift(`${parent.name} = ${parent.states[rest % parent.states.length]}`);
    rest = Math.floor(rest / parent.states.length);
  }
  return terms.length === 0 ? '' : ` | ${terms.join(', ')}`;
}
