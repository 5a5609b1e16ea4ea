import { expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import type { Facts } from '../evidence/facts.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { rankAfterEach } from './rankAfterEach.ts';

const compiled = compileModel(parseModel(pumpModel()));
const facts: Facts = {
  context: { filter: 'fitted' },
  observations: [
    { kind: 'result', id: 'r1', test: 'hum', outcome: 'hums' },
    { kind: 'repair-tried', id: 'r2', repair: 'change-hose', cured: false },
    { kind: 'result', id: 'r3', test: 'vacuum', outcome: 'weak' },
    { kind: 'result', id: 'r4', test: 'hum', outcome: 'silent', faultActive: 'no' },
    { kind: 'result', id: 'r5', test: 'vacuum', outcome: 'strong' },
  ],
};

test('every moment is the ranking of a case that ends there', () => {
  const moments = rankAfterEach(compiled, facts);
  expect(moments).toHaveLength(6);
  moments.forEach((moment, at) => {
    const alone = rankCauses(compiled, { ...facts, observations: facts.observations.slice(0, at) });
    expect(moment).toEqual(alone);
  });
});

test('moments that are known are left out, and the rest is as it would be', () => {
  const all = rankAfterEach(compiled, facts);
  expect(rankAfterEach(compiled, facts, { from: 4 })).toEqual(all.slice(4));
  expect(rankAfterEach(compiled, facts, { from: 5 })).toEqual(all.slice(5));
  expect(rankAfterEach(compiled, facts, { from: 99 })).toEqual(all.slice(5));
});

test('an observation the model does not know is refused before anything is ranked', () => {
  const unknown: Facts = { ...facts, observations: [...facts.observations, { kind: 'result', id: 'x', test: 'no' }] };
  expect(() => rankAfterEach(compiled, unknown)).toThrow(EvidenceError);
});
