import { openAfterTest } from '../problem/openAfterTest.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { makeCostOfKnownCause } from './makePerfectInformation.ts';
import { profitsOf } from './shareAccess.ts';

/** By cause, in money, at least 0. */
export interface RepairSlack {
  /** As long as no repair that may cure the cause was tried. */
  readonly fresh: Float64Array;
  /** After at least one was; `Infinity` where the repair itself would have to be that one. */
  readonly again: Float64Array;
}

const MOST_OPENINGS = 512;

/** What a repair costs beyond what perfect information accounts for, by repair.
 *
 * While a cause is true, trying a repair costs its price, and changes what perfect information would cost: less where the repair may
 * cure, more where it closes an access that the cause's own repair would have profited from. The sum, at its least over everything that
 * tests can have opened and that can have been tried before, is what a bound may charge for confusions that the repair ends or changes.
 *
 * Opening what the cause's own repair does not need is left out: its price is shared, see `accessShares`. */
export function repairSlack(problem: DecisionProblem): readonly RepairSlack[] {
  const { repairFacts, repairAccess, accessCost, causes, start } = problem;
  const costOf = makeCostOfKnownCause(problem);
  const openings = reachableOpenings(problem);
  const profiting = profitsOf(problem);
  const left = problem.repairs.flatMap((_, repair) => (start.tried.includes(repair) ? [] : [repair]));
  const success = problem.repairs.map((_, repair) => {
    const row = new Float64Array(causes.length);
    for (const cure of repairFacts.cures[repair]!) row[cure.cause] = cure.success;
    return row;
  });
  const slacks = problem.repairs.map(() => ({
    fresh: new Float64Array(causes.length).fill(Infinity),
    again: new Float64Array(causes.length).fill(Infinity),
  }));
  const costFrom = problem.repairs.map((_, repair) => openings?.map((open) => repairFacts.costFrom(repair, open)));
  for (let c = 0; c < causes.length; c += 1) {
    for (const failed of subsetsOf(left.filter((repair) => success[repair]![c]! > 0))) {
      const tried = [...start.tried, ...failed];
      const closed = costOf(c, 0, tried);
      const before = openings?.map((open) => costOf(c, open, tried));
      for (const repair of left) {
        if (failed.includes(repair)) continue;
        const chance = success[repair]![c]!;
        const after = chance === 0 ? closed : chance < 1 ? (1 - chance) * costOf(c, 0, [...tried, repair]) : 0;
        let least = Infinity;
        if (openings === undefined) least = chance === 0 ? repairFacts.costFrom(repair, -1) : 0;
        else {
          openings.forEach((open, at) => {
            const shared = accessPrice(accessCost, repairAccess[repair]! & ~open & ~start.open & ~profiting[c]!);
            least = Math.min(least, costFrom[repair]![at]! - shared + after - before![at]!);
          });
        }
        const row = failed.length === 0 ? slacks[repair]!.fresh : slacks[repair]!.again;
        row[c] = Math.min(row[c]!, Math.max(0, least));
      }
    }
  }
  return slacks;
}

function subsetsOf(of: readonly number[]): readonly (readonly number[])[] {
  return of.reduce<readonly (readonly number[])[]>((sets, one) => [...sets, ...sets.map((set) => [...set, one])], [[]]);
}

function accessPrice(accessCost: Float64Array, bits: number): number {
  let price = 0;
  for (let bit = 0; bit < accessCost.length; bit += 1) if ((bits & (1 << bit)) !== 0) price += accessCost[bit]!;
  return price;
}

/** Everything that can stand open: what is open now or nothing, and whatever tests add; `undefined` when that is too much to walk. */
function reachableOpenings(problem: DecisionProblem): readonly number[] | undefined {
  const { start, testAccess } = problem;
  const found = new Set([start.open, 0]);
  const tests = testAccess.map((_, test) => test).filter((test) => start.closedTests[test] === 0);
  for (const open of found) {
    for (const test of tests) found.add(openAfterTest(problem, test, open));
    if (found.size > MOST_OPENINGS) return undefined;
  }
  return [...found];
}
