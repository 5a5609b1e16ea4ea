import { expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import type { CaseEvent } from './caseEvent.ts';
import { costsSoFar } from './costsSoFar.ts';
import { recordEvent } from './recordEvent.ts';
import { startCase } from './startCase.ts';

const compiled = compileModel(
  smallModel({
    causes: { a: 1, b: 1 },
    labourPerHour: 60, // a minute costs one unit
    checkMinutes: 15,
    access: { hood: { minutes: 4 }, cover: { minutes: 20, requires: ['hood'] } },
    tests: {
      look: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.2, no: 0.8 } }, minutes: 10, price: 3, access: 'cover' },
      feel: { p: { a: { yes: 0.8, no: 0.2 }, else: { yes: 0.3, no: 0.7 } }, minutes: 6, price: 0, access: 'cover' },
    },
    repairs: { 'fit-a': { cures: { a: 0.9 }, minutes: 100, parts: 40, access: ['cover'] } },
    referralFee: 500,
  }),
);
const after = (...events: CaseEvent[]) =>
  costsSoFar(
    compiled,
    events.reduce((session, event) => recordEvent(compiled, session, event), startCase({ id: 'c', title: 't' })),
  );
const amounts = (costs: ReturnType<typeof costsSoFar>) => costs.steps.map(({ price }) => price.total.amount);
const look: CaseEvent = { kind: 'result-recorded', id: 'r1', test: 'look', outcome: 'no' };
const feel: CaseEvent = { kind: 'result-recorded', id: 'r2', test: 'feel', outcome: 'yes' };

test('a case without results has cost nothing', () => {
  const { steps, total } = after();
  expect(steps).toEqual([]);
  expect(total).toMatchObject({ total: { amount: 0 }, minutes: 0 });
});

test('access is paid by the step that needed it first', () => {
  // 10 min + 3 + 24 min of access; then 6 min behind the open cover
  const costs = after(look, feel);
  expect(amounts(costs)).toEqual([37, 6]);
  expect(costs.total).toMatchObject({
    total: { amount: 43 },
    access: { amount: 24 },
    parts: { amount: 3 },
    minutes: 40,
  });
});

test('what was closed in between is paid again', () => {
  // only the cover was closed: its 20 min, not the 4 of the hood
  expect(amounts(after(look, { kind: 'access-closed', access: 'cover' }, feel))).toEqual([37, 26]);
});

test('what was opened by hand is paid by the first step that uses it', () => {
  expect(amounts(after({ kind: 'access-opened', access: 'cover' }, feel, look))).toEqual([30, 13]);
});

test('a result taken back costs nothing, and the next step pays the access instead', () => {
  expect(amounts(after(look, feel, { kind: 'observation-retracted', id: 'r1' }))).toEqual([30]);
});

test('a repair is paid with its check, less the labour of what is open, at the prices of the case', () => {
  const repair: CaseEvent = { kind: 'repair-tried', id: 'p1', repair: 'fit-a', cured: true };
  // closed: 100 min + 40 + 15 min; behind the open cover 24 min less
  expect(amounts(after(repair))).toEqual([155]);
  expect(amounts(after(look, repair))).toEqual([37, 131]);
  const dearer = after(repair, {
    kind: 'prices-set',
    prices: { currency: 'EUR', labourPerHour: 120, partsFactor: 2 },
  });
  expect(dearer.total.total).toEqual({ amount: 310, currency: 'EUR' });
});
