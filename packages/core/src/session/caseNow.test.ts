import { expect, test } from 'vitest';
import { advise } from '../advice/advise.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { caseNow } from './caseNow.ts';
import { circumstancesOf } from './circumstancesOf.ts';
import { recordEvent } from './recordEvent.ts';
import { caseState } from './session.ts';
import { startCase } from './startCase.ts';

const compiled = compileModel(parseModel(pumpModel()));
const session = recordEvent(compiled, startCase({ id: 'c', title: 'C' }), {
  kind: 'result-recorded',
  id: 'r1',
  test: 'hum',
  outcome: 'hums',
});

test('belief and advice are those of the state and the circumstances of the case', () => {
  const now = caseNow(compiled, session);
  const state = caseState(session);
  expect(now).toMatchObject({ session, state, circumstances: circumstancesOf(compiled, state) });
  expect(now.belief).toEqual(beliefOf(compiled, { context: state.context, observations: state.observations }));
  expect(now.advice).toEqual(advise(compiled, now.belief, now.circumstances));
});

test('other circumstances change the advice, not the belief', () => {
  const before = caseNow(compiled, session);
  const { prices } = before.circumstances;
  const circumstances = { ...before.circumstances, prices: { ...prices, labourPerHour: 2 * prices.labourPerHour } };
  const now = caseNow(compiled, session, circumstances);
  expect(now.circumstances).toBe(circumstances);
  expect(now.belief).toEqual(before.belief);
  expect(now.advice.expectedCost.amount).toBeGreaterThan(before.advice.expectedCost.amount);
});
