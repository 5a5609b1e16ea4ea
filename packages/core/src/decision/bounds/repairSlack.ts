import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { perfectInformation } from './perfectInformation.ts';

const MOST_OPENINGS = 512;

/** What a repair costs beyond what perfect information accounts for: by repair, then by cause, at least 0.
 *
 * While a cause is true, trying a repair costs its price, and changes what perfect information would cost: less where the repair may
 * cure, more where it closes an access that the cause's own repair would have profited from. The sum, at its least over everything that
 * tests can have opened before, is what a bound may charge for confusions that the repair ends. For causes the repair cures this counts
 * from the start, before any other repair that cures them. */
export function repairSlack(problem: DecisionProblem): readonly Float64Array[] {
  const { repairFacts, causes, start } = problem;
  const knowing = perfectInformation(problem);
  const openings = reachableOpenings(problem);
  return problem.repairs.map((_, repair) => {
    const slack = new Float64Array(causes.length);
    const success = new Float64Array(causes.length);
    for (const cure of repairFacts.cures[repair]!) success[cure.cause] = cure.success;
    if (openings === undefined) {
      const least = repairFacts.costFrom(repair, -1);
      return slack.map((_zero, c) => (success[c] === 0 ? least : 0));
    }
    slack.fill(Infinity);
    const after = knowing(0, withRepair(start.tried, repair));
    for (const open of openings) {
      const cost = repairFacts.costFrom(repair, open);
      const before = knowing(open, start.tried);
      for (let c = 0; c < slack.length; c += 1) {
        slack[c] = Math.min(slack[c]!, cost + (1 - success[c]!) * after[c]! - before[c]!);
      }
    }
    return slack.map((x) => Math.max(0, x));
  });
}

function withRepair(tried: readonly number[], repair: number): readonly number[] {
  return tried.includes(repair) ? tried : [...tried, repair].sort((a, b) => a - b);
}

/** Everything that can stand open: what is open now or nothing, and whatever tests add; `undefined` when that is too much to walk. */
function reachableOpenings({ start, testAccess }: DecisionProblem): readonly number[] | undefined {
  const found = new Set([start.open, 0]);
  const needs = new Set(testAccess.filter((_, test) => start.closedTests[test] === 0));
  for (const open of found) {
    for (const need of needs) found.add(open | need);
    if (found.size > MOST_OPENINGS) return undefined;
  }
  return [...found];
}
