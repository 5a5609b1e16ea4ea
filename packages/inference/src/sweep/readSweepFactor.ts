import type { InferenceProblem } from '../errors/inferenceError.ts';
import { QueryError } from '../errors/queryError.ts';
import type { CompiledSweep, LikelihoodFactor, TargetTable } from './sweep.ts';
import { splitByRoot, type SweepFactor } from './sweepFactor.ts';
import type { TargetRecord } from './targetRecord.ts';
import { variablePositions } from '../network/variablePositions.ts';

/** Checks a likelihood factor once per object and returns it by position, scaled so that its largest entry is one.
 * @param path JSON Pointer for messages. @throws QueryError */
export function readLikelihood(sweep: CompiledSweep, factor: LikelihoodFactor, path: string): SweepFactor {
  const known = sweep.likelihoods.get(factor);
  if (known !== undefined) return known;
  const variables = variablePositions(sweep.network, factor.variables, `${path}/variables`);
  checkValues(factor.values, size(sweep, variables), `${path}/values`);
  const checked = splitByRoot(variables, factor.values, 1, sweep.root, sweep.cardinalities, true);
  sweep.likelihoods.set(factor, checked);
  return checked;
}

/** Checks a target once per object and returns its table by parents' positions.
 * @param path JSON Pointer for messages. @throws QueryError */
export function readTarget(sweep: CompiledSweep, target: TargetTable, path: string): TargetRecord {
  const known = sweep.targets.get(target);
  if (known !== undefined) return known;
  const variables = variablePositions(sweep.network, target.parents, `${path}/parents`);
  const rows = size(sweep, variables);
  const { states, table } = target;
  if (!Number.isInteger(states) || states < 1)
    fail('target-length', `${path}/states`, `${states} states`, 'a child has at least one state');
  checkValues(table, rows * states, `${path}/table`, 'target-length');
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    for (let state = 0; state < states; state += 1) sum += table[row * states + state]!;
    if (!(Math.abs(sum - 1) <= 1e-6))
      fail(
        'target-row-not-one',
        `${path}/table/${row * states}`,
        `row ${row} of '${target.id}' sums to ${sum}`,
        'every row sums to one',
      );
  }
  const isParent = new Uint8Array(sweep.cardinalities.length);
  for (const variable of variables) isParent[variable] = 1;
  const split = splitByRoot(variables, table, states, sweep.root, sweep.cardinalities, false);
  const checked = {
    ...split,
    states,
    isParent,
    arrangements: new Map<string, Float64Array>(),
    composed: new Map<number, TargetRecord | null>(),
  };
  sweep.targets.set(target, checked);
  return checked;
}

function size(sweep: CompiledSweep, variables: readonly number[]): number {
  return variables.reduce((product, variable) => product * sweep.cardinalities[variable]!, 1);
}

function checkValues(values: Float64Array, length: number, path: string, code = 'factor-length'): void {
  if (values.length !== length)
    fail(code, path, `${values.length} entries, expected ${length}`, 'variables in the order given, last fastest');
  for (let at = 0; at < length; at += 1) {
    const value = values[at]!;
    if (!(value >= 0 && value < Infinity))
      fail('factor-invalid', `${path}/${at}`, `entry ${value}`, 'entries are finite and not negative');
  }
}

function fail(code: string, path: string, message: string, hint: string): never {
  const problem: InferenceProblem = { code, path, message, hint };
  throw new QueryError([problem]);
}
