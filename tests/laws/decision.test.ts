import { defaultPrices, advise, type Advice } from '@faultodds/core';
import { expect, test } from 'vitest';
import { createRandom } from '../oracle/randomNetwork.ts';
import { anyCase, apart, believe, law, tolerance } from './anyCase.ts';

const withinRounding = tolerance.money;

test('knowing more, before its price, is never worth less than nothing', () => {
  law(anyCase(), 80, ({ compiled, facts }) => {
    const { tests, repairNow } = advise(compiled, believe(compiled, facts, facts.observations));
    const now = repairNow.expectedCost.amount;
    for (const { outcomes, grossValue, netValue, price, ifAsleep, needless, expectedCostWith } of tests) {
      const again = ifAsleep === undefined ? 0 : ifAsleep.chance * ifAsleep.price.amount;
      const counted = price.amount + again + (needless?.counted.amount ?? 0);
      const after = outcomes.reduce((sum, { probability, expectedCost }) => sum + probability * expectedCost.amount, 0);
      expect(after).toBeLessThanOrEqual(now * (1 + withinRounding));
      expect(grossValue.amount).toBeGreaterThanOrEqual(0);
      // not made true by cutting off at 0: what was cut off is rounding
      expect(Math.abs(grossValue.amount - (now - after))).toBeLessThan(withinRounding * now);
      expect(apart(netValue.amount, grossValue.amount - counted)).toBeLessThan(withinRounding);
      expect(apart(expectedCostWith.amount, now - grossValue.amount + counted)).toBeLessThan(withinRounding);
    }
  });
});

test('what a test is said to lead to is what recording its result leads to', () => {
  law(anyCase(3), 20, ({ compiled, model, facts }) => {
    const { tests } = advise(compiled, believe(compiled, facts, facts.observations));
    for (const { test: id, outcomes } of tests.slice(0, 2)) {
      const { access, mayCause } = model.tests.find((one) => one.id === id)!;
      if (mayCause !== undefined) continue; // forecasts leave out the fault that doing the test may bring about
      const openAccess = [access];
      for (const { outcome, expectedCost, ranking } of outcomes) {
        const after = believe(compiled, facts, [
          ...facts.observations,
          { kind: 'result', id: 'next', test: id, outcome },
        ]);
        for (const { cause, probability } of ranking)
          expect(apart(probability, after.posterior[cause]!)).toBeLessThan(1e-9);
        // the forecast may also keep to the old plan, so it is never dearer than the new one
        const { amount } = advise(compiled, after, { openAccess }).repairNow.expectedCost;
        expect(expectedCost.amount).toBeLessThanOrEqual(amount * (1 + withinRounding));
      }
    }
  });
});

/** Every amount of money in an advice, in a fixed order: by id, so that equal values may change places. */
function amounts(advice: Advice): Record<string, number> {
  const found: Record<string, number> = {};
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('amount' in value && typeof value.amount === 'number') found[path] = value.amount;
    else for (const [key, inner] of Object.entries(value)) walk(inner, `${path}/${key}`);
  };
  for (const one of advice.tests) walk(one, `/tests/${one.test}`);
  for (const step of advice.repairNow.steps) walk(step, `/steps/${step.repair}`);
  walk(advice.repairNow.expectedCost, '/repairNow');
  walk(advice.repairNow.referralFee, '/referral');
  walk(advice.expectedCost, '/expectedCost');
  return found;
}

test('scaling every price, labour included, scales every cost and changes no advice', () => {
  law(anyCase(), 80, ({ compiled, model, facts, chance }) => {
    const factor = 0.1 + 20 * createRandom(chance)();
    const belief = believe(compiled, facts, facts.observations);
    const prices = defaultPrices(model);
    const scaled = {
      ...prices,
      labourPerHour: prices.labourPerHour * factor,
      partsFactor: prices.partsFactor * factor,
    };
    const one = advise(compiled, belief, { prices });
    const other = advise(compiled, belief, { prices: scaled });
    const step = ({ best }: typeof one) => [
      best.kind,
      'test' in best ? best.test : 'repair' in best ? best.repair : '',
    ];
    expect(step(other)).toEqual(step(one));
    expect(other.repairNow.steps.map((step) => step.repair)).toEqual(one.repairNow.steps.map((step) => step.repair));
    const [before, after] = [amounts(one), amounts(other)];
    expect(Object.keys(after).sort()).toEqual(Object.keys(before).sort());
    const size = one.repairNow.expectedCost.amount;
    for (const [path, amount] of Object.entries(before)) {
      expect(Math.abs(after[path]! - amount * factor), path).toBeLessThanOrEqual(
        withinRounding * factor * (Math.abs(amount) + size),
      );
    }
  });
});

test('the currency is the one that was asked for', () => {
  law(anyCase(), 10, ({ compiled, model, facts }) => {
    const prices = { ...defaultPrices(model), currency: 'XYZ' };
    const text = JSON.stringify(advise(compiled, believe(compiled, facts, facts.observations), { prices }));
    expect(new Set(text.match(/"currency":"[^"]*"/g))).toEqual(new Set(['"currency":"XYZ"']));
  });
});

test('open access never costs again, and never raises a price or an expected cost', () => {
  law(anyCase(), 80, ({ compiled, model, facts, chance }) => {
    const belief = believe(compiled, facts, facts.observations);
    const closed = advise(compiled, belief);
    const access = model.access[chance % model.access.length]!.id;
    const open = advise(compiled, belief, { openAccess: [access] });
    expect(open.repairNow.expectedCost.amount).toBeLessThanOrEqual(
      closed.repairNow.expectedCost.amount * (1 + withinRounding),
    );
    // with the engine apart there are tests that have to wait
    if (open.notNow.every(({ reason }) => reason !== 'engine-apart'))
      expect(open.expectedCost.amount).toBeLessThanOrEqual(closed.expectedCost.amount * (1 + withinRounding));
    for (const one of open.tests) {
      const before = closed.tests.find(({ test: id }) => id === one.test)!;
      expect(one.price.amount).toBeLessThanOrEqual(before.price.amount + withinRounding);
      expect(one.minutes).toBeLessThanOrEqual(before.minutes);
      expect(one.accessToOpen).not.toContain(access);
      if (one.accessToOpen.length === 0) expect(one.breakdown.access.amount).toBe(0);
      // what stands open may have to be closed first, with the cautions of that
      const closing = one.accessToClose.flatMap((id) => model.access.find((x) => x.id === id)!.cautionsClosing);
      expect(one.cautions.every((id) => before.cautions.includes(id) || closing.includes(id))).toBe(true);
    }
  });
});

test('a test behind open access costs its own minutes and consumables only', () => {
  law(anyCase(), 60, ({ compiled, model, facts }) => {
    const belief = believe(compiled, facts, facts.observations);
    const openAccess = model.access.map(({ id }) => id);
    for (const { test: id, price, minutes: whole } of advise(compiled, belief, { openAccess }).tests) {
      const { minutes, consumables } = model.tests.find((one) => one.id === id)!;
      const dearer = model.context.reduce((product, { id: feature, values }) => {
        const stated = values.find((value) => value.id === facts.context[feature]);
        return product * (stated?.costs?.[id]?.best ?? 1);
      }, 1);
      expect(whole).toBe(minutes.best * dearer);
      const own = ((minutes.best * model.labourPerHour.best) / 60 + consumables.best) * dearer;
      expect(apart(price.amount, own)).toBeLessThan(withinRounding);
    }
  });
});
