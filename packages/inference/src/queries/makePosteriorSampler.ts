import { collectEvidence } from '../propagation/collectEvidence.ts';
import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import { impossibleEvidence } from '../errors/impossibleEvidenceError.ts';
import { namesOf } from './mostProbableExplanations.ts';
import { createPropagation } from '../propagation/propagation.ts';
import type { Random } from '../random/random.ts';
import { setEvidence } from '../propagation/setEvidence.ts';

/** Prepares drawing from P(all variables | evidence): exact and independent draws, by one pass to the root and then, for every draw,
 * one walk down the tree.
 * @returns a function that draws one state for every variable; it takes one number from `random` per clique.
 * @throws EvidenceInputError, ImpossibleEvidenceError
 * @example
 * ```ts
 * const draw = makePosteriorSampler(compileNetwork(network), { rain: 'no', wet: 'yes' });
 * draw(createRandom(1)); // { rain: 'no', wet: 'yes' }
 * ```
 * Source: Dawid 1992, Statistics and Computing 2:25-36. */
export function makePosteriorSampler(
  compiled: CompiledNetwork,
  evidence: Evidence,
): (random: Random) => Record<string, string> {
  const { tree, cardinalities, tableAt } = compiled;
  const propagation = createPropagation(compiled);
  setEvidence(propagation, readEvidence(compiled.network, evidence));
  collectEvidence(propagation);
  if (propagation.logEvidence[0] === -Infinity) throw impossibleEvidence();
  const { findingsBelow, collectedFrom, states: observed } = propagation;
  return (random) => {
    const states = observed.slice();
    for (let c = 0; c < tree.count; c += 1) {
      const block = tree.separatorSizes[c]!;
      const table = findingsBelow[c]! > 0 && collectedFrom[c] === 1 ? propagation.collected : compiled.prior;
      const first = tree.start[c]!;
      const middle = first + tree.residuals[c]!;
      let shared = 0;
      for (let k = middle; k < tree.start[c + 1]!; k += 1)
        shared = shared * cardinalities[tree.members[k]!]! + states[tree.members[k]!]!;
      const rows = tree.sizes[c]! / block;
      const agrees = (row: number): boolean => {
        let rest = row;
        for (let k = middle - 1; k >= first; k -= 1) {
          const v = tree.members[k]!;
          if (observed[v]! >= 0 && observed[v] !== rest % cardinalities[v]!) return false;
          rest = Math.floor(rest / cardinalities[v]!);
        }
        return true;
      };
      let total = 0;
      for (let row = 0; row < rows; row += 1) if (agrees(row)) total += table[tableAt[c]! + row * block + shared]!;
      let left = random() * total;
      let chosen = -1;
      for (let row = 0; row < rows; row += 1) {
        const p = table[tableAt[c]! + row * block + shared]!;
        if (p === 0 || !agrees(row)) continue;
        chosen = row;
        left -= p;
        if (left < 0) break;
      }
      for (let k = middle - 1; k >= first; k -= 1) {
        const v = tree.members[k]!;
        states[v] = chosen % cardinalities[v]!;
        chosen = Math.floor(chosen / cardinalities[v]!);
      }
    }
    return namesOf(compiled, states);
  };
}
