import { expect, test } from 'vitest';
import { exactly, smallModel } from '../../../../tests/fixtures/smallModel.ts';
import type { Model } from '../model/model.ts';
import { compileModel } from './compileModel.ts';
import { lintRepairs } from './lintRepairs.ts';

const plain = smallModel({
  causes: { lobe: 1, coil: 1 },
  access: { cover: { minutes: 40 }, shaft: { minutes: 60, requires: ['cover'] } },
  repairs: {
    'renew-lobe': { cures: { lobe: 1 }, minutes: 106, parts: 20, access: ['shaft'] },
    'renew-coil': { cures: { coil: 1 }, minutes: 0 },
  },
});
const found = (model: Model): readonly string[] =>
  lintRepairs(compileModel(model)).map(({ code, path, message }) => `${code} ${path} ${message}`);
const withLobe = (change: Partial<Model['repairs'][number]>, model = plain): Model => ({
  ...model,
  repairs: [{ ...model.repairs[0]!, ...change }, ...model.repairs.slice(1)],
});
const answer = (
  costs: Readonly<Record<string, number>>,
  multipliers: Model['context'][number]['values'][number]['multipliers'] = {},
): Model['context'] => {
  const quantities = Object.fromEntries(Object.entries(costs).map(([id, best]) => [id, exactly(best)]));
  const values = [{ id: 'pushrod', label: 'Pushrods', why: 'for tests', multipliers, costs: quantities }];
  return [{ id: 'valvetrain', label: 'Valvetrain', question: 'Which?', values }];
};

test('a repair takes at least the opening and closing of its access, all that this requires, and the least of work', () => {
  expect(found(plain)).toEqual([]);
  expect(found(withLobe({ minutes: exactly(105) }))).toEqual([
    "repair-below-access /repairs/0/minutes 'renew-lobe' takes 105 minutes, but opening and closing 'shaft' take 100, and the work at least 6",
  ]);
});

test('what two accesses share is opened once', () => {
  expect(found(withLobe({ access: ['cover', 'shaft'] }))).toEqual([]);
});

test('its parts hold the gaskets of all that is opened', () => {
  const [none, cover, shaft] = plain.access;
  const access = [none!, { ...cover!, parts: exactly(15) }, { ...shaft!, parts: exactly(8) }];
  expect(found({ ...plain, access })).toEqual([
    "repair-below-access /repairs/0/parts 'renew-lobe' needs parts for 20, but the gaskets of 'shaft' cost 23",
  ]);
  expect(found(withLobe({ parts: exactly(23) }, { ...plain, access }))).toEqual([]);
});

test('an answer that makes the access dearer makes the repair dearer too', () => {
  expect(found({ ...plain, context: answer({ shaft: 2 }) })).toEqual([
    "repair-below-access /repairs/0/minutes 'renew-lobe' takes 106 minutes with 'valvetrain: pushrod', but opening and closing 'shaft' take 160, and the work at least 6",
  ]);
  expect(found({ ...plain, context: answer({ shaft: 2, 'renew-lobe': 1.6 }) })).toEqual([]);
});

test('an answer under which there is nothing to cure is not looked at; what is wrong anyway is said once', () => {
  const gone = { lobe: { ...exactly(0), definitional: true } };
  expect(found({ ...plain, context: answer({ shaft: 2 }, gone) })).toEqual([]);
  expect(found(withLobe({ minutes: exactly(90) }, { ...plain, context: answer({ shaft: 2 }) }))).toHaveLength(1);
});
