import { expect, test } from 'vitest';
import { exactly } from '../../../../tests/fixtures/smallModel.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { betaQuantile } from '../distributions/betaQuantile.ts';
import { createRandom } from '../distributions/random.ts';
import type { Model } from '../model/model.ts';
import { drawModel } from './drawModel.ts';

const pump = pumpModel();

/** The number at a share of the draws, sorted. */
function quantileOf(model: Model, numberOf: (drawn: Model) => number, share: number): number {
  const random = createRandom(5);
  const drawn = Array.from({ length: 4000 }, () => numberOf(drawModel(model, random))).sort((a, b) => a - b);
  return drawn[Math.floor(share * drawn.length)]!;
}

test('a fault that goes without a cure is drawn from the Beta of its cases, the least time and a needless opening from their ranges', () => {
  const { goneWithoutCure: gone } = pump;
  for (const share of [0.05, 0.5, 0.95]) {
    const expected = betaQuantile(share, gone.best * gone.ess, (1 - gone.best) * gone.ess);
    // 4000 draws: standard error of these quantiles below 0.003
    expect(quantileOf(pump, (drawn) => drawn.goneWithoutCure.best, share)).toBeCloseTo(expected, 2);
  }
  for (const name of ['leastRepairMinutes', 'needlessOpening'] as const) {
    const { low, best, high } = pump[name];
    const amounts = [0.05, 0.5, 0.95].map((share) => quantileOf(pump, (drawn) => drawn[name].best, share));
    [low, best, high].forEach((expected, at) => {
      expect(Math.abs(amounts[at]! / expected - 1), name).toBeLessThan(0.05);
    });
  }
});

test('known exactly they stay, and so do the prices of single steps', () => {
  const sure = { ...pump, goneWithoutCure: { ...exactly(0.035), ess: 0 }, leastRepairMinutes: exactly(6) };
  const drawn = drawModel(sure, createRandom(1));
  expect([drawn.goneWithoutCure.best, drawn.leastRepairMinutes.best]).toEqual([0.035, 6]);
  expect(drawn.repairs.map(({ minutes, parts }) => [minutes, parts])).toEqual(
    pump.repairs.map(({ minutes, parts }) => [minutes, parts]),
  );
});
