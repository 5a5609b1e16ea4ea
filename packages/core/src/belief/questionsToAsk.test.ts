import { expect, test } from 'vitest';
import { demoCases, misfire } from '@faultodds/misfire';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { caseState } from '../session/session.ts';
import { factsOf } from '../session/factsOf.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { contextEffects } from './contextEffects.ts';
import { questionsToAsk } from './questionsToAsk.ts';
import { rankCauses } from './rankCauses.ts';

const compiled = compileModel(parseModel(misfire));

test('what causes wait for is asked first, and no answered question is asked again', () => {
  const facts = { context: { pattern: 'load-only' }, observations: [] };
  const questions = questionsToAsk(compiled, facts);
  expect(questions.map(({ feature }) => feature)).not.toContain('pattern');
  expect(questions[0]!.bringsIn.length).toBeGreaterThan(0);
  const rest = questions.filter(({ bringsIn, enables }) => bringsIn.length + enables.length === 0);
  expect(rest.map(({ couldMove }) => couldMove)).toEqual(
    rest.map(({ couldMove }) => couldMove).toSorted((a, b) => b - a),
  );
});

test('the move a question promises is the largest that one of its answers makes', () => {
  const facts = factsOf(caseState(loadCase(compiled, demoCases[4])));
  const now = rankCauses(compiled, facts).posterior;
  for (const { feature, couldMove } of questionsToAsk(compiled, facts).slice(0, 3)) {
    const moves = compiled.model.context
      .find(({ id }) => id === feature)!
      .values.map(
        ({ id }) => rankCauses(compiled, { ...facts, context: { ...facts.context, [feature]: id } }).posterior,
      )
      .map((then) => Object.keys(now).reduce((sum, cause) => sum + Math.abs(then[cause]! - now[cause]!), 0) / 2);
    expect(couldMove).toBeCloseTo(Math.max(...moves), 12);
  }
});

test('what an intake answer changed is the difference it makes, with the multiplier and where it comes from', () => {
  const context = { 'coolant-loss': 'unexplained', pattern: 'cold-only', 'cylinder-deactivation': 'fitted' };
  const effects = contextEffects(compiled, context);
  expect(effects.map(({ feature }) => feature)).toEqual(Object.keys(context));
  const coolant = effects[0]!.causes.find(({ cause }) => cause === 'gasket-coolant')!;
  expect(coolant.multiplier.source).toBe('judgement');
  const { 'coolant-loss': _left, ...without } = context;
  expect(coolant.priorWithout).toBe(
    rankCauses(compiled, { context: without, observations: [] }).prior['gasket-coolant'],
  );
  expect(coolant.priorWith).toBe(rankCauses(compiled, { context, observations: [] }).prior['gasket-coolant']);
  expect(coolant.priorWith).toBeGreaterThan(3 * coolant.priorWithout);
  expect(effects[2]!.causesIn).toEqual(['deactivation-stuck']);
  expect(effects[2]!.testsIn).toContain('lift-mode-command');
});
