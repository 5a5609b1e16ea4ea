import { confusionPrices, type ConfusionPrices } from './confusionPrices.ts';
import type { DecisionProblem, DecisionState, EvidenceSet } from '../problem/decisionProblem.ts';
import type { LowerBound } from './lowerBoundOf.ts';
import { costOfKnowing, perfectInformation } from './perfectInformation.ts';

/** A lower bound that charges for telling causes apart: the cost of perfect information, plus for pairs of configurations of different
 * causes a price times their affinity (the root of the product of both probabilities) and a price times their overlap (the lesser of
 * them), less surcharges.
 *
 * Why it is admissible. A result multiplies an affinity by the Bhattacharyya coefficient of the pair's likelihoods and leaves of an
 * overlap at least one minus their total variation. So a test lowers the affinities by a quadratic form in the roots of the probabilities,
 * which lies below the diagonal form (M y) / y for every positive y, and the overlaps by a form that lies below any split of each pair
 * between its two members. Where what a configuration bears exceeds the price of the test, a surcharge that the test gives back (it can
 * be done once at most) makes up for it; hence doing the test never lowers the bound by more than it costs. The same holds for a repair,
 * after which the confusions of the causes it cures are given up, and for the referral: the bound is a sub-solution of the optimality
 * equation and stays below the optimum everywhere, whatever the prices. An access is opened once for all tests behind it, so its price
 * is shared among them; while it stands open, the shares of the tests not done yet are paid back.
 *
 * Source of the principle: approximate linear programming, de Farias & Van Roy 2003, Operations Research 51:850-865; affinity:
 * Bhattacharyya 1943. The construction is ours; see decisions/ of this package. */
export function confusionBound(
  problem: DecisionProblem,
  prices: ConfusionPrices = confusionPrices(problem),
): LowerBound {
  const knowing = perfectInformation(problem);
  const { cause, weight, outcomeGiven } = problem.configurations();
  const { repairFacts } = problem;
  const roots = new WeakMap<EvidenceSet, Float64Array>();
  const rootsOf = ({ evidence }: DecisionState): Float64Array => {
    const known = roots.get(evidence);
    if (known !== undefined) return known;
    const product = weight.slice();
    for (const { test, outcome } of evidence.results) {
      const rows = outcomeGiven(test);
      const outcomes = problem.tests[test]!.outcomes.length;
      for (let h = 0; h < product.length; h += 1) product[h]! *= rows[h * outcomes + outcome]!;
    }
    const answer = product.map(Math.sqrt);
    roots.set(evidence, answer);
    return answer;
  };
  const { first, second, affinityWorth, overlapWorth, testSurcharge, repairSurcharge, surcharge, openSurcharge } =
    prices;
  const touched = new Map<string, Uint8Array>();
  const none = new Uint8Array(weight.length);
  const touchedBy = (tried: readonly number[]): Uint8Array => {
    if (tried.length === 0) return none;
    const key = tried.join('.');
    const known = touched.get(key);
    if (known !== undefined) return known;
    const causes = new Uint8Array(problem.causes.length);
    for (const repair of tried) for (const cure of repairFacts.cures[repair]!) causes[cure.cause] = 1;
    const answer = Uint8Array.from(cause, (c) => causes[c]!);
    touched.set(key, answer);
    return answer;
  };

  return (state) => {
    const known = costOfKnowing(knowing(state.open, state.tried), state);
    const x = rootsOf(state);
    const gone = touchedBy(state.tried);
    let extra = 0;
    for (let p = 0; p < first.length; p += 1) {
      const a = first[p]!;
      const b = second[p]!;
      if (gone[a] === 1 || gone[b] === 1) continue;
      const least = x[a]! < x[b]! ? x[a]! : x[b]!;
      extra += affinityWorth[p]! * x[a]! * x[b]! + overlapWorth[p]! * least * least;
    }
    const payBack = (of: Float64Array): void => {
      for (let h = 0; h < of.length; h += 1) if (of[h]! > 0 && gone[h] === 0) extra -= of[h]! * x[h]! * x[h]!;
    };
    payBack(surcharge);
    for (const [test, of] of testSurcharge) if (state.closedTests[test] === 0) payBack(of);
    for (const { test, access, of } of openSurcharge) {
      if (state.closedTests[test] === 0 && (state.open & (1 << access)) !== 0) payBack(of);
    }
    for (const [repair, of] of repairSurcharge) if (!state.tried.includes(repair)) payBack(of);
    return known + Math.max(0, extra / state.chance);
  };
}
