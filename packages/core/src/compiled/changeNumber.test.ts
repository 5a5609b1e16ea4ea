import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { leaderSensitivity } from '../doubt/leaderSensitivity.ts';
import { changeNumber } from './changeNumber.ts';
import { compileModel } from './compileModel.ts';
import { isProbabilityAt } from '../model/isProbabilityAt.ts';
import { parseModel } from '../model/parseModel.ts';

const compiled = compileModel(pumpModel());
const [first] = compiled.model.tests;
const facts = {
  context: {},
  observations: [{ kind: 'result' as const, id: 'r', test: first!.id, outcome: first!.outcomes[0]!.id }],
};

test('the ranking under a changed number is what its sensitivity function says', () => {
  const { leading, functions } = leaderSensitivity(compiled, facts);
  for (const { path, value, numerator: n, denominator: d } of functions) {
    const x = isProbabilityAt(path) ? 0.5 * value + 0.1 : value * 1.5;
    const { posterior } = rankCauses(changeNumber(compiled, path, x), facts);
    expect(posterior[leading], path).toBeCloseTo((n.constant + n.slope * x) / (d.constant + d.slope * x), 12);
  }
});

test('a changed row still sums to one, the model stays valid, and the given one is left as it was', () => {
  const before = structuredClone(compiled.model);
  const outcome = first!.outcomes[0]!.id;
  const { model } = changeNumber(compiled, `/tests/0/rows/0/p/${outcome}`, 0.37);
  expect(model.tests[0]!.rows[0]!.p[outcome]).toBe(0.37);
  expect(Object.values(model.tests[0]!.rows[0]!.p).reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  expect(() => parseModel(model)).not.toThrow();
  expect(compiled.model).toEqual(before);
});

test('numbers of the whole model are changed as any other', () => {
  const gone = changeNumber(compiled, '/goneWithoutCure/best', 0.2);
  const tried = {
    context: {},
    observations: [{ kind: 'repair-tried' as const, id: 'r', repair: 'fit-fuse', cured: true }],
  };
  expect(rankCauses(gone, tried).posterior['fuse-blown']!).toBeLessThan(
    rankCauses(compiled, tried).posterior['fuse-blown']!,
  );
  expect(changeNumber(compiled, '/leastRepairMinutes/best', 20).model.leastRepairMinutes.best).toBe(20);
});

test.each([
  ['/tests/0/rows/0/p/nothing', 0.5, 'number-unknown'],
  ['/tests/0/rows/0/ess', 3, 'number-unknown'],
  ['/causes/0/__proto__/best', 3, 'number-unknown'],
  ['', 3, 'number-unknown'],
  ['/causes/0/weight/best', -1, 'number-out-of-range'],
  ['/causes/0/weight/best', Number.NaN, 'number-out-of-range'],
  ['/goneWithoutCure/best', 1.1, 'number-out-of-range'],
  ['/causes/0/activeFraction/best', 1.1, 'number-out-of-range'],
  ['/repairs/0/cures/fuse-blown/best', 1.1, 'number-out-of-range'],
  ['/mechanisms/0/background/p/' + compiled.model.mechanisms[0]!.states[0]!.id, 1, 'number-out-of-range'],
])('%s set to %s is refused: %s', (path, value, code) => {
  expect(() => changeNumber(compiled, path, value)).toThrow(code);
});
