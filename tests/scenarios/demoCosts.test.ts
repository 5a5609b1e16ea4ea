import {
  caseState,
  circumstancesOf,
  defaultPrices,
  factsOf,
  advise,
  recordEvent,
  saveCase,
  startCase,
  beliefOf,
} from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { accessBits } from '../../packages/core/src/cost/accessBits.ts';
import { makeTariff } from '../../packages/core/src/cost/tariff.ts';
import { compiled, demos, model } from './misfireCases.ts';
import { dearerRepairs } from './correctionsOfRepairs.ts';
import { readDossier } from './readDossier.ts';

// What the demo cases cost, access counted once: as written in each case, and in the trade dossier where it is at hand.
interface DossierCase {
  readonly id: string;
  readonly steps: readonly { readonly test: string; readonly costFirstTime: number }[];
  readonly testCost: number;
  readonly repairCost: number;
  readonly totalCost: number;
}
const published = (readDossier() as { readonly demoCases: readonly unknown[] } | undefined)?.demoCases as
  readonly DossierCase[] | undefined;

/** Prices of a case's tests as advised just before each was done, and of the cheapest repair of the true cause at the end. */
function pricesOf(id: string): { readonly tests: readonly (readonly [string, number])[]; readonly repair: number } {
  const demo = demos.get(id)!;
  const tests: [string, number][] = [];
  let session = startCase({ id, title: id });
  for (const event of saveCase(compiled, demo).events) {
    if (event.kind === 'result-recorded') {
      const state = caseState(session);
      const advice = advise(compiled, beliefOf(compiled, factsOf(state)), circumstancesOf(compiled, state));
      const advised = advice.tests.find((one) => one.test === event.test);
      expect(advised, `${event.test} is on offer`).toBeDefined();
      tests.push([event.test, advised!.price.amount]);
    }
    session = recordEvent(compiled, session, event);
  }
  const { context, openAccess } = caseState(session);
  const tariff = makeTariff(compiled, defaultPrices(model), context);
  const open = accessBits(compiled, openAccess);
  const repairs = model.repairs
    .map((repair, index) => ({ repair, index }))
    .filter(({ repair }) => repair.cures[demo.demo!.trueCause] !== undefined)
    .map(({ index }) => tariff.repair(index, open).total);
  return { tests, repair: Math.min(...repairs) };
}

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);

describe.each([...demos].map(([id, { demo }]) => [id, demo!] as const))('%s', (id, demo) => {
  test(`costs ${demo.testCost} in tests and ${demo.repairCost} in repair`, () => {
    const { tests, repair } = pricesOf(id);
    expect(sum(tests.map(([, price]) => price))).toBeCloseTo(demo.testCost!, 6);
    expect(repair).toBeCloseTo(demo.repairCost!, 6);
    expect(sum(tests.map(([, price]) => price)) + repair).toBeCloseTo(demo.totalCost!, 6);
  });
});

test.skipIf(published === undefined)('the dossier is at hand (skipped: nothing is compared with it)', () => {
  expect(published).toHaveLength(12);
});

describe.skipIf(published === undefined)(
  'against the dossier (needs ../shared/trade/dossier.json), rounded to whole units as there',
  () => {
    test.each((published ?? []).map((one) => [one.id, one] as const))('%s, step by step', (id, expected) => {
      const { tests, repair } = pricesOf(id);
      expect(tests.map(([test, price]) => [test, Math.round(price)])).toEqual(
        expected.steps.map((step) => [step.test, step.costFirstTime]),
      );
      expect(Math.round(sum(tests.map(([, price]) => price)))).toBe(expected.testCost);
      const dearer = dearerRepairs[id] ?? 0;
      expect(Math.round(repair)).toBe(expected.repairCost + dearer);
      expect(Math.round(sum(tests.map(([, price]) => price)) + repair)).toBe(expected.totalCost + dearer);
    });
  },
);
