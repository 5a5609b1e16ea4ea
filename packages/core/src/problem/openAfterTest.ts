import type { DecisionProblem } from './decisionProblem.ts';

type Openings = Pick<DecisionProblem, 'testAccess' | 'closedForTest'>;

/** Access that is open after a test: what has to be closed for it is closed, and what it opens stays open, unless it is driven with. */
export function openAfterTest({ testAccess, closedForTest }: Openings, test: number, open: number): number {
  return (open | testAccess[test]!) & ~closedForTest[test]!.closes;
}

/** Whether a test cannot be done because something is open that leaves the engine apart. */
export function isEngineApart({ closedForTest }: Openings, test: number, open: number): boolean {
  return (open & closedForTest[test]!.impossibleWith) !== 0;
}
