import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { BeliefWarning } from './belief.ts';
import type { Facts } from '../evidence/facts.ts';
import { isCalledFor, outcomesSeen, type OutcomesSeen } from '../evidence/outcomesSeen.ts';
import { testAsked } from '../evidence/testAsked.ts';
import type { Model } from '../model/model.ts';

type PairWarning = Extract<BeliefWarning, { readonly a: string }>;

/** What a reader should know about the evidence itself: what hangs together and counts twice, tests repeated, tests run while the fault
 * slept, follow-ups without the look before them. */
export function findWarnings(compiled: CompiledModel, facts: Facts): readonly BeliefWarning[] {
  const asked = facts.observations.map((observation) => ({ observation, test: testAsked(compiled, observation) }));
  const idsOf = (name: string): readonly string[] => {
    const [feature = '', value] = name.split(':');
    if (feature in facts.context)
      return value === undefined || facts.context[feature] === value ? [`context:${feature}`] : [];
    return asked.filter(({ test }) => test === name).map(({ observation }) => observation.id);
  };
  const dependent = pairsThatCountTwice(compiled.model).flatMap((pair): BeliefWarning[] => {
    const [first, second] = [idsOf(pair.a), idsOf(pair.b)];
    return first.length > 0 && second.length > 0 ? [{ ...pair, items: [...first, ...second] }] : [];
  });
  const tests = [...new Set(asked.map(({ test }) => test))];
  const repeated = tests.flatMap((test): BeliefWarning[] => {
    const items = idsOf(test);
    return test !== '' && items.length > 1 ? [{ kind: 'repeated', test, items }] : [];
  });
  const asleep = asked.flatMap(({ observation, test }): BeliefWarning[] => {
    const needsFault = compiled.tests.get(test)?.test.faultMustBeActive === true;
    return observation.kind === 'result' && needsFault && observation.faultActive === 'no'
      ? [{ kind: 'asleep', test, items: [observation.id] }]
      : [];
  });
  const followUps = tests
    .flatMap((id) => compiled.tests.get(id)?.test ?? [])
    .filter(({ follows }) => follows !== undefined);
  const seen: OutcomesSeen = followUps.length > 0 ? outcomesSeen(compiled, facts) : new Map();
  const early = followUps
    .filter((test) => !isCalledFor(test, seen))
    .map(({ id }): BeliefWarning => ({ kind: 'look-missing', test: id, items: idsOf(id) }));
  return [...dependent, ...repeated, ...asleep, ...early];
}

/** Pairs that belief takes for independent though they are not, each once. */
function pairsThatCountTwice({ dependentPairs, contextOverlaps }: Model): readonly Omit<PairWarning, 'items'>[] {
  const isListed = (first: string, second: string): boolean =>
    dependentPairs.some(({ a, b }) => (a === first && b === second) || (a === second && b === first));
  return [
    ...dependentPairs.flatMap(({ a, b, kind }) => (kind === 'modelled' ? [] : [{ kind, a, b }])),
    ...contextOverlaps.flatMap(({ a, b }) => (isListed(a, b) ? [] : [{ kind: 'same-fact' as const, a, b }])),
  ];
}
