// Readings as evidence, on the misfire model.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { misfire } from '@faultodds/misfire';
import type { Observation, TestResult } from './observation.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { explainCase } from '../explanation/explainCase.ts';
import { weightOfEvidence } from '../explanation/weightOfEvidence.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import { loadCase } from '../caseFile/loadCase.ts';
import { recordEvent } from '../session/recordEvent.ts';
import { saveCase } from '../caseFile/saveCase.ts';
import { startCase } from '../session/startCase.ts';
import type { Reading } from '../reading/reading.ts';

const compiled = compileModel(parseModel(misfire));
const SEED = 20;
const posterior = (...observations: Observation[]): Readonly<Record<string, number>> =>
  rankCauses(compiled, { context: {}, observations }).posterior;
const result = (id: string, of: string, more: Partial<TestResult>): TestResult => ({
  kind: 'result',
  id,
  test: of,
  ...more,
});
const bar = (suspect: number, ...others: number[]): Reading => ({
  kind: 'per-cylinder',
  measure: 'pressure',
  unit: 'bar',
  suspect: 1,
  values: Object.fromEntries([suspect, ...others].map((value, at) => [at + 1, value])),
});
const cranking = (id: string, suspect: number): TestResult =>
  result(id, 'cranking-compression', { reading: bar(suspect, 12.4, 12.1, 12.5) });
const leak = (id: string, percent: number, outcome?: string): TestResult =>
  result(id, 'leak-down', {
    reading: { kind: 'single', measure: 'leakage', value: percent, unit: '%' },
    ...(outcome === undefined ? {} : { outcome }),
  });
const decibans = (before: object, after: object, cause: string): number =>
  weightOfEvidence(before as Record<string, number>, after as Record<string, number>)[cause]!;

test('a number near a band edge moves belief less than the outcome it would be called', () => {
  const [none, called, read] = [
    posterior(),
    posterior(result('r', 'cranking-compression', { outcome: 'low' })),
    posterior(cranking('r', 9.2)),
  ];
  const [byOutcome, byNumber] = [called, read].map((after) => decibans(none, after, 'exhaust-valve-burnt')) as [
    number,
    number,
  ];
  expect(byNumber).toBeGreaterThan(0);
  expect(byNumber).toBeLessThan(byOutcome);
});

test('a pass leaves an inlet that opens too little where it was, and a leak falls', () => {
  const [before, after] = [posterior(), posterior(cranking('r', 12.1))];
  expect(after['cam-bridge-cracked']! / before['cam-bridge-cracked']!).toBeGreaterThan(0.5);
  expect(after['exhaust-valve-burnt']! / before['exhaust-valve-burnt']!).toBeLessThan(0.2);
});

test('a wide-open leak heard at the tailpipe is one result: number and place together', () => {
  const place = posterior(result('r', 'leak-down', { outcome: 'to-exhaust' }));
  const both = posterior(leak('r', 60, 'to-exhaust'));
  const number = posterior(leak('r', 60));
  expect(both['exhaust-valve-burnt']!).toBeGreaterThan(number['exhaust-valve-burnt']!);
  // the place adds to the number only what the number leaves open: far less than two independent results would
  const start = posterior();
  const [ofPlace, ofNumber, ofBoth] = [place, number, both].map((after) =>
    decibans(start, after, 'exhaust-valve-burnt'),
  ) as [number, number, number];
  expect(ofBoth).toBeLessThan(ofPlace + ofNumber - 3);
});

describe('one test, however it was entered', () => {
  const runs: Record<string, readonly TestResult[]> = {
    'number and number': [cranking('a', 8), cranking('b', 8)],
    'number and outcome': [cranking('a', 8), result('b', 'cranking-compression', { outcome: 'low' })],
    'place and place': [leak('a', 50, 'to-exhaust'), leak('b', 50, 'to-exhaust')],
  };
  test.each(Object.entries(runs))('%s: the second moves belief less than the first', (_, [first, second]) => {
    const [start, once, twice] = [posterior(), posterior(first!), posterior(first!, second!)];
    const cause = 'exhaust-valve-burnt';
    const [of1, of2] = [decibans(start, once, cause), decibans(once, twice, cause)];
    expect(of2).toBeLessThan(of1 / 2);
    expect(of2).toBeGreaterThan(-of1 / 2);
  });

  test('the order of results does not matter', () => {
    const results = [
      cranking('a', 8),
      result('b', 'cranking-compression', { outcome: 'marginal' }),
      leak('c', 50, 'to-exhaust'),
      cranking('d', 9.1),
      result('e', 'running-compression', {
        reading: { kind: 'pair', measure: 'snap', value: 6, reference: 9, unit: 'bar' },
        faultActive: 'unknown',
      }),
      result('f', 'running-compression', {
        reading: { kind: 'pair', measure: 'idle', value: 3, reference: 9, unit: 'bar' },
      }),
    ];
    const expected = posterior(...results);
    fc.assert(
      fc.property(fc.shuffledSubarray(results, { minLength: results.length }), (shuffled) => {
        const found = posterior(...shuffled);
        for (const [cause, p] of Object.entries(expected)) expect(found[cause]).toBeCloseTo(p, 12);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });

  test('readings of either side of the valves do not share an error', () => {
    const lift = (measure: string): TestResult =>
      result(measure, 'valve-lift-dial', {
        reading: { kind: 'per-cylinder', measure, unit: 'mm', suspect: 2, values: { 1: 9.5, 2: 7.3, 3: 9.5 } },
      });
    const [start, one, two] = [
      posterior(),
      posterior(lift('intake-lift')),
      posterior(lift('intake-lift'), lift('exhaust-lift')),
    ];
    // both sides low: the carrier of both, not one lobe
    expect(decibans(one, two, 'cam-bridge-cracked')).toBeGreaterThan(0);
    expect(decibans(start, one, 'lifter-collapsed')).toBeGreaterThan(5);
  });
});

describe('one wild number', () => {
  // The densest row of the cranking reading is 16 times the flat one, the wild share 2 %: no number speaks stronger than 16 / 0.02 = 29 dB.
  test('whatever it is, no cause moves further than the wild share lets it', () => {
    const start = posterior();
    const possible = Object.keys(start).filter((cause) => start[cause]! > 0);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 59, noNaN: true }), (value) => {
        const after = posterior(cranking('r', value));
        for (const cause of possible) expect(Math.abs(decibans(start, after, cause))).toBeLessThan(29.1);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  test('a slip of a digit at a neighbour is set aside and changes little', () => {
    const right = posterior(result('r', 'cranking-compression', { reading: bar(12.1, 12.4, 12.1, 12.5) }));
    const slip = posterior(result('r', 'cranking-compression', { reading: bar(12.1, 12.4, 12.1, 52) }));
    for (const [cause, p] of Object.entries(right)) expect(Math.abs(slip[cause]! - p)).toBeLessThan(0.01);
  });

  test('three good readings outweigh one wild one', () => {
    const wild = posterior(cranking('a', 0.5));
    const outvoted = posterior(cranking('a', 0.5), cranking('b', 12.1), cranking('c', 12.2), cranking('d', 12));
    expect(outvoted['exhaust-valve-burnt']!).toBeLessThan(wild['exhaust-valve-burnt']! / 3);
  });
});

test('a reading taken while the fault slept says nothing', () => {
  const snap: Reading = { kind: 'pair', measure: 'snap', value: 3, reference: 12, unit: 'bar' };
  expect(posterior(result('r', 'running-compression', { reading: snap, faultActive: 'no' }))).toEqual(posterior());
  const [sure, unsure] = [{}, { faultActive: 'unknown' } as const].map((more) =>
    posterior(result('r', 'running-compression', { reading: snap, ...more })),
  );
  expect(decibans(posterior(), unsure!, 'lifter-collapsed')).toBeLessThan(
    decibans(posterior(), sure!, 'lifter-collapsed'),
  );
});

test('an open winding is beyond the distributions and counts as the outcome it means', () => {
  const open: Reading = {
    kind: 'per-cylinder',
    measure: 'resistance',
    unit: 'ohm',
    suspect: 2,
    values: { 1: 14.5, 2: 1e6, 3: 14.4 },
  };
  expect(posterior(result('r', 'injector-current', { reading: open }))).toEqual(
    posterior(result('r', 'injector-current', { outcome: 'open-or-short' })),
  );
});

test('with two causes at once a reading speaks for every pair that holds its cause', () => {
  const pairs = compileModel(parseModel(misfire), { atMost: 2 });
  const [before, after] = [[], [leak('r', 60, 'to-exhaust')]].map(
    (observations) => rankCauses(pairs, { context: {}, observations }).posterior,
  );
  const pair = 'coil-weak + exhaust-valve-burnt';
  expect(after![pair]!).toBeGreaterThan(before![pair]!);
  expect(Object.values(after!).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
});

test('60 readings do not underflow', () => {
  const many = Array.from({ length: 60 }, (_, at) => cranking(`r${at}`, 4 + (at % 9)));
  const sum = Object.values(posterior(...many)).reduce((a, b) => a + b, 0);
  expect(sum).toBeCloseTo(1, 12);
});

test('what a reading did is explained like any other result', () => {
  const { observations } = explainCase(compiled, { context: {}, observations: [leak('r', 50, 'to-exhaust')] });
  expect(observations[0]!.weightDecibans['exhaust-valve-burnt']).toBeGreaterThan(10);
  expect(observations[0]!.movers[0]!.cause).toBe('exhaust-valve-burnt');
});

describe('refused', () => {
  test.each([
    [leak('r', 50, 'tight'), 'outcome-contradicts-reading', '/observations/0/outcome'],
    [leak('r', 50, 'to-mars'), 'outcome-unknown', '/observations/0/outcome'],
    [leak('r', -5), 'reading-implausible', '/observations/0/reading/value'],
    [{ ...leak('r', 50), likelihood: { tight: 1 } }, 'outcome-missing', '/observations/0'],
    [result('r', 'smoke-intake', { reading: bar(9, 12) }), 'reading-not-possible', '/observations/0/reading'],
  ])('%j', (observation, code, path) => {
    expect(() => posterior(observation)).toThrow(EvidenceError);
    expect(() => posterior(observation)).toThrow(expect.objectContaining({ code, path }));
  });
});

describe('saved cases', () => {
  test('a case with readings is saved and loaded again', () => {
    const session = recordEvent(compiled, startCase({ id: 'c1', title: 'Invented' }), {
      kind: 'result-recorded',
      id: 'r1',
      test: 'leak-down',
      reading: { kind: 'single', measure: 'leakage', value: 42, unit: '%' },
      outcome: 'to-exhaust',
    });
    const saved: unknown = JSON.parse(JSON.stringify(saveCase(compiled, session)));
    expect(saveCase(compiled, loadCase(compiled, saved))).toEqual(saveCase(compiled, session));
  });

  test('a case from before readings loads', () => {
    const old = {
      format: 'faultodds-case',
      version: 1,
      id: 'c1',
      title: 'Invented',
      events: [{ kind: 'result-recorded', id: 'r1', test: 'leak-down', outcome: 'tight' }],
    };
    expect(saveCase(compiled, loadCase(compiled, old)).events).toEqual(old.events);
  });

  test('a damaged reading is refused at its field and leaves the session as it was', () => {
    const session = startCase({ id: 'c1', title: 'Invented' });
    expect(() =>
      recordEvent(compiled, session, {
        kind: 'result-recorded',
        id: 'r1',
        test: 'leak-down',
        reading: { kind: 'single', measure: 'leakage', value: 420, unit: '%' },
      }),
    ).toThrow(expect.objectContaining({ code: 'reading-implausible', path: '/reading/value' }));
    expect(saveCase(compiled, session).events).toEqual([]);
  });
});
