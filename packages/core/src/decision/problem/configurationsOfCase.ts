import { sweepRoot, type LikelihoodFactor, type TargetTable } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../../model/compiledModel.ts';
import type { Configurations } from './decisionProblem.ts';

// As many as a bound can look at thousands of times.
const KEPT = 160;
// Configurations rarer than this, given their cause and before the evidence, are not walked.
const RAREST = 1e-4;

interface Found {
  readonly cause: number;
  readonly states: Int32Array;
  readonly weight: number;
}

/** The most probable configurations of a case: cause and state of every mechanism, with their exact probability given everything on
 * record. */
export function configurationsOfCase(
  compiled: CompiledModel,
  onRecord: readonly LikelihoodFactor[],
  posterior: Float64Array,
  tests: readonly CompiledTest[],
): Configurations {
  const { network, root } = compiled.sweep;
  const { logEvidenceGivenRoot } = sweepRoot(compiled.sweep, { likelihoods: onRecord, targets: [] });
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
  found.sort((a, b) => b.weight - a.weight);
  const kept = found.slice(0, KEPT).filter(({ weight }) => weight > 0);

  const rows = ({ parents, table, states: outcomes }: TargetTable): Float64Array => {
    const variables = parents.map((name) => network.indexOf.get(name)!);
    return Float64Array.from({ length: kept.length * outcomes }, (_, at) => {
      const o = at % outcomes;
      return table[indexIn(variables, kept[(at - o) / outcomes]!.states) * outcomes + o]!;
    });
  };
  const known = new Map<number, Float64Array>();
  return {
    cause: Int32Array.from(kept, ({ cause }) => cause),
    weight: Float64Array.from(kept, ({ weight }) => weight),
    outcomeGiven: (test) => {
      const already = known.get(test) ?? rows(tests[test]!.table);
      known.set(test, already);
      return already;
    },
  };
}
