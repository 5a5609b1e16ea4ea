import { addAlong } from '../loops/addAlong.ts';
import { cliqueBelief } from '../propagation/cliqueBelief.ts';
import { collectEvidence } from '../propagation/collectEvidence.ts';
import { compileTree, type CompiledNetwork, type CompileNetworkOptions } from '../propagation/compileNetwork.ts';
import { distributeEvidence } from '../propagation/distributeEvidence.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';
import type { Network } from '../network/network.ts';
import { allFactors, eliminateTo } from './eliminateTo.ts';
import { createPropagation, type Propagation } from '../propagation/propagation.ts';
import { setEvidence } from '../propagation/setEvidence.ts';
import { sumNest } from '../propagation/sumNest.ts';
import { variablePositions } from '../network/variablePositions.ts';

declare const madeByCompileEach: unique symbol;

/** A network made ready for answers given each state of one variable. Opaque. */
export interface CompiledEach {
  /** Nobody else makes one. */
  readonly [madeByCompileEach]: true;
  /** @internal */
  readonly inner: CompiledNetwork;
  /** Where variable v's table begins in `pairs`; tables are [state][state of the one variable]. @internal */
  readonly pairAt: Int32Array;
}

/** Everything given evidence and each state e of the one variable. */
export interface PosteriorGivenEach {
  /** log P(evidence | state e); -Infinity where impossible, or less likely than 1e-300 of the likeliest. */
  readonly logEvidence: Float64Array;
  /** variable -> P(state | evidence, e) at [e][state]; zeros where e is impossible. */
  readonly marginals: Readonly<Record<string, Float64Array>>;
}

/** Makes a network ready for answers given each state of one variable, which joins every clique: one propagation then serves all its
 * states. @param name the variable, with or without parents.
 * @throws QueryError `query-variable-unknown`; TreeWidthError
 * @example
 * ```ts
 * const givenRain = compileEach(network, 'rain');
 * Object.values(posteriorGivenEach(givenRain, {}).marginals).map((table) => [...table]); // [[1, 0, 0, 1], [0.9, 0.1, 0.1, 0.9]]
 * [...posteriorGivenEach(givenRain, { wet: 'yes' }).logEvidence].map(Math.exp); // [0.9, 0.1]
 * ``` */
export function compileEach(network: Network, name: string, options: CompileNetworkOptions = {}): CompiledEach {
  const inner = compileTree(network, options, variablePositions(network, [name])[0]!);
  const { cardinalities, each } = inner;
  const pairAt = new Int32Array(cardinalities.length + 1);
  cardinalities.forEach((states, v) => (pairAt[v + 1] = pairAt[v]! + states * (v === each ? 1 : cardinalities[each]!)));
  const parts: Omit<CompiledEach, symbol> = { inner, pairAt };
  return parts as CompiledEach;
}

/** All posteriors given evidence and, in turn, every state of the variable that was named when compiling.
 * @throws EvidenceInputError, ImpossibleEvidenceError when no state allows the evidence
 * @example Object.keys(posteriorGivenEach(compileEach(network, 'rain'), {}).marginals) // ['rain', 'wet'] */
export function posteriorGivenEach(compiled: CompiledEach, evidence: Evidence): PosteriorGivenEach {
  const { inner, pairAt } = compiled;
  const { cardinalities, each, network, prior, tableAt, tree } = inner;
  const propagation = (inner.shared.propagation ??= createPropagation(inner));
  const findings = readEvidence(network, evidence);
  setEvidence(propagation, findings);
  const pairs = new Float64Array(pairAt[cardinalities.length]!);
  const possible = propagateEach(compiled, propagation, pairs);
  if (propagation.now.doubtful) {
    // beyond the range of doubles: pair by pair, in logarithms
    const ask = (asked: readonly number[]): ReturnType<typeof eliminateTo> =>
      eliminateTo(allFactors(inner, findings), findings, asked, cardinalities);
    propagation.logEvidence[0] = ask([]).logProbability;
    const own = ask([each]).values;
    const width = cardinalities[each]!;
    for (let v = 0; v < cardinalities.length; v += 1) {
      const state = propagation.states[v]!;
      if (v === each) pairs.set(own, pairAt[v]);
      else if (state >= 0) pairs.fill(0, pairAt[v], pairAt[v + 1]).set(own, pairAt[v]! + state * width);
      else pairs.set(ask([v, each]).values, pairAt[v]);
    }
  } else if (!possible) throw impossibleEvidence();
  const states = cardinalities[each]!;
  const { loops, sliced, separatorAt } = inner;
  const before = new Float64Array(states);
  const source = loops.source[each]!;
  const nest = 2 * tree.count + each;
  const from = source < 0 ? tableAt[-1 - source]! : separatorAt[source]!;
  addAlong(prior, from, before, 0, sliced.n, sliced.a, sliced.b, loops.start[nest]!, sliced.count[nest]!);
  const own = pairs.subarray(pairAt[each], pairAt[each + 1]);
  const total = own.reduce((sum, value) => sum + value, 0);
  const logEvidence = own.map((value, e) =>
    value === 0 ? -Infinity : propagation.logEvidence[0]! + Math.log(value / total / before[e]!),
  );
  const marginals = network.variables.map(({ name, index }) => {
    const count = cardinalities[index]!;
    const table = new Float64Array(states * count);
    for (let e = 0; e < states; e += 1) {
      if (index === each) {
        table[e * count + e] = own[e]! > 0 ? 1 : 0;
        continue;
      }
      let sum = 0;
      for (let s = 0; s < count; s += 1) sum += pairs[pairAt[index]! + s * states + e]!;
      for (let s = 0; s < count && sum > 0; s += 1)
        table[e * count + s] = pairs[pairAt[index]! + s * states + e]! / sum;
    }
    return [name, table] as const;
  });
  return { logEvidence, marginals: Object.fromEntries(marginals) };
}

/** Fills `pairs` with numbers proportional, variable by variable, to P(state, e, evidence); returns whether the evidence is possible.
 * Allocates nothing. */
export function propagateEach(compiled: CompiledEach, propagation: Propagation, pairs: Float64Array): boolean {
  const { inner, pairAt } = compiled;
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) return false;
  const { tree, loops, cardinalities, tableAt, separatorAt, prior } = inner;
  distributeEvidence(propagation, 0, tree.count);
  const { separatorFrom, collected, beliefs } = propagation;
  for (let v = 0; v < cardinalities.length; v += 1) {
    const nest = 2 * tree.count + v;
    const source = loops.source[v]!;
    const c = source < 0 ? ~source : source;
    const kind = separatorFrom[c]!;
    const shared = kind === 0 ? prior : kind === 1 ? collected : beliefs;
    const table = source < 0 ? cliqueBelief(propagation, c) : shared;
    const from = source < 0 ? tableAt[c]! : separatorAt[c]!;
    // offsets put an observed state where it belongs
    sumNest(propagation, nest, table, from, pairs, pairAt[v]!, pairAt[v + 1]!);
  }
  return true;
}
