import { expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import { parseModel } from '../../model/parseModel.ts';
import type { Reading } from '../../reading/reading.ts';
import { english } from '../languages/english.ts';
import { describeObservation } from './describeObservation.ts';
import { describeReading } from './describeReading.ts';

const exposure = { amount: 2000, unit: 'firings' } as const;
const values = { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 };

test.each<[Reading, string]>([
  [
    { kind: 'per-cylinder', measure: 'm', unit: 'bar', suspect: 3, values },
    '9.2 bar on cylinder 3, 12.1 to 12.5 bar on the others',
  ],
  [
    { kind: 'per-cylinder', measure: 'm', unit: 'mm', suspect: 2, values: { 1: 9.5, 2: 7.4 } },
    '7.4 mm on cylinder 2, 9.5 mm on the others',
  ],
  [
    { kind: 'per-cylinder', measure: 'm', unit: 'ohm', suspect: 2, values: { 2: 7.4 }, nominal: 12 },
    '7.4 ohm on cylinder 2',
  ],
  [{ kind: 'single', measure: 'm', value: 0.1 + 0.2, unit: 'ratio' }, '0.3'],
  [{ kind: 'pair', measure: 'm', value: 60, reference: 80, unit: 'psi' }, '60 psi against 80 psi'],
  [{ kind: 'trim', measure: 'm', short: -3, long: 12 }, 'short-term -3 %, long-term +12 %'],
  [
    { kind: 'counts', measure: 'm', suspect: 2, counts: { 1: 2, 2: 350, 3: 1 } },
    '350 misfires on cylinder 2, 3 on the others together',
  ],
  [
    {
      kind: 'part-counts',
      measure: 'm',
      before: { suspect: 240, partner: 0, exposure },
      after: { suspect: 1, partner: 180, exposure },
    },
    '240 misfires before; after, 1 on this cylinder and 180 on the other',
  ],
  [
    { kind: 'part-counts', measure: 'm', before: { suspect: 240, exposure }, after: { suspect: 0, exposure } },
    '240 misfires before, 0 after',
  ],
])('%j reads: %s', (reading, expected) => {
  expect(describeReading(reading, english)).toBe(expected);
});

test('a number and the outcome noted beside it stand in one heading', () => {
  const model = parseModel(misfire);
  const reading: Reading = { kind: 'single', measure: 'leakage', value: 42, unit: '%' };
  const label = model.tests.find(({ id }) => id === 'leak-down')!.label;
  expect(describeObservation(model, { kind: 'result', id: 'r', test: 'leak-down', reading }, english)).toBe(
    `${label}: 42 %`,
  );
  expect(
    describeObservation(model, { kind: 'result', id: 'r', test: 'leak-down', reading, outcome: 'to-exhaust' }, english),
  ).toMatch(/: 42 %, \S+/);
});
