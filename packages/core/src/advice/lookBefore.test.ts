import { expect, test } from 'vitest';
import { advise, beliefOf, compileModel, type Facts, type Model } from '@faultodds/core';
import { sentenceForAdvice } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';

const p = { lobe: { worn: 0.9, sound: 0.1 }, else: { worn: 0.05, sound: 0.95 } };

// the lobe is as good as proven; looking at it does not pay by itself, and is nearly free once the cover is off
const model = (changes: Partial<Model['access'][number]> = { opensEngine: true }): Model => {
  const small = smallModel({
    causes: { lobe: 97, coil: 3 },
    labourPerHour: 60,
    access: { cover: { minutes: 100 }, shaft: { minutes: 80, requires: ['cover'] }, pan: { minutes: 300 } },
    tests: {
      measure: { p, minutes: 40, access: 'cover' },
      look: { p, minutes: 15, access: 'cover' },
      filter: { p, minutes: 15, access: 'pan' },
    },
    repairs: {
      'renew-shaft': { cures: { lobe: 0.98 }, minutes: 300, parts: 50, access: ['shaft'] },
      'renew-coil': { cures: { coil: 0.98 }, minutes: 20, parts: 30 },
    },
    referralFee: 900,
  });
  return { ...small, access: small.access.map((one) => (one.id === 'none' ? one : { ...one, ...changes })) };
};
const facts: Facts = { context: {}, observations: [] };
const adviceOf = (of: Model, observations: Facts['observations'] = []) => {
  const compiled = compileModel(of);
  return advise(compiled, beliefOf(compiled, { ...facts, observations }));
};

test('a repair that opens the engine shows the part: it is looked at before a new one is bought', () => {
  const advice = adviceOf(model());
  expect(advice.tests[0]!.netValue.amount).toBeLessThan(0);
  expect(advice.best).toMatchObject({ kind: 'test', test: 'look', onTheWayTo: 'renew-shaft' });
  expect(advice.expectedCost).toEqual(advice.tests[0]!.expectedCostWith);
  expect(sentenceForAdvice(model(), advice, english)).toMatch(
    /^Next: “look”.+on the way to “renew-shaft”: look at the part/,
  );
});

test('once something behind the opening was looked at, the repair is next', () => {
  const { best } = adviceOf(model(), [{ kind: 'result', id: 'r', test: 'measure', outcome: 'worn' }]);
  expect(best).toMatchObject({ kind: 'repair', repair: 'renew-shaft' });
});

test('nothing is looked at on the way to what opens no engine', () => {
  expect(adviceOf(model({})).best).toMatchObject({ kind: 'repair', repair: 'renew-shaft' });
});
