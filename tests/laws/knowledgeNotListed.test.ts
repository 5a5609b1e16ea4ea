// Results that fit no listed cause raise `not-listed` above every listed one. What belongs to no single cause: two confirmed sights of
// damage whose causes differ (two faults at once is `not-listed` by its definition), over all pairs; and invented contradictory cases.
import { outcomeGivenCause, beliefOf } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { after, compiled, model } from '../scenarios/misfireCases.ts';
import { sights, type Sight } from './knowledgeSights.ts';

const context = { 'variable-lift': 'fitted', 'cylinder-deactivation': 'fitted' };
const belief = beliefOf(compiled, { context, observations: [] });
const confirmedGiven = new Map(sights.map(({ confirm }) => [confirm, outcomeGivenCause(compiled, belief, confirm)]));

/** Whether some listed cause shows both at least once in a hundred: then they do not contradict each other. */
const fitTogether = (a: Sight, b: Sight): boolean =>
  model.causes.some(
    ({ id }) =>
      id !== 'not-listed' &&
      [a, b].every(({ confirm, confirmed }) => confirmedGiven.get(confirm)![id]![confirmed]! >= 0.01),
  );
const contradictory = sights.flatMap((a, at) =>
  sights
    .slice(at + 1)
    .filter((b) => new Set([a.look, a.confirm, b.look, b.confirm]).size === 4 && !fitTogether(a, b))
    .map((b) => [a, b] as const),
);

test('two confirmed sights that no listed cause explains, over all pairs of sights', () => {
  expect(contradictory.length).toBeGreaterThan(200);
  for (const pair of contradictory) {
    const { ranking } = after(
      {},
      ...pair.flatMap(
        ({ look, seen, confirm, confirmed }) =>
          [
            [look, seen],
            [confirm, confirmed],
          ] as [string, string][],
      ),
    );
    expect(ranking[0]!.cause, pair.map(({ confirm, confirmed }) => `${confirm}: ${confirmed}`).join(', ')).toBe(
      'not-listed',
    );
  }
});

// invented; each contradicts every listed cause in at least one result
const cases: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'a valve confirmed not to open, yet compression, running compression and pressure trace are normal': [
    ['rotate-and-watch', 'this-one-does-not-open'],
    ['lift-remeasured', 'does-not-open'],
    ['cranking-compression', 'normal'],
    ['running-compression', 'normal'],
    ['in-cylinder-waveform', 'normal'],
  ],
  'lobes measured out of line, yet the cylinder fills and works like its neighbours': [
    ['lobe-pair-angle', 'misaligned'],
    ['lobe-angle-measured', 'out-of-line'],
    ['running-compression', 'normal'],
    ['in-cylinder-waveform', 'normal'],
    ['intake-vacuum-waveform', 'even'],
    ['exhaust-pulse', 'even'],
  ],
  'coil wiring measured bad, yet current, spark and injector drive are right and the code names the injector': [
    ['coil-feed-measured', 'wiring-at-fault'],
    ['coil-current-ramp', 'like-neighbours'],
    ['secondary-waveform', 'like-neighbours'],
    ['read-circuit-codes', 'injector-circuit'],
    ['injector-drive', 'present'],
  ],
  'spring confirmed broken and injector wiring confirmed bad': [
    ['follower-lash-check', 'spring-broken'],
    ['valvetrain-part-measured', 'spring-broken'],
    ['injector-drive', 'absent-or-weak'],
    ['injector-feed-measured', 'wiring-at-fault'],
  ],
  'no compression in a tight cylinder whose valves all lift alike, all swaps without effect': [
    ['coil-swap', 'stays'],
    ['plug-swap', 'stays'],
    ['injector-swap', 'stays'],
    ['cranking-compression', 'near-zero'],
    ['leak-down', 'tight'],
    ['rotate-and-watch', 'equal'],
    ['valve-lift-dial', 'equal'],
    ['lobe-pair-angle', 'aligned'],
  ],
  'no compression tower running, yet even humps, normal compression and equal lift': [
    ['in-cylinder-waveform', 'no-tower'],
    ['relative-compression', 'even'],
    ['cranking-compression', 'normal'],
    ['valve-lift-dial', 'equal'],
  ],
  'no coil current, yet the feed is in order, the coil good and the spark normal': [
    ['coil-current-ramp', 'no-current'],
    ['coil-feed-measured', 'all-in-order'],
    ['coil-swap', 'stays'],
    ['secondary-waveform', 'like-neighbours'],
  ],
  'exhaust hump and reverse pulse, yet lift, lobes and sealing are measured right': [
    ['in-cylinder-waveform', 'exhaust-hump'],
    ['intake-vacuum-waveform', 'reverse-pulse'],
    ['lift-remeasured', 'alike'],
    ['valve-lift-dial', 'equal'],
    ['lobe-angle-measured', 'in-line'],
    ['leak-down', 'tight'],
  ],
};

describe('invented cases that belong to no listed cause', () => {
  test.each(Object.entries(cases))('%s', (_, named) => {
    const { ranking } = after({}, ...named);
    expect(ranking[0]!.cause).toBe('not-listed');
  });

  test('a case that fits a listed cause does not', () => {
    const { posterior } = after({}, ['coil-swap', 'follows'], ['coil-current-ramp', 'wrong-shape-or-level']);
    expect(posterior['not-listed']).toBeLessThan(0.01);
  });
});
