import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../../tests/fixtures/pumpModel.ts';
import type { Facts } from '../../evidence/facts.ts';
import type { Observation } from '../../evidence/observation.ts';
import { beliefOf } from '../../belief/beliefOf.ts';
import type { Advice } from '../../advice/advice.ts';
import { advise } from '../../advice/advise.ts';
import { explainCase } from '../../explanation/explainCase.ts';
import type { Explanation } from '../../explanation/explanation.ts';
import { compileModel } from '../../compiled/compileModel.ts';
import type { Model } from '../../model/model.ts';
import { parseModel } from '../../model/parseModel.ts';
import { english } from '../languages/english.ts';
import { describeObservation } from './describeObservation.ts';
import { sentenceForAdvice } from './sentenceForAdvice.ts';
import { sentenceForNeedless } from './sentenceForNeedless.ts';
import { sentenceForNotNow } from './sentenceForNotNow.ts';
import { sentenceForObservation } from './sentenceForObservation.ts';
import { sentenceForStopping } from './sentenceForStopping.ts';
import { sentenceForTest } from './sentenceForTest.ts';
import { sentenceForWarning } from './sentenceForWarning.ts';
import { sentenceWithoutObservation } from './sentenceWithoutObservation.ts';

const model = deepFreeze(parseModel(pumpModel()));
const compiled = compileModel(model);
const blown: Observation = { kind: 'result', id: 'r1', test: 'fuse-look', outcome: 'blown' };
const free = {
  price: { amount: 0, currency: 'unit' },
  minutes: 0,
  accessToOpen: [],
  accessToClose: [],
  cautions: [],
};
const fuseThere: Observation = { kind: 'repair-tried', id: 'r9', repair: 'fit-fuse', cured: true };
const weak: Observation = { kind: 'result', id: 'r2', test: 'vacuum', outcome: 'weak' };

function explain(...observations: Observation[]): Explanation {
  return deepFreeze(explainCase(compiled, { context: {}, observations }));
}
function adviceAfter(context: Facts['context'], ...observations: Observation[]): Advice {
  return deepFreeze(advise(compiled, beliefOf(compiled, { context, observations })));
}
function said(explanation: Explanation, at = 0): string {
  return sentenceForObservation(model, explanation.observations[at]!, english);
}

describe('an observation as a heading', () => {
  test.each<[Observation, string]>([
    [blown, 'Look at the fuse: blown'],
    [{ ...weak, faultActive: 'no' }, 'Suction at the inlet: weak (while the fault was not present)'],
    [{ ...weak, faultActive: 'unknown' }, 'Suction at the inlet: weak (not known whether the fault was present)'],
    [{ ...blown, faultActive: 'no' }, 'Look at the fuse: blown'],
    [
      { kind: 'result', id: 'r', test: 'vacuum', likelihood: { strong: 1, weak: 3 } },
      'Suction at the inlet: not clear-cut, “weak” 3 to “strong” 1',
    ],
    [
      { kind: 'repair-tried', id: 'r', repair: 'fit-fuse', cured: false },
      'Tried “Fit a new fuse”: the misfire is still there',
    ],
    [{ kind: 'repair-tried', id: 'r', repair: 'fit-fuse', cured: true }, 'Tried “Fit a new fuse”: the misfire is gone'],
  ])('%#', (observation, words) => expect(describeObservation(model, observation, english)).toBe(words));
});

describe('what a result did', () => {
  test('natural frequencies of the cause it moved most, why, and the one that gave way', () => {
    // 400 of 1000 at intake; blown: 400 x 0.99 against 600 x 0.02 -> 971 of 1000; 0.99 / 0.02 = 49.5 times
    expect(said(explain(blown))).toBe(
      'Of 1000 engines like this, 400 had “Fuse blown” before this result and 971 after it. ' +
        'The result is 50 times as likely with that cause as with any other. ' +
        '“Suction hose leaking” went from 250 to 12.',
    );
  });

  test('evidence against the cause it moved most', () => {
    // 400 x 0.01 against 600 x 0.98
    expect(said(explain({ ...blown, outcome: 'whole' }))).toContain(
      '400 had “Fuse blown” before this result and 7 after it. The result is 98 times as likely with any other cause as with that one.',
    );
  });

  test('what a sleeping fault or a repeated nothing says', () => {
    expect(said(explain({ ...weak, faultActive: 'no' }))).toBe(
      'The fault was not present, so this says nothing about its cause.',
    );
  });

  test('counts below 1 and above 999 are words, not 0 and 1000', () => {
    // 400 x 0.01 x 0.05 of 588.2 left: 0.34 of 1000
    const fuseIn: Observation = { kind: 'repair-tried', id: 'r3', repair: 'fit-fuse', cured: false };
    expect(said(explain({ ...blown, outcome: 'whole' }, fuseIn), 1)).toMatch(
      / 7 had “Fuse blown” before this result and fewer than 1 after it\./,
    );
    const hums: Observation = { kind: 'result', id: 'r4', test: 'hum', outcome: 'silent' };
    expect(said(explain(blown, hums, { ...blown, id: 'r5' }, { ...hums, id: 'r6' }, fuseThere), 4)).toContain(
      'and more than 999 after it.',
    );
  });

  test('who would lead without it', () => {
    const explanation = explain(blown, weak);
    expect(sentenceWithoutObservation(model, explanation, 0, english)).toMatch(
      /^Without this result “Suction hose leaking” would lead, at \d+%; now it is “Fuse blown”, at \d+(\.\d)?%\.$/,
    );
    expect(sentenceWithoutObservation(model, explanation, 1, english)).toMatch(
      /^Without this result “Fuse blown” would lead as well, at 97%/,
    );
    expect(sentenceWithoutObservation(model, explanation, 7, english)).toBe('');
  });
});

describe('advice', () => {
  test('a test as best step: price, time, both average costs, what it saves', () => {
    const advice = adviceAfter({});
    expect(advice.best.kind).toBe('test');
    const [best] = advice.tests;
    const words = sentenceForAdvice(model, advice, english);
    expect(words).toMatch(
      /^Next: “.+”, [\d.]+ units, \d+ min\. Repairing straight away would cost [\d.]+ units on average, /,
    );
    expect(words).toContain(model.tests.find(({ id }) => id === best!.test)!.label);
    expect(words).toMatch(/it saves [\d.]+ units\. (Opens: |Nothing more to open)/);
    expect(sentenceForStopping(model, advice, english)).toMatch(
      /^Another test is still worth it: “.+” saves [\d.]+ units more than it costs\.$/,
    );
  });

  test('a proof as best step: how it is driven and when it counts', () => {
    expect(sentenceForAdvice(model, adviceAfter({}, blown, fuseThere), english)).toBe(
      'Next: confirm the repair. “Fit a new fuse” seems to have fixed the fault. a run: 10 min, 0 km. Confirmed when: one run. ' +
        'If the misfire comes back, record it; the steps below are for that case.',
    );
  });

  test('a repair as best step: price, chance of cure, what comes if it fails; and why testing stops', () => {
    const advice = adviceAfter({}, blown);
    expect(advice.best).toMatchObject({ kind: 'repair', repair: 'fit-fuse' });
    expect(sentenceForAdvice(model, advice, english)).toMatch(
      /^Next: repair\. “Fit a new fuse”, 10 units, 6 min; chance that it fixes the fault: 92%\. Nothing more to open\. If the misfire is still there, (“.+” is next|refer it to a specialist)\. From here to a confirmed repair: [\d.]+ units on average\.$/,
    );
    expect(sentenceForStopping(model, advice, english)).toMatch(
      /^Stop testing: even the best remaining test, “.+”, costs [\d.]+ units and saves only [\d.]+ units\.$/,
    );
  });

  test('a referral as best step names its fee', () => {
    const advice: Advice = { ...adviceAfter({}, blown), best: { kind: 'refer', ...free } };
    expect(sentenceForAdvice(model, advice, english)).toContain('refer it to a specialist');
  });

  test('without any test left, testing stops', () => {
    expect(sentenceForStopping(model, { ...adviceAfter({}), tests: [] }, english)).toBe(
      'Stop testing: no test is left that applies here.',
    );
  });

  test('a test in a list says whether it pays', () => {
    const { tests } = adviceAfter({}, blown);
    for (const one of tests) {
      expect(sentenceForTest(one, english)).toMatch(
        one.netValue.amount > 0 ? /saves [\d.]+ units more than it costs$/ : /costs [\d.]+ units more than it saves$/,
      );
    }
  });

  test('why a test is not proposed', () => {
    expect(sentenceForNotNow(model, { test: 'vacuum', reason: 'equipment', missing: ['gauge', 'lamp'] }, english)).toBe(
      '“Suction at the inlet” needs equipment that is not at hand: Vacuum gauge and Lamp.',
    );
    expect(
      sentenceForNotNow(model, { test: 'filter-look', reason: 'not-applicable', missing: ['filter:fitted'] }, english),
    ).toBe('“Look at the filter” applies only with this answer: Filter: fitted.');
    expect(sentenceForNotNow(model, { test: 'hum', reason: 'already-done', missing: [] }, english)).toBe(
      '“Listen for the hum” has been done.',
    );
    expect(sentenceForNotNow(model, { test: 'hum', reason: 'same-question', missing: ['vacuum'] }, english)).toBe(
      '“Listen for the hum” asks the same as “Suction at the inlet”, which has been answered.',
    );
  });
});

test('warnings name what they are about by its label', () => {
  const asleep: Observation = { kind: 'result', id: 'r3', test: 'hum', outcome: 'hums', faultActive: 'no' };
  const facts: Facts = { context: { filter: 'none' }, observations: [weak, { ...weak, id: 'r4' }, asleep] };
  const words = beliefOf(compiled, facts).warnings.map((warning) => sentenceForWarning(model, facts, warning, english));
  expect(words).toContain(
    '“Suction at the inlet” was done 2 times: a repeat counts only for what it adds to the first run.',
  );
  expect(words).toContain('“Listen for the hum” was done while the fault was not present: it has no effect.');
  const pair = { a: 'filter', b: 'vacuum', items: ['context:filter', 'r2'] };
  const paired = {
    ...model,
    dependentPairs: [{ a: 'filter', b: 'vacuum', kind: 'same-fact', shared: 'dirt', note: 'not said' }],
  } as const;
  const said = (kind: 'same-fact' | 'same-question' | 'shared-error', of: Model): string =>
    sentenceForWarning(of, facts, { kind, ...pair }, english);
  expect(said('same-fact', paired)).toBe(
    '“Filter” and “Suction at the inlet” state the same fact (dirt), and it counts twice: enter only one of them.',
  );
  expect(said('same-fact', model)).toBe(
    '“Filter” and “Suction at the inlet” state the same fact, and it counts twice: enter only one of them.',
  );
  expect(said('same-question', paired)).toBe(
    '“Filter” and “Suction at the inlet” ask the same question (dirt): together they count little more than one.',
  );
  expect(said('shared-error', paired)).toBe(
    'One mistake can make “Filter” and “Suction at the inlet” wrong together (dirt): the second confirms the first less than the ranking assumes.',
  );
});

test('a step that opens the engine says what counts against it, in every sentence that weighs it', () => {
  const opening = { expected: 0.5, counted: { amount: 60, currency: 'EUR' } };
  const said = 'It may open the engine for nothing: €60 counts against it beyond its price';
  expect(sentenceForNeedless(opening, english)).toBe(said);
  const advice = adviceAfter({});
  const [best, ...others] = advice.tests;
  const tests = [{ ...best!, needless: opening }, ...others];
  expect(sentenceForAdvice(model, { ...advice, tests }, english)).toContain(`${said}.`);
  expect(sentenceForAdvice(model, advice, english)).not.toContain('for nothing');
  const stopping = [{ ...best!, needless: opening, netValue: { ...best!.netValue, amount: -1 } }];
  expect(sentenceForStopping(model, { ...advice, tests: stopping }, english)).toContain(`${said}.`);
});
