import type { LikelihoodFactor, TargetTable } from '@faultodds/inference/sweeps';
import { sweepModel } from '../compiled/sweepModel.ts';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import type { Configurations } from './decisionProblem.ts';

// As many as a bound can look at thousands of times.
const KEPT = 160;
// As many of the most probable are looked at for others that no test tells apart.
const COMPARED = 1000;
// Configurations rarer than this, given their cause and before the evidence, are not walked.
const RAREST = 1e-4;

interface Found {
  readonly cause: number;
  readonly states: Int32Array;
  readonly weight: number;
}

/** The most probable configurations of a case: cause and state of every mechanism, with their exact probability given everything on
 * record. States that no test tells apart are one configuration. */
export function compileConfigurations(
  compiled: CompiledModel,
  onRecord: readonly LikelihoodFactor[],
  posterior: Float64Array,
  tests: readonly CompiledTest[],
): Configurations {
  const { network, root } = compiled.sweep;
  const { logEvidenceGivenRoot } = sweepModel(compiled, { likelihoods: onRecord, targets: [] });
  const order = network.topologicalOrder.filter((variable) => variable !== root);
  const states = new Int32Array(network.variables.length);
  const likelihoods = onRecord.map((factor) => ({
    values: factor.values,
    variables: factor.variables.map((name) => network.indexOf.get(name)!),
  }));
  const found: Found[] = [];

  const indexIn = (variables: readonly number[], of: Int32Array): number => {
    let index = 0;
    for (const variable of variables) index = index * network.variables[variable]!.states.length + of[variable]!;
    return index;
  };
  const walk = (level: number, chance: number, cause: number): void => {
    if (chance < RAREST) return;
    const at = order[level];
    if (at === undefined) {
      let weight = (posterior[cause]! * chance) / Math.exp(logEvidenceGivenRoot[cause]!);
      for (const { variables, values } of likelihoods) weight *= values[indexIn(variables, states)]!;
      found.push({ cause, states: states.slice(), weight });
      return;
    }
    const variable = network.variables[at]!;
    const row = indexIn(variable.parents, states) * variable.states.length;
    for (let s = 0; s < variable.states.length; s += 1) {
      states[at] = s;
      walk(level + 1, chance * variable.table[row + s]!, cause);
    }
  };
  posterior.forEach((p, cause) => {
    if (p < RAREST) return;
    states[root] = cause;
    walk(0, 1, cause);
  });
  const rowOf = ({ parents, table, states: outcomes }: TargetTable): ((of: Int32Array) => number) => {
    const variables = parents.map((name) => network.indexOf.get(name)!);
    const first = new Map<string, number>();
    const same = Int32Array.from({ length: table.length / outcomes }, (_, row) => {
      const numbers = table.slice(row * outcomes, (row + 1) * outcomes).join();
      if (!first.has(numbers)) first.set(numbers, row);
      return first.get(numbers)!;
    });
    return (of) => same[indexIn(variables, of)]!;
  };
  const rowsOf = tests.map(({ table }) => rowOf(table));
  const distinct = new Map<string, { cause: number; rows: Int32Array; weight: number }>();
  found.sort((a, b) => b.weight - a.weight);
  for (const { cause, states: of, weight } of found.slice(0, COMPARED)) {
    if (weight <= 0) break;
    const rows = Int32Array.from(rowsOf, (row) => row(of));
    const key = `${cause}:${rows.join()}`;
    const already = distinct.get(key);
    if (already === undefined) distinct.set(key, { cause, rows, weight });
    else already.weight += weight;
  }
  const kept = [...distinct.values()].sort((a, b) => b.weight - a.weight).slice(0, KEPT);

  const likelihoodsOf = (test: number): Float64Array => {
    const { table, states: outcomes } = tests[test]!.table;
    return Float64Array.from({ length: kept.length * outcomes }, (_, at) => {
      const o = at % outcomes;
      return table[kept[(at - o) / outcomes]!.rows[test]! * outcomes + o]!;
    });
  };
  const known = new Map<number, Float64Array>();
  return {
    cause: Int32Array.from(kept, ({ cause }) => cause),
    weight: Float64Array.from(kept, ({ weight }) => weight),
    outcomeGiven: (test) => {
      const already = known.get(test) ?? likelihoodsOf(test);
      known.set(test, already);
      return already;
    },
  };
}
