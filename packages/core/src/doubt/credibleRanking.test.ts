import { expect, test } from 'vitest';
import { exactly, smallModel } from '../../../../tests/fixtures/smallModel.ts';
import type { Facts } from '../evidence/facts.ts';
import { betaQuantile } from '../distributions/betaQuantile.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { Model } from '../model/model.ts';
import { credibleRanking } from './credibleRanking.ts';
import { adviceStability } from './adviceStability.ts';

const seen: Facts = { context: {}, observations: [{ kind: 'result', id: 'a', test: 'look', outcome: 'yes' }] };

/** Causes a and b, even odds; P(yes | a) = 0.7 worth 20 cases, P(yes | b) = 0.2 known exactly. */
function uncertainRow(): Model {
  const model = smallModel({
    causes: { a: 1, b: 1 },
    tests: { look: { p: { a: { yes: 0.7, no: 0.3 }, else: { yes: 0.2, no: 0.8 } } } },
  });
  const tests = model.tests.map((one) => ({
    ...one,
    rows: one.rows.map((row) => ({ ...row, ess: row.when['cause']?.includes('a') === true ? 20 : 0 })),
  }));
  return { ...model, tests };
}

test('the interval is that of the Beta around the only uncertain number', () => {
  const { causes, draws } = credibleRanking(compileModel(uncertainRow()), seen, { draws: 4000, seed: 7 });
  const a = causes.find(({ cause }) => cause === 'a')!;
  // the posterior 0.7 / (0.7 + 0.2) rises with the likelihood, so its quantiles are those of Beta(14, 6), carried over
  const carried = (p: number): number => {
    const likelihood = betaQuantile(p, 14, 6);
    return likelihood / (likelihood + 0.2);
  };
  expect(draws).toBe(4000);
  // 4000 draws: standard error of these quantiles below 0.002
  expect(a.low).toBeCloseTo(carried(0.05), 2);
  expect(a.median).toBeCloseTo(carried(0.5), 2);
  expect(a.high).toBeCloseTo(carried(0.95), 2);
});

test('numbers known exactly leave no doubt', () => {
  const sure = compileModel(
    smallModel({
      causes: { a: 3, b: 1 },
      tests: { look: { p: { a: { yes: 0.7, no: 0.3 }, else: { yes: 0.2, no: 0.8 } } } },
    }),
  );
  const model = {
    ...sure.model,
    tests: sure.model.tests.map((one) => ({ ...one, rows: one.rows.map((row) => ({ ...row, ess: 0 })) })),
  };
  const { causes } = credibleRanking(compileModel(model), seen, { draws: 50 });
  for (const { low, probability, high } of causes) {
    expect(low).toBeCloseTo(probability, 12);
    expect(high).toBeCloseTo(probability, 12);
  }
});

test('the same seed draws the same models, another seed draws others', () => {
  const compiled = compileModel(uncertainRow());
  const first = credibleRanking(compiled, seen, { draws: 100, seed: 3 });
  expect(credibleRanking(compiled, seen, { draws: 100, seed: 3 })).toEqual(first);
  expect(credibleRanking(compiled, seen, { draws: 100, seed: 4 }).causes).not.toEqual(first.causes);
});

test('an aborted question answers from the draws it has', () => {
  const { draws } = credibleRanking(compileModel(uncertainRow()), seen, { draws: 100, signal: { aborted: true } });
  expect(draws).toBe(1);
});

test('advice that no plausible model changes has share 1', () => {
  const compiled = compileModel({
    ...smallModel({
      causes: { a: 1, b: 1 },
      tests: { look: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.1, no: 0.9 } }, price: 1 } },
      repairs: { 'mend-a': { cures: { a: 0.95 }, parts: 500 }, 'mend-b': { cures: { b: 0.95 }, parts: 500 } },
      referralFee: 2000,
    }),
    labourPerHour: exactly(60),
  });
  const firm = adviceStability(compiled, { context: {}, observations: [] }, {}, { draws: 40 });
  expect(firm.best).toMatchObject({ kind: 'test', test: 'look' });
  expect(firm.share + firm.others.reduce((sum, other) => sum + other.share, 0)).toBeCloseTo(1, 12);
  expect(firm.share).toBeGreaterThan(0.5);
});
