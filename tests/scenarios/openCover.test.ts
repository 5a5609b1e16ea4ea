import { caseState, factsOf, advise, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { compiled, demos, model } from './misfireCases.ts';

// demo-07, invented, as it stands after the running compression test: everything closed, or the cover off for another reason.
const facts = factsOf(caseState(demos.get('demo-07')!));
const soFar = facts.observations.findIndex((one) => one.kind === 'result' && one.test === 'running-compression') + 1;
const belief = beliefOf(compiled, { ...facts, observations: facts.observations.slice(0, soFar) });
const closed = advise(compiled, belief);
const open = advise(compiled, belief, { openAccess: ['valve-cover-off'] });
const watch = (advice: typeof closed) => advice.tests.find((one) => one.test === 'rotate-and-watch')!;

test('turning the engine and watching the valves costs 275 behind the cover and 25 with the cover off', () => {
  // 15 minutes of watching; cover, coil and dress cover off and on again take 126 minutes, the cover gasket costs 40
  expect(watch(closed).price.amount).toBeCloseTo(275, 6);
  expect(watch(closed).breakdown.access.amount).toBeCloseTo(250, 6);
  expect(watch(closed).accessToOpen).toEqual(['engine-dress-off', 'coil-off', 'valve-cover-off']);
  expect(watch(open).price.amount).toBeCloseTo(25, 6);
  expect(watch(open).breakdown.access.amount).toBe(0);
  expect(watch(open).accessToOpen).toEqual([]);
});

test('with the cover off, watching is worth its price; behind the cover it is not', () => {
  expect(watch(closed).netValue.amount).toBeLessThan(0);
  expect(watch(open).netValue.amount).toBeGreaterThan(0);
});

test('the open cover changes what comes next: a look at the valvetrain instead of a cheap scan', () => {
  const accessOf = (advice: typeof closed) => {
    const { best } = advice;
    return best.kind === 'test' ? model.tests.find(({ id }) => id === best.test)!.access : best.kind;
  };
  expect(accessOf(closed)).not.toBe('valve-cover-off');
  expect(accessOf(open)).toBe('valve-cover-off');
  expect(open.expectedCost.amount).toBeLessThan(closed.expectedCost.amount);
});

test('with the cover off, what holds only while it is opened goes; the look itself, hot parts and open holes stay', () => {
  const own = model.tests.find(({ id }) => id === 'rotate-and-watch')!.cautions;
  for (const caution of [...own, 'hot-parts', 'dropped-objects', 'self-starting']) {
    expect(watch(open).cautions).toContain(caution);
  }
  // unplugging the coils is over, the cover is not closed yet
  for (const caution of ['high-voltage', 'tools-counted']) expect(watch(open).cautions).not.toContain(caution);
  const opening = model.access.find(({ id }) => id === 'valve-cover-off')!.cautions;
  for (const caution of [...own, ...opening]) expect(watch(closed).cautions).toContain(caution);
});
