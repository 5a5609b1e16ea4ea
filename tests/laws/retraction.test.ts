import {
  caseState,
  circumstancesOf,
  factsOf,
  loadCase,
  advise,
  recordEvent,
  saveCase,
  startCase,
  undo,
  beliefOf,
  type CaseEvent,
  type Observation,
  type Session,
} from '@faultodds/core';
import { expect, test } from 'vitest';
import { anyCase, law, type AnyCase } from './anyCase.ts';

const eventOf = (observation: Observation): CaseEvent =>
  observation.kind === 'result' ? { ...observation, kind: 'result-recorded' } : observation;

function sessionOf({ compiled, facts }: AnyCase, observations: readonly Observation[]): Session {
  const events: CaseEvent[] = [
    ...Object.entries(facts.context).map(([feature, value]): CaseEvent => ({ kind: 'context-set', feature, value })),
    ...observations.map(eventOf),
  ];
  return events.reduce(
    (session, event) => recordEvent(compiled, session, event),
    startCase({ id: 'case', title: 'A case' }),
  );
}

test('retracting a result gives the state, the belief and the advice in which it was never recorded', () => {
  law(anyCase(), 100, (one) => {
    const { compiled, facts, chance } = one;
    if (facts.observations.length === 0) return;
    const dropped = facts.observations[chance % facts.observations.length]!;
    const with_ = sessionOf(one, facts.observations);
    const retracted = recordEvent(compiled, with_, { kind: 'observation-retracted', id: dropped.id });
    const never = sessionOf(
      one,
      facts.observations.filter(({ id }) => id !== dropped.id),
    );
    expect(caseState(retracted)).toEqual(caseState(never));
    const adviceOf = (session: Session) => {
      const state = caseState(session);
      return advise(compiled, beliefOf(compiled, factsOf(state)), circumstancesOf(compiled, state));
    };
    expect(adviceOf(retracted)).toEqual(adviceOf(never));
    // and undoing the retraction gives back what was there
    expect(caseState(undo(retracted))).toEqual(caseState(with_));
  });
});

test('a case saved and loaded again is the same case', () => {
  law(anyCase(), 60, (one) => {
    const session = sessionOf(one, one.facts.observations);
    const saved: unknown = JSON.parse(JSON.stringify(saveCase(one.compiled, session)));
    expect(caseState(loadCase(one.compiled, saved))).toEqual(caseState(session));
    expect(factsOf(caseState(session)).observations).toEqual(one.facts.observations);
  });
});
