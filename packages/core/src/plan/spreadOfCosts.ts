import type { CostSpread } from './plan.ts';

/** A total cost that comes about with a probability. */
export interface WeightedCost {
  readonly probability: number;
  readonly cost: number;
}

// Probabilities of many ways are summed: the last digits are rounding.
const ROUNDING = 1e-9;

/** Expected, median, 90th-percentile and worst cost. A percentile is the least cost that is not exceeded with that probability. */
export function spreadOfCosts(costs: readonly WeightedCost[], expected: number, currency: string): CostSpread {
  const sorted = costs.filter(({ probability }) => probability > 0).sort((a, b) => a.cost - b.cost);
  const total = sorted.reduce((sum, { probability }) => sum + probability, 0);
  const percentile = (share: number): number => {
    let sum = 0;
    for (const { probability, cost } of sorted) {
      sum += probability;
      if (sum >= share * total - ROUNDING) return cost;
    }
    return expected;
  };
  const money = (amount: number) => ({ amount, currency });
  return {
    expected: money(expected),
    median: money(percentile(0.5)),
    ninetiethPercentile: money(percentile(0.9)),
    worst: money(sorted.at(-1)?.cost ?? expected),
  };
}
