import { checkNumbers } from '../errors/checkNumbers.ts';
import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';
import { maxTables } from './maxTables.ts';

/** One state for every variable. */
export interface MostProbableExplanation {
  /** variable -> state; observed variables keep theirs. */
  readonly states: Readonly<Record<string, string>>;
  /** Natural logarithm of P(states and evidence). */
  readonly logProbability: number;
}

/** The most probable explanation: the states of all variables together that are likeliest given the evidence (not the likeliest state
 * of each). Ties go to the states listed first.
 * @throws EvidenceInputError, ImpossibleEvidenceError
 * @example mostProbableExplanation(compileNetwork(network), { wet: 'yes' }).states // { rain: 'yes', wet: 'yes' } */
export function mostProbableExplanation(compiled: CompiledNetwork, evidence: Evidence): MostProbableExplanation {
  return mostProbableExplanations(compiled, evidence, 1)[0]!;
}

/** The `count` most probable explanations, likeliest first; fewer when fewer are possible.
 * One pass to the root serves them all: each further one differs from one already found in a single clique and is completed greedily.
 * @throws EvidenceInputError, ImpossibleEvidenceError, InferenceOptionError
 * @example mostProbableExplanations(compileNetwork(network), { wet: 'yes' }, 2).map(({ states }) => states.rain) // ['yes', 'no']
 * Source: Nilsson 1998, Statistics and Computing 8:159-173. */
export function mostProbableExplanations(
  compiled: CompiledNetwork,
  evidence: Evidence,
  count: number,
): MostProbableExplanation[] {
  checkNumbers(['/count', count, 0, Infinity]);
  const { tree } = compiled;
  const tables = maxTables(compiled, readEvidence(compiled.network, evidence));
  const completed = (states: Int32Array, from: number): void => {
    for (let c = from; c < tree.count; c += 1)
      choose(compiled, states, c, bestOf(compiled, tables, states, c, new Set()));
  };
  const first = new Int32Array(compiled.cardinalities.length);
  const top = bestOf(compiled, tables, first, 0, new Set());
  const best = tables[compiled.tableAt[0]! + top]!;
  if (best === -Infinity) throw impossibleEvidence();
  completed(first, 0);
  // candidates: the best of what a found one leaves over when everything before clique `from` is kept and `barred` is ruled out there
  const waiting: { states: Int32Array; log: number; from: number; barred: Set<number> }[] = [
    { states: first, log: best, from: 0, barred: new Set() },
  ];
  const explanations: MostProbableExplanation[] = [];
  while (explanations.length < count && waiting.length > 0) {
    let at = 0;
    waiting.forEach((candidate, k) => {
      if (candidate.log > waiting[at]!.log) at = k;
    });
    const taken = waiting.splice(at, 1)[0]!;
    explanations.push({ states: namesOf(compiled, taken.states), logProbability: taken.log });
    for (let c = taken.from; c < tree.count; c += 1) {
      const own = configurationOf(compiled, taken.states, c);
      const barred = new Set(c === taken.from ? taken.barred : []).add(Math.floor(own / tree.separatorSizes[c]!));
      const other = bestOf(compiled, tables, taken.states, c, barred);
      if (other < 0) continue;
      const table = compiled.tableAt[c]!;
      const log = taken.log - tables[table + own]! + tables[table + other]!;
      if (log === -Infinity) continue;
      const states = taken.states.slice();
      choose(compiled, states, c, other);
      completed(states, c + 1);
      waiting.push({ states, log, from: c, barred });
    }
  }
  return explanations;
}

/** Entry of clique c's table that agrees with `states`. */
function configurationOf(compiled: CompiledNetwork, states: Int32Array, c: number): number {
  const { tree, cardinalities } = compiled;
  let entry = 0;
  for (let k = tree.start[c]!; k < tree.start[c + 1]!; k += 1)
    entry = entry * cardinalities[tree.members[k]!]! + states[tree.members[k]!]!;
  return entry;
}

/** The best entry of clique c's table that agrees with `states` on the separator and is not barred; -1 when there is none. */
function bestOf(
  compiled: CompiledNetwork,
  tables: Float64Array,
  states: Int32Array,
  c: number,
  barred: ReadonlySet<number>,
): number {
  const { tree, tableAt } = compiled;
  const block = tree.separatorSizes[c]!;
  const shared = configurationOf(compiled, states, c) % block;
  let best = -1;
  for (let r = 0, entry = shared; entry < tree.sizes[c]!; r += 1, entry += block) {
    if (barred.has(r)) continue;
    if (best < 0 || tables[tableAt[c]! + entry]! > tables[tableAt[c]! + best]!) best = entry;
  }
  return best;
}

/** Sets the states of the variables that clique c does not share with its parent. */
function choose(compiled: CompiledNetwork, states: Int32Array, c: number, entry: number): void {
  const { tree, cardinalities } = compiled;
  let rest = Math.floor(entry / tree.separatorSizes[c]!);
  for (let k = tree.start[c]! + tree.residuals[c]! - 1; k >= tree.start[c]!; k -= 1) {
    const v = tree.members[k]!;
    states[v] = rest % cardinalities[v]!;
    rest = Math.floor(rest / cardinalities[v]!);
  }
}

/** variable -> state by name. */
export function namesOf(compiled: CompiledNetwork, states: Int32Array): Record<string, string> {
  return Object.fromEntries(
    compiled.network.variables.map(({ name, index, states: names }) => [name, names[states[index]!]!]),
  );
}
