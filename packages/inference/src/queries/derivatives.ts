import { addAlong } from '../loops/addAlong.ts';
import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { factorOfFinding } from './eliminateTo.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import type { Factor } from '../factors/factor.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';
import { nestOf } from '../loops/loopNest.ts';
import { multiplyFactors } from '../factors/multiplyFactors.ts';

/** How P(evidence) answers to every number of the network. */
export interface Derivatives {
  readonly logProbabilityOfEvidence: number;
  /** variable -> (dP(evidence) / dP(state | parents)) / P(evidence), laid out like the variable's table. Every number is taken as free:
   * rows need not sum to one. Where the number is positive this is P(state, parents | evidence) divided by it. */
  readonly relative: Readonly<Record<string, Float64Array>>;
}

/** Derivatives of P(evidence) by all parameters from one pass to the root and one back; no division, so numbers that are zero have
 * theirs too.
 * @throws EvidenceInputError, ImpossibleEvidenceError
 * @example
 * ```ts
 * const { relative } = derivatives(compileNetwork(network), { wet: 'yes' });
 * Object.values(relative).map((table) => [...table]); // [[3.4615, 0.3846], [0.7692, 0, 3.0769, 0]]
 * ```
 * Source: Darwiche 2003, Journal of the ACM 50:280-305; Park & Darwiche 2004, Artificial Intelligence 156:197-216. */
export function derivatives(compiled: CompiledNetwork, evidence: Evidence): Derivatives {
  const { network, tree, families, cardinalities } = compiled;
  const findings = readEvidence(compiled.network, evidence);
  const own: Factor[][] = Array.from({ length: tree.count }, () => []);
  const at = families.map((family, position) => {
    const c = smallestCover(compiled, family, position);
    own[c]!.push(family);
    return c;
  });
  let given = 0;
  for (const finding of findings) {
    given += finding.logScale;
    own[tree.home[finding.variable]!]!.push(factorOfFinding(finding, cardinalities));
  }
  const separators = Array.from({ length: tree.count }, (_, c) => [
    ...tree.members.subarray(tree.start[c]! + tree.residuals[c]!, tree.start[c + 1]!),
  ]);
  const scopes = Array.from({ length: tree.count }, (_, c) => [
    ...tree.members.subarray(tree.start[c]!, tree.start[c + 1]!),
  ]);
  const up: Factor[] = [];
  const down: Factor[] = [];
  const children = Array.from({ length: tree.count }, (_, c) => {
    const list: number[] = [];
    for (let d = tree.firstChild[c]!; d < tree.firstChild[c + 1]!; d += 1) list.push(d);
    return list;
  });
  // every product is scaled; the scales cancel, because P(evidence) is taken from the same product
  const productTo = (
    factors: readonly Factor[],
    scope: readonly number[],
    keep: readonly number[],
  ): { factor: Factor; log: number } => {
    let log = 0;
    const scale = (values: Float64Array): void => {
      let largest = 0;
      for (const value of values) if (value > largest) largest = value;
      if (largest === 0) return;
      for (let k = 0; k < values.length; k += 1) values[k]! /= largest;
      log += Math.log(largest);
    };
    const product = multiplyFactors(factors, scope, cardinalities, scale);
    const values = new Float64Array(keep.reduce((size, variable) => size * cardinalities[variable]!, 1));
    const nest = nestOf(scope, keep, cardinalities);
    addAlong(product, 0, values, 0, nest.n, nest.a, nest.b, 0, nest.count);
    scale(values);
    return { factor: { variables: keep, values }, log };
  };
  let logTotal = given;
  for (let c = tree.count - 1; c >= 0; c -= 1) {
    const { factor, log } = productTo([...own[c]!, ...children[c]!.map((d) => up[d]!)], scopes[c]!, separators[c]!);
    up[c] = factor;
    logTotal += log;
    if (c === 0 && factor.values[0] === 0) throw impossibleEvidence();
  }
  for (let c = 0; c < tree.count; c += 1) {
    for (const d of children[c]!) {
      const others = [
        ...own[c]!,
        ...(c === 0 ? [] : [down[c]!]),
        ...children[c]!.filter((e) => e !== d).map((e) => up[e]!),
      ];
      down[d] = productTo(others, scopes[c]!, separators[d]!).factor;
    }
  }
  const relative = network.variables.map(({ name, index, table }) => {
    const c = at[index]!;
    const family = families[index]!;
    const others = [
      ...own[c]!.filter((factor) => factor !== family),
      ...(c === 0 ? [] : [down[c]!]),
      ...children[c]!.map((d) => up[d]!),
    ];
    const { values } = productTo(others, scopes[c]!, family.variables).factor;
    let evidenceHere = 0;
    values.forEach((value, k) => (evidenceHere += value * table[k]!));
    return [name, values.map((value) => value / evidenceHere)] as const;
  });
  return { logProbabilityOfEvidence: logTotal, relative: Object.fromEntries(relative) };
}

function smallestCover(compiled: CompiledNetwork, family: Factor, position: number): number {
  const { cliqueStart, cliquesOf, start, members, sizes } = compiled.tree;
  let best = -1;
  for (let k = cliqueStart[position]!; k < cliqueStart[position + 1]!; k += 1) {
    const c = cliquesOf[k]!;
    const scope = members.subarray(start[c]!, start[c + 1]!);
    if ((best < 0 || sizes[c]! < sizes[best]!) && family.variables.every((variable) => scope.includes(variable)))
      best = c;
  }
  return best;
}
