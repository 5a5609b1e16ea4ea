// What advice proposes at every stage of the worked cases, against what a technician would accept there (acceptedSteps.json: common practice,
// from memory, no published source; written before the first comparison).
import {
  advise,
  beliefOf,
  caseState,
  circumstancesOf,
  compileModel,
  factsOf,
  loadCase,
  parseModel,
  type CaseDocument,
} from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';
import { describe, expect, test } from 'vitest';
import accepted from './acceptedSteps.json' with { type: 'json' };

interface Stage {
  readonly after: number;
  readonly accept: readonly { readonly step: string }[];
  readonly wrong: readonly { readonly step: string; readonly because: string }[];
}

const compiled = compileModel(parseModel(misfire));
const { model } = compiled;
const worked = demoCases as readonly CaseDocument[];
const cases = Object.entries(accepted.cases as Readonly<Record<string, readonly Stage[]>>);

/** A worked case before its result or repair number `after`, or whole. */
function caseAfter(id: string, after: number) {
  const document = worked.find((one) => one.id === id)!;
  const steps = document.events.flatMap(({ kind }, at) =>
    kind === 'result-recorded' || kind === 'repair-tried' ? [at] : [],
  );
  const events = document.events.slice(0, steps[after] ?? document.events.length);
  return { count: steps.length, state: caseState(loadCase(compiled, { ...document, events })) };
}

function isAmong(list: readonly { readonly step: string }[], steps: readonly string[]): boolean {
  return list.some(({ step }) => steps.includes(step));
}

const stages = cases.flatMap(([id, all]) =>
  all.map(({ after, accept, wrong }) => {
    const { state } = caseAfter(id, after);
    const advice = advise(compiled, beliefOf(compiled, factsOf(state)), circumstancesOf(compiled, state));
    const { best } = advice;
    const step =
      best.kind === 'test' ? `test:${best.test}` : best.kind === 'repair' ? `repair:${best.repair}` : best.kind;
    const visit = (advice.visit?.tests ?? []).map((one) => `test:${one.test}`);
    return {
      at: `${id} after ${after}`,
      step,
      isAccepted: accept.some((one) => one.step === step),
      // what is proposed to be done in one go holds one of them, and nothing wrong
      isInVisit: isAmong(accept, visit) && !isAmong(wrong, visit),
      wrong: wrong.find((one) => one.step === step)?.because,
      tests: advice.tests.map(({ test: one }) => one),
      seen: new Map(state.observations.flatMap((one) => (one.kind === 'result' ? [[one.test, one.outcome]] : []))),
    };
  }),
);

describe('the list of accepted steps', () => {
  test('has every stage of every worked case', () => {
    expect(cases.map(([id]) => id)).toEqual(worked.map(({ id }) => id));
    for (const [id, all] of cases)
      expect(all.map(({ after }) => after)).toEqual(Array.from({ length: caseAfter(id, 0).count + 1 }, (_, at) => at));
  });

  test('names steps there are, none of them accepted and wrong at once', () => {
    const known = new Set([
      ...model.tests.map(({ id }) => `test:${id}`),
      ...model.repairs.map(({ id }) => `repair:${id}`),
      'refer',
      'prove',
    ]);
    for (const { accept, wrong } of cases.flatMap(([, all]) => all)) {
      const steps = [...accept, ...wrong].map(({ step }) => step);
      expect(steps.filter((step) => !known.has(step))).toEqual([]);
      expect(new Set(steps).size).toBe(steps.length);
      expect(accept.length).toBeGreaterThan(0);
      expect(accept.length).toBeLessThanOrEqual(4);
    }
  });
});

test('advice begins with an accepted step at 56 of 72 stages, or holds one in the same visit at 60, and nowhere with a wrong one', () => {
  const begun = stages.filter(({ isAccepted }) => isAccepted);
  const held = stages.filter(({ isAccepted, isInVisit }) => isAccepted || isInVisit);
  const others = stages.filter((stage) => !held.includes(stage));
  console.log(
    `begins with an accepted step: ${begun.length} of ${stages.length}; with the rest of its visit: ${held.length}; neither accepted nor wrong: ${others
      .map(({ at, step }) => `${at} ${step}`)
      .join(', ')}`,
  );
  expect(stages).toHaveLength(72);
  expect(begun.length).toBeGreaterThanOrEqual(56);
  expect(held.length).toBeGreaterThanOrEqual(60);
  expect(stages.filter(({ wrong }) => wrong !== undefined).map(({ at, step }) => `${at}: ${step}`)).toEqual([]);
});

test('no follow-up is proposed before its look has shown something', () => {
  const followUps = model.tests.filter(({ follows }) => follows !== undefined);
  expect(followUps.length).toBeGreaterThan(10);
  for (const { at, tests, seen } of stages) {
    const early = followUps.filter(
      ({ id, follows }) =>
        tests.includes(id) && !follows!.some((look) => look.outcomes.includes(seen.get(look.test) ?? '')),
    );
    expect(
      early.map(({ id }) => id),
      at,
    ).toEqual([]);
  }
});
