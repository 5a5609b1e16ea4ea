import { describe, expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { accessBits, accessIds } from './accessBits.ts';
import { defaultPrices } from './defaultPrices.ts';
import { makeTariff } from './tariff.ts';

const model = smallModel({
  causes: { a: 1, b: 1 },
  labourPerHour: 60, // a minute costs one unit
  checkMinutes: 15,
  access: {
    hood: { minutes: 4 },
    cover: { minutes: 20, requires: ['hood'] },
    shaft: { minutes: 50, requires: ['cover'] },
    pan: { minutes: 30 },
  },
  tests: {
    look: { p: { a: { yes: 0.9, no: 0.1 }, else: { yes: 0.2, no: 0.8 } }, minutes: 10, price: 3, access: 'cover' },
  },
  repairs: {
    'fit-a': { cures: { a: 0.9 }, minutes: 100, parts: 40, access: ['shaft'] },
    'fit-b': { cures: { b: 0.9 }, minutes: 80, parts: 7, access: ['shaft', 'pan'] },
  },
  referralFee: 500,
});
const compiled = compileModel(model);
const tariff = makeTariff(compiled, defaultPrices(model), {});
const open = (...ids: string[]) => accessBits(compiled, ids);

describe('access', () => {
  test('stands for everything it requires, prerequisites first', () => {
    expect(accessIds(compiled, open('shaft'))).toEqual(['hood', 'cover', 'shaft']);
    expect(open('shaft', 'cover')).toBe(open('shaft'));
    expect(open()).toBe(0);
  });

  test('that nobody knows is named', () => {
    expect(() => open('hood', 'shaft', 'covre')).toThrow(
      expect.objectContaining({
        name: 'EvidenceError',
        code: 'access-unknown',
        path: '/openAccess/2',
        hint: `did you mean 'cover'?`,
      }),
    );
  });
});

describe('a test', () => {
  test('costs its minutes, its consumables and the access still closed', () => {
    expect(tariff.test(0, 0)).toEqual({ total: 10 + 3 + 24, access: 24, parts: 3, minutes: 34 });
    expect(tariff.test(0, open('hood')).total).toBe(10 + 3 + 20);
    expect(tariff.test(0, open('cover'))).toEqual({ total: 13, access: 0, parts: 3, minutes: 10 });
    expect(tariff.test(0, open('shaft')).total).toBe(13);
    expect(tariff.test(0, open('pan'))).toEqual(tariff.test(0, 0));
  });
});

describe('a repair', () => {
  test('costs the whole job, less the labour of what is open', () => {
    expect(tariff.repair(0, 0)).toEqual({ total: 140, access: 74, parts: 40, minutes: 100 });
    expect(tariff.repair(0, open('cover'))).toEqual({ total: 116, access: 50, parts: 40, minutes: 76 });
  });

  test('takes some handling even when all is open', () => {
    // 80 minutes against 104 of access: six minutes are left
    expect(tariff.repair(1, open('shaft', 'pan'))).toEqual({ total: 13, access: 0, parts: 7, minutes: 6 });
    // as many minutes as the model says
    const slow = { ...model, leastRepairMinutes: { ...model.leastRepairMinutes, best: 20 } };
    const slower = makeTariff(compileModel(slow), defaultPrices(slow), {});
    expect(slower.repair(1, open('shaft', 'pan')).minutes).toBe(20);
    expect(slower.repair(0, 0)).toEqual(tariff.repair(0, 0));
  });
});

test('a check is the exposure of the model’s table', () => {
  expect(tariff.check).toEqual({ total: 15, access: 0, parts: 0, minutes: 15 });
});

test('where the model’s table has none for the case, a check costs nothing', () => {
  const unchecked = { ...model, verification: { ...model.verification, checks: [] } };
  const { check } = makeTariff(compileModel(unchecked), defaultPrices(unchecked), {});
  expect(check).toEqual({ total: 0, access: 0, parts: 0, minutes: 0 });
});

test('labour and parts have their own prices', () => {
  const dear = makeTariff(compiled, { currency: 'EUR', labourPerHour: 120, partsFactor: 1.5 }, {});
  expect(dear.test(0, 0).total).toBe(2 * 34 + 1.5 * 3);
  expect(dear.repair(0, 0)).toMatchObject({ total: 200 + 60, parts: 60 });
});

test('intake facts can make work and parts dearer', () => {
  const source = model.sources[0]!.id;
  const twice = { best: 2, low: 2, high: 2, ess: 1, source };
  const values = [
    {
      id: 'yes',
      label: 'yes',
      why: 'little room',
      multipliers: {},
      costs: { look: twice, cover: twice, 'fit-a': twice },
    },
  ];
  const cramped = compileModel({
    ...model,
    context: [{ id: 'cramped', label: 'cramped', question: 'Is it?', values }],
  });
  const stated = makeTariff(cramped, defaultPrices(model), { cramped: 'yes' });
  expect(stated.test(0, 0)).toEqual({ total: 20 + 6 + 4 + 40, access: 44, parts: 6, minutes: 64 });
  expect(stated.repair(0, 0).minutes).toBe(200);
  expect(makeTariff(cramped, defaultPrices(model), {}).test(0, 0)).toEqual(tariff.test(0, 0));
});

describe('opening and closing apart', () => {
  // four minutes to open and three to close the hood, with a gasket for two; the cover as before
  const parted = {
    ...model,
    access: model.access.map((one) =>
      one.id === 'hood'
        ? {
            ...one,
            closeMinutes: { ...one.closeMinutes, best: 3, low: 3, high: 3 },
            parts: { ...one.parts, best: 2, low: 2, high: 2 },
          }
        : one,
    ),
  };
  const priced = makeTariff(compileModel(parted), defaultPrices(parted), {});

  test('opening is labour alone, closing its labour and the gaskets', () => {
    expect(priced.opening(open('cover'))).toEqual({ total: 24, access: 24, parts: 0, minutes: 24 });
    expect(priced.closing(open('cover'))).toEqual({ total: 3 + 2, access: 5, parts: 2, minutes: 3 });
    expect(priced.opening(0)).toEqual({ total: 0, access: 0, parts: 0, minutes: 0 });
  });

  test('a test behind it pays both, and each access has its own price', () => {
    expect(priced.test(0, 0)).toEqual({ total: 10 + 3 + 20 + 4 + 3 + 2, access: 29, parts: 5, minutes: 37 });
    // none, the hood, the cover, the shaft, the pan
    expect([...priced.accessCost]).toEqual([0, 9, 20, 50, 30]);
  });
});
