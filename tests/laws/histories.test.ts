// Laws of advice over simulated histories of the misfire model: a hidden cause is drawn, results are drawn from what the model says of it, steps
// are taken as advised or at random, now and then something is opened by hand. What is proposed at every stage is held against the model's own
// rows, not against the code that proposes it.
import {
  advise,
  beliefOf,
  caseState,
  circumstancesOf,
  factsOf,
  outcomeGivenCause,
  recordEvent,
  startCase,
  type Advice,
  type CaseEvent,
  type Session,
} from '@faultodds/core';
import { sentenceForAdvice, sentenceForStopping } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { describe, expect, test } from 'vitest';
import { createRandom } from '../oracle/randomNetwork.ts';
import { compiled, demos, model } from '../scenarios/misfireCases.ts';
import { seed } from './anyCase.ts';

/** Two thousand with `npm run test:long`; a few of them before a commit. */
const HISTORIES = Math.ceil(2000 * (Number(process.env['FAULTODDS_RUNS'] ?? 0.1) >= 1 ? 1 : 0.03));
const LONGEST = 9;

type Random = () => number;
type Test = (typeof model.tests)[number];
const testOf = new Map(model.tests.map((one) => [one.id, one]));
const accessOf = new Map(model.access.map((one) => [one.id, one]));
const contexts = [...demos.values()].map((session) => factsOf(caseState(session)).context);
const closure = (id: string): string[] => [id, ...accessOf.get(id)!.requires.flatMap(closure)];

function drawn(random: Random, chances: Readonly<Record<string, number>>): string {
  const entries = Object.entries(chances);
  let left = random() * entries.reduce((sum, [, p]) => sum + p, 0);
  for (const [id, p] of entries) if ((left -= p) < 0) return id;
  return entries.at(-1)![0];
}

/** One history, with what is proposed at every stage of it. */
function* history(number: number): Generator<{ readonly session: Session; readonly advice: Advice }> {
  const random = createRandom(seed + number);
  let session = startCase({ id: `history-${number}`, title: 'Simulated' });
  const record = (event: CaseEvent): void => void (session = recordEvent(compiled, session, event));
  const context = random() < 0.5 ? {} : contexts[Math.floor(random() * contexts.length)]!;
  for (const [feature, value] of Object.entries(context)) record({ kind: 'context-set', feature, value });
  const cause = drawn(random, beliefOf(compiled, factsOf(caseState(session))).prior);
  for (let step = 0; step < LONGEST; step += 1) {
    if (random() < 0.1)
      record({ kind: 'access-opened', access: model.access[Math.floor(random() * model.access.length)]!.id });
    const state = caseState(session);
    const belief = beliefOf(compiled, factsOf(state));
    const advice = advise(compiled, belief, circumstancesOf(compiled, state));
    yield { session, advice };
    const { best, tests } = advice;
    if (best.kind === 'refer' || best.kind === 'prove') return;
    const id = `step-${step}`;
    if (best.kind === 'repair' && random() < 0.7) {
      const success =
        model.repairs.find((one) => one.id === best.repair)!.cures[cause]?.best ?? model.goneWithoutCure.best;
      record({ kind: 'repair-tried', id, repair: best.repair, cured: random() < success });
      continue;
    }
    const chosen =
      best.kind === 'test' && random() < 0.6 ? best.test : tests[Math.floor(random() * tests.length)]?.test;
    const done = testOf.get(chosen ?? '');
    if (done === undefined) return;
    const sleeps =
      done.faultMustBeActive && random() > model.causes.find((one) => one.id === cause)!.activeFraction.best;
    const chances = sleeps
      ? (done.asleep ?? done.rows.at(-1)!).p
      : outcomeGivenCause(compiled, belief, done.id)[cause]!;
    const faultActive = random() < 0.2 ? 'unknown' : sleeps ? 'no' : 'yes';
    record({
      kind: 'result-recorded',
      id,
      test: done.id,
      outcome: drawn(random, chances),
      ...(done.faultMustBeActive ? { faultActive } : {}),
    });
  }
}

const stages = Array.from({ length: HISTORIES }, (_, number) =>
  [...history(number)].map((one, at) => ({
    ...one,
    state: caseState(one.session),
    at: `seed ${seed}, history ${number}, stage ${at}`,
  })),
).flat();

/** Every test that is named as something to do at a stage. */
const proposed = ({ best, tests, visit }: Advice): Test[] =>
  [...tests, ...(visit?.tests ?? []), ...(best.kind === 'test' ? [best] : [])].map((one) => testOf.get(one.test)!);

describe(`${HISTORIES} histories, ${stages.length} stages`, () => {
  test('there are repairs, referrals, proofs and things open among them', () => {
    const kinds = new Set(stages.map(({ advice }) => advice.best.kind));
    expect([...kinds].sort()).toEqual(['prove', 'refer', 'repair', 'test']);
    expect(stages.some(({ state }) => state.openAccess.includes('head-off'))).toBe(true);
  });

  test('no follow-up stands before its look', () => {
    for (const { at, advice, state } of stages) {
      const seen = new Map<string, Set<string>>();
      for (const one of state.observations) {
        if (one.kind === 'result') seen.set(one.test, (seen.get(one.test) ?? new Set()).add(one.outcome ?? ''));
      }
      for (const { id, follows } of proposed(advice)) {
        const called = follows?.some((look) => look.outcomes.some((outcome) => seen.get(look.test)?.has(outcome)));
        expect(called, `${at}: ${id}`).not.toBe(false);
      }
    }
  });

  test('nothing that turns, cranks, runs or drives the engine is proposed while it is apart', () => {
    for (const { at, advice, state } of stages) {
      const apart = state.openAccess.filter((id) => accessOf.get(id)!.engine === 'apart');
      for (const { id, engine = 'apart', access } of proposed(advice)) {
        const inTheWay =
          engine === 'apart' ? [] : apart.filter((open) => engine === 'driven' || !closure(access).includes(open));
        expect(inTheWay, `${at}: ${id}`).toEqual([]);
      }
    }
  });

  test('what is on record is not proposed again, nor what asks the same', () => {
    for (const { at, advice, state } of stages) {
      const done = new Set([
        ...state.observations.map((one) =>
          one.kind === 'result' ? one.test : (model.repairs.find(({ id }) => id === one.repair)!.sameAs?.test ?? ''),
        ),
        ...Object.keys(state.context),
      ]);
      const answered = new Set(
        model.dependentPairs.flatMap(({ a, b, kind }) =>
          kind === 'same-question' ? [...(done.has(a) ? [b] : []), ...(done.has(b) ? [a] : [])] : [],
        ),
      );
      for (const { id } of proposed(advice)) expect(done.has(id) || answered.has(id), `${at}: ${id}`).toBe(false);
    }
  });

  test('a repair that did not help is not proposed again, entered as a repair or as the test of its kind', () => {
    for (const { at, advice, state } of stages) {
      const failed = state.observations.flatMap((one) => {
        if (one.kind === 'repair-tried') return one.cured ? [] : [one.repair];
        if (one.faultActive === 'no') return [];
        return model.repairs
          .filter(({ sameAs }) => sameAs?.test === one.test && sameAs.notCured === one.outcome)
          .map(({ id }) => id);
      });
      const steps = advice.repairNow.steps.map(({ repair }) => repair);
      for (const repair of [...steps, ...(advice.best.kind === 'repair' ? [advice.best.repair] : [])])
        expect(failed, `${at}: ${repair}`).not.toContain(repair);
    }
  });

  test('every step carries its cautions, those of what it opens and of what it closes', () => {
    const cautionsOf = (own: readonly string[], opens: readonly string[], closes: readonly string[]): string[] => [
      ...own,
      ...opens.flatMap((id) => accessOf.get(id)!.cautions),
      ...closes.flatMap((id) => accessOf.get(id)!.cautionsClosing),
    ];
    for (const { at, advice } of stages) {
      for (const { test: id, ...facts } of [...advice.tests, ...(advice.visit?.tests ?? [])]) {
        const own = cautionsOf(testOf.get(id)!.cautions, facts.accessToOpen, facts.accessToClose);
        expect(
          own.filter((one) => !facts.cautions.includes(one)),
          `${at}: ${id}`,
        ).toEqual([]);
      }
      for (const { repair, ...facts } of advice.repairNow.steps) {
        const { cautions } = model.repairs.find(({ id }) => id === repair)!;
        const own = cautionsOf(cautions, facts.accessToOpen, facts.accessToClose);
        expect(
          own.filter((one) => !facts.cautions.includes(one)),
          `${at}: ${repair}`,
        ).toEqual([]);
      }
    }
  });

  test('every stage has a next step, or says why to stop', () => {
    for (const { at, advice } of stages) {
      const { best, tests, repairNow } = advice;
      expect(best.price.amount, at).toBeGreaterThanOrEqual(0);
      if (best.kind === 'test') expect(tests[0]!.test, at).toBe(best.test);
      if (best.kind === 'repair') expect(repairNow.steps[0]!.repair, at).toBe(best.repair);
      if (best.kind === 'refer')
        expect(
          tests.every(({ netValue }) => netValue.amount <= 1e-6 * repairNow.expectedCost.amount),
          at,
        ).toBe(true);
      expect(
        `${sentenceForAdvice(model, advice, english)}${sentenceForStopping(model, advice, english)}`.length,
        at,
      ).toBeGreaterThan(20);
    }
  });

  test('what is done in one go opens once what it shares, and closes nothing that comes later', () => {
    for (const { at, advice } of stages) {
      const { best, visit } = advice;
      if (visit === undefined) continue;
      expect(
        visit.tests.map((one) => one.test),
        at,
      ).toContain(best.kind === 'test' ? best.test : '');
      const opened = visit.tests.flatMap(({ accessToOpen }) => accessToOpen);
      expect(new Set(opened).size, at).toBe(opened.length);
      const sum = visit.tests.reduce((all, { price }) => all + price.amount, 0);
      expect(visit.price.amount, at).toBeCloseTo(sum, 6);
    }
  });
});
