import { describe, expect, test } from 'vitest';
import { deepFreeze } from '../../../../tests/fixtures/deepFreeze.ts';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { parseModel } from '../model/parseModel.ts';
import type { Observation } from '../evidence/observation.ts';
import { outcomeGivenCause } from './outcomeGivenCause.ts';
import { rankCauses } from './rankCauses.ts';
import { beliefOf } from './beliefOf.ts';

const compiled = compileModel(parseModel(pumpModel()));
const believe = (observations: readonly Observation[], context = {}) =>
  beliefOf(compiled, deepFreeze({ context, observations }));

describe('before any result', () => {
  test('the prior is the weights, normalised', () => {
    const { prior, posterior, logProbabilityOfEvidence } = believe([]);
    expect(prior).toEqual({
      'fuse-blown': 0.4,
      'motor-worn': 0.15,
      'hose-leak': 0.25,
      clogged: 0.18,
      'not-listed': 0.02,
    });
    for (const [cause, p] of Object.entries(prior)) expect(posterior[cause]).toBeCloseTo(p, 12);
    expect(logProbabilityOfEvidence).toBeCloseTo(0, 12);
  });

  test('an intake answer multiplies the odds of a cause', () => {
    const { prior } = believe([], { filter: 'fitted' });
    expect(prior['clogged']! / prior['hose-leak']!).toBeCloseTo((2 * 180) / 250, 12);
  });

  test('what does not exist is ruled out and left out of the ranking', () => {
    const { ruledOut, ranking, prior } = believe([], { 'suction-hose': 'none' });
    expect(ruledOut).toEqual(['hose-leak']);
    expect(prior['hose-leak']).toBe(0);
    expect(ranking.map(({ cause }) => cause)).not.toContain('hose-leak');
  });

  test('a test that needs an intake fact is foretold only when it is stated', () => {
    expect(Object.keys(believe([]).predictive)).toEqual(['hum', 'vacuum', 'fuse-look', 'wheel-look']);
    expect(Object.keys(believe([], { filter: 'fitted' }).predictive)).toContain('filter-look');
  });
});

test('Bayes, by hand: a silent pump', () => {
  const { posterior, logProbabilityOfEvidence } = believe(results(['hum', 'silent']));
  const silent = (turning: number) => turning * 0.1 + (1 - turning) * 0.85;
  const joint = [0.4 * silent(0.02), 0.15 * silent(0.2), 0.25 * silent(0.95), 0.18 * silent(0.95), 0.02 * silent(0.95)];
  const sum = joint.reduce((a, b) => a + b, 0);
  Object.values(posterior).forEach((p, at) => expect(p).toBeCloseTo(joint[at]! / sum, 12));
  expect(logProbabilityOfEvidence).toBeCloseTo(Math.log(sum), 12);
});

test('causes and groups are ranked, likeliest first', () => {
  const { ranking, groups } = believe(results(['hum', 'hums']));
  expect(ranking[0]!.cause).toBe('hose-leak');
  expect(ranking.map(({ probability }) => probability)).toEqual(
    ranking.map(({ probability }) => probability).toSorted((a, b) => b - a),
  );
  expect(groups.map(({ group }) => group)).toEqual(['water', 'electric']);
});

test('correlated tests read one mechanism: the second says less than the first', () => {
  const move = (before: readonly Observation[], after: readonly Observation[]) =>
    Math.log(believe(after).posterior['fuse-blown']! / believe(after).posterior['clogged']!) -
    Math.log(believe(before).posterior['fuse-blown']! / believe(before).posterior['clogged']!);
  const [first, second] = results(['hum', 'silent'], ['hum', 'silent']);
  expect(move([first!], [first!, second!])).toBeLessThan(move([], [first!]));
});

describe('doubtful results', () => {
  test('"about 3 to 1" lies between the two outcomes', () => {
    const weak = believe(results(['vacuum', 'weak'])).posterior['hose-leak']!;
    const strong = believe(results(['vacuum', 'strong'])).posterior['hose-leak']!;
    const about = believe([{ kind: 'result', id: 'r', test: 'vacuum', likelihood: { weak: 3, strong: 1 } }]).posterior[
      'hose-leak'
    ]!;
    expect(about).toBeGreaterThan(strong);
    expect(about).toBeLessThan(weak);
  });

  test('all on one outcome is that outcome', () => {
    const named = believe(results(['vacuum', 'weak'])).posterior;
    const weighed = believe([{ kind: 'result', id: 'r', test: 'vacuum', likelihood: { weak: 7 } }]).posterior;
    for (const [cause, p] of Object.entries(named)) expect(weighed[cause]).toBeCloseTo(p, 12);
  });

  test('a fault perhaps asleep lies between present and absent', () => {
    const p = (active: 'yes' | 'no' | 'unknown') =>
      believe(results(['vacuum', 'weak', active])).posterior['hose-leak']!;
    expect(p('no')).toBeCloseTo(believe([]).posterior['hose-leak']!, 12);
    expect(p('unknown')).toBeGreaterThan(p('no'));
    expect(p('unknown')).toBeLessThan(p('yes'));
  });

  test('a look that needs no running fault counts the same awake or asleep', () => {
    const p = (active: 'yes' | 'no' | 'unknown') => believe(results(['fuse-look', 'blown', active])).posterior;
    expect(p('no')).toEqual(p('yes'));
    expect(p('unknown')).toEqual(p('yes'));
  });
});

describe('repairs are evidence', () => {
  const tried = (repair: string, cured: boolean): Observation => ({ kind: 'repair-tried', id: 'x', repair, cured });

  test('a new fuse and still no water: the fuse is all but cleared, everything else rises in proportion', () => {
    const before = believe([]).posterior;
    const { posterior } = believe([tried('fit-fuse', false)]);
    expect(posterior['fuse-blown']).toBeLessThan(0.05);
    expect(posterior['clogged']! / posterior['hose-leak']!).toBeCloseTo(before['clogged']! / before['hose-leak']!, 12);
  });

  test('a new fuse and it runs: it was the fuse, not for certain', () => {
    const { posterior } = believe([tried('fit-fuse', true)]);
    expect(posterior['fuse-blown']).toBeGreaterThan(0.9);
    expect(posterior['fuse-blown']).toBeLessThan(1);
  });
});

test('the cheap ranking is the whole belief without the tests to come', () => {
  const facts = { context: { filter: 'fitted' }, observations: results(['hum', 'hums'], ['vacuum', 'weak']) };
  const { predictive: _, warnings: __, ...expected } = beliefOf(compiled, facts);
  expect(rankCauses(compiled, facts)).toEqual(expected);
});

describe('outcomes given each cause', () => {
  test('average to the prediction', () => {
    const belief = believe(results(['hum', 'hums']));
    const given = outcomeGivenCause(compiled, belief, 'vacuum');
    const average = Object.entries(given).reduce(
      (sum, [cause, outcomes]) => sum + belief.posterior[cause]! * outcomes['weak']!,
      0,
    );
    expect(average).toBeCloseTo(belief.predictive['vacuum']!['weak']!, 12);
  });

  test('can be asked of a belief that came from elsewhere', () => {
    const belief = believe(results(['hum', 'hums']));
    const copy = JSON.parse(JSON.stringify(belief)) as typeof belief;
    expect(outcomeGivenCause(compiled, copy, 'vacuum')).toEqual(outcomeGivenCause(compiled, belief, 'vacuum'));
  });

  test('unknown and inapplicable tests are named', () => {
    const belief = believe([]);
    expect(() => outcomeGivenCause(compiled, belief, 'vacum')).toThrow(
      expect.objectContaining({ code: 'test-unknown', hint: `did you mean 'vacuum'?` }),
    );
    expect(() => outcomeGivenCause(compiled, belief, 'filter-look')).toThrow(
      expect.objectContaining({ code: 'test-not-applicable' }),
    );
  });
});
