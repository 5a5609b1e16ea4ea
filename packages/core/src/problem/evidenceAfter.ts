import type { EvidenceSet } from './decisionProblem.ts';

// more outcomes than any test has
const OUTCOME_BITS = 6;

/** The empty set of results. */
export function noEvidence(): EvidenceSet {
  return { key: '', results: [], memo: { tables: new Map(), after: new Map() } };
}

/** Makes the function that adds one result to a set of results. The order in which results were added does not matter: the same set is
 * the same object, so what was computed for it is found again. */
export function makeEvidenceAdder(): (evidence: EvidenceSet, test: number, outcome: number) => EvidenceSet {
  const sets = new Map<string, EvidenceSet>();
  return (evidence, test, outcome) => {
    const code = (test << OUTCOME_BITS) | outcome;
    const known = evidence.memo.after.get(code);
    if (known !== undefined) return known;
    const results = [...evidence.results, { test, outcome }];
    const key = results
      .map((result) => (result.test << OUTCOME_BITS) | result.outcome)
      .sort((a, b) => a - b)
      .join('.');
    const same = sets.get(key) ?? { key, results, memo: { tables: new Map(), after: new Map() } };
    sets.set(key, same);
    evidence.memo.after.set(code, same);
    return same;
  };
}
