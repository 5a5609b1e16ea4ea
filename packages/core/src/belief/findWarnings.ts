import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { BeliefWarning } from './belief.ts';
import type { Facts } from '../evidence/facts.ts';
import { testAsked } from '../evidence/testAsked.ts';

/** What a reader should know about the evidence itself: one fact told twice, tests repeated, tests run while the fault slept. */
export function findWarnings(compiled: CompiledModel, facts: Facts): readonly BeliefWarning[] {
  const { model } = compiled;
  const asked = facts.observations.map((observation) => ({ observation, test: testAsked(compiled, observation) }));
  const idsOf = (name: string): readonly string[] => {
    const [feature = '', value] = name.split(':');
    if (feature in facts.context)
      return value === undefined || facts.context[feature] === value ? [`context:${feature}`] : [];
    return asked.filter(({ test }) => test === name).map(({ observation }) => observation.id);
  };
  const pairs = [
    ...model.dependentPairs.filter(({ treatment }) => !/^(handled|cause-level)/.test(treatment)),
    ...model.contextOverlaps.map(({ a, b }) => ({
      a,
      b,
      shared: `${a} and ${b}`,
      treatment: 'these say the same thing: enter one of them',
    })),
  ];
  const sameFact = pairs.flatMap(({ a, b, shared, treatment }): BeliefWarning[] => {
    const [first, second] = [idsOf(a), idsOf(b)];
    return first.length > 0 && second.length > 0
      ? [{ kind: 'same-fact', items: [...first, ...second], shared, treatment }]
      : [];
  });
  const repeated = [...new Set(asked.map(({ test }) => test))].flatMap((test): BeliefWarning[] => {
    const items = idsOf(test);
    return test !== '' && items.length > 1
      ? [
          {
            kind: 'repeated',
            items,
            shared: test,
            treatment: 'a repeat counts only for what the first run did not tell',
          },
        ]
      : [];
  });
  const asleep = asked.flatMap(({ observation, test }): BeliefWarning[] => {
    const needsFault = compiled.tests.get(test)?.test.faultMustBeActive === true;
    return observation.kind === 'result' && needsFault && observation.faultActive === 'no'
      ? [
          {
            kind: 'asleep',
            items: [observation.id],
            shared: test,
            treatment: 'the fault was not present: the result says nothing',
          },
        ]
      : [];
  });
  return [...sameFact, ...repeated, ...asleep];
}
