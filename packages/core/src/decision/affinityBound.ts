import { affinityPrices, type AffinityPrices } from './affinityPrices.ts';
import type { DecisionProblem, DecisionState, EvidenceSet } from './decisionProblem.ts';
import type { LowerBound } from './lowerBoundOf.ts';
import { costOfKnowing, perfectInformation } from './perfectInformation.ts';

/** A lower bound that charges for telling causes apart: the cost of perfect information, plus for pairs of configurations of different
 * causes a price times the root of both probabilities (their affinity), less surcharges.
 *
 * Why it is admissible: a result multiplies every affinity by the Bhattacharyya coefficient of the pair's likelihoods, so a test takes
 * away at most sum worth (1 - coefficient) affinity. That is a quadratic form in the roots of the probabilities; where its matrix lies
 * below the diagonal of the test's price (plus a surcharge that the test, done once at most, gives back), the bound falls by no more than
 * is paid. A matrix M of non-negative entries lies below diag((M y) / y) for every positive y, so the surcharges need no eigenvalues. The
 * same holds for a repair, after which the affinities of the causes it cures are given up, and for the referral. Hence the bound is a
 * sub-solution of the optimality equation and stays below the optimum everywhere (as in approximate linear programming: de Farias & Van
 * Roy 2003, Operations Research 51:850-865; affinity: Bhattacharyya 1943). The construction is ours.
 * An access is opened once for all tests behind it, so its price is shared among them; while it stands open, the shares of the tests not
 * done yet are paid back. */
export function affinityBound(
  problem: DecisionProblem,
  prices: AffinityPrices = affinityPrices(problem).prices,
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
  const { first, second, worth, testSurcharge, repairSurcharge, surcharge, openSurcharge } = prices;
  const touched = new Map<string, Uint8Array>();
  const touchedBy = (tried: readonly number[]): Uint8Array => {
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
    for (let p = 0; p < worth.length; p += 1) {
      const [a, b] = [first[p]!, second[p]!];
      if (gone[a] === 0 && gone[b] === 0) extra += worth[p]! * x[a]! * x[b]!;
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
