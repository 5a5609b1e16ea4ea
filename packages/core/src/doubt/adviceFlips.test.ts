import { demoCases, misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { beliefOf } from '../belief/beliefOf.ts';
import type { Facts } from '../evidence/facts.ts';
import { advise } from '../advice/advise.ts';
import { changeNumber } from '../compiled/changeNumber.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { factsOf } from '../session/factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { caseState } from '../session/session.ts';
import { adviceFlips } from './adviceFlips.ts';
import { sameStep } from './sameStep.ts';

const compiled = compileModel(parseModel(misfire));
const best = (model: typeof compiled, facts: Facts) => advise(model, beliefOf(model, facts)).best;

test('at each flip the advice is the other one, and a step nearer it is still the present one', () => {
  const all = factsOf(caseState(loadCase(compiled, demoCases[8])));
  const facts = { context: all.context, observations: all.observations.slice(0, 4) };
  const flips = adviceFlips(compiled, facts, {}, { numbers: 4 });
  const now = best(compiled, facts);
  expect(flips.length).toBeGreaterThan(0);
  for (const flip of flips) {
    expect(flip.at).toBeGreaterThanOrEqual(Math.min(flip.low, 1e-6));
    expect(flip.at).toBeLessThanOrEqual(flip.high);
    expect(best(changeNumber(compiled, flip.path, flip.at), facts)).toEqual(flip.best);
    expect(sameStep(flip.best, now)).toBe(false);
    const nearer = flip.at + Math.sign(flip.value - flip.at) * ((flip.high - flip.low) / 99);
    expect(best(changeNumber(compiled, flip.path, nearer), facts)).toEqual(now);
  }
});

test('nothing is tried once the question is withdrawn', () => {
  expect(adviceFlips(compiled, { context: {}, observations: [] }, {}, { signal: { aborted: true } })).toEqual([]);
});
