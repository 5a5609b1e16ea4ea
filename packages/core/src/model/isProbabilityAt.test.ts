import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { isProbabilityAt } from './isProbabilityAt.ts';
import { modelSchema } from './modelSchema.ts';

const about = { best: 0.5, low: 0.1, high: 0.9, ess: 5, source: 'judgement' };
const pump = { ...pumpModel(), twoCauseShare: about };

/** Places of all best estimates. */
function estimates(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'best' ? [`${path}/best`] : estimates(inner, `${path}/${key}`),
  );
}

test('an estimate is a probability where the schema lets it be at most 1', () => {
  const paths = estimates(pump);
  expect(paths.length).toBeGreaterThan(50);
  for (const path of paths) {
    const model = structuredClone(pump) as unknown as Record<string, unknown>;
    const keys = path.split('/').slice(1, -1);
    const holder = keys.reduce((at, key) => at[key] as Record<string, unknown>, model);
    holder['best'] = 1.5;
    expect(modelSchema.safeParse(model).success, path).toBe(!isProbabilityAt(path));
  }
});

test('an entry of a row is one, how many cases it is worth is not', () => {
  expect(isProbabilityAt('/tests/0/rows/0/p/hums')).toBe(true);
  expect(isProbabilityAt('/mechanisms/0/background/p/turning')).toBe(true);
  expect(isProbabilityAt('/tests/0/rows/0/ess')).toBe(false);
  expect(isProbabilityAt('')).toBe(false);
});
