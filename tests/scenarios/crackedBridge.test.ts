import { caseState, factsOf, advise, rankCauses, beliefOf, type CauseRanking } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { describe, expect, test } from 'vitest';
import { compiled, demos, groupIn } from './misfireCases.ts';

// demo-07, invented: plug, coil and injector new, compression passes, the miss under load stays. A camshaft bearing bridge is cracked.
const facts = factsOf(caseState(demos.get('demo-07')!));
const steps = facts.observations.map((one) => (one.kind === 'result' ? one.test : ''));
const through = (step: string): CauseRanking =>
  rankCauses(compiled, { ...facts, observations: facts.observations.slice(0, steps.indexOf(step) + 1) });
const intake = rankCauses(compiled, { ...facts, observations: [] });
const bridge = (ranking: CauseRanking) => ranking.posterior['cam-bridge-cracked']!;

describe('the rare cause is right to suspect only when the common ones are really excluded', () => {
  test('at intake about one in a hundred', () => {
    expect(bridge(intake)).toBeGreaterThan(0.005);
    expect(bridge(intake)).toBeLessThan(0.015);
  });

  test('after three new parts and two passes of sealing, 2 to 5 %', () => {
    expect(steps.slice(0, 5)).toEqual([
      'plug-replaced',
      'coil-replaced',
      'injector-replaced',
      'cranking-compression',
      'leak-down',
    ]);
    expect(bridge(through('leak-down'))).toBeGreaterThan(0.02);
    expect(bridge(through('leak-down'))).toBeLessThan(0.05);
  });

  test('after running compression and the waveform the valvetrain leads, more than twice any other group', () => {
    const ranking = through('in-cylinder-waveform');
    expect(groupIn(ranking, 'valvetrain')).toBeGreaterThan(0.5);
    for (const { group, probability } of ranking.groups) {
      if (group !== 'valvetrain') expect(groupIn(ranking, 'valvetrain'), group).toBeGreaterThan(2 * probability);
    }
  });

  test('the look inside settles it, above 99 %', () => {
    expect(bridge(through('bridge-inspection'))).toBeGreaterThan(0.99);
  });

  test('no single result before the look inside would have settled it', () => {
    const { observations } = explainCase(compiled, facts);
    const look = observations.at(-1)!;
    for (const one of observations.slice(0, -1)) {
      expect(one.weightDecibans['cam-bridge-cracked']).toBeLessThan(look.weightDecibans['cam-bridge-cracked']!);
    }
    expect(look.rankingWithout.find(({ cause }) => cause === 'cam-bridge-cracked')!.probability).toBeLessThan(0.95);
  });
});

describe('advice along the way', () => {
  const adviceAfter = (step: string, openAccess: readonly string[] = []) => {
    const observations = facts.observations.slice(0, steps.indexOf(step) + 1);
    return advise(compiled, beliefOf(compiled, { ...facts, observations }), { openAccess });
  };

  test('with everything closed nobody is sent behind the valve cover before the running tests', () => {
    for (const step of [
      'plug-replaced',
      'coil-replaced',
      'injector-replaced',
      'cranking-compression',
      'leak-down',
      'read-cam-codes',
    ]) {
      const { best, tests } = adviceAfter(step);
      expect(best.kind).toBe('test');
      const advised = tests.find((one) => best.kind === 'test' && one.test === best.test)!;
      expect(advised.accessToOpen, step).not.toContain('valve-cover-off');
    }
  });

  test('after the waveform opening the cover pays, after a look at the intake valves that may spare it', () => {
    const { best, tests } = adviceAfter('in-cylinder-waveform');
    expect(best).toMatchObject({ kind: 'test', test: 'borescope-intake-valves' });
    const behind = tests.filter(({ accessToOpen }) => accessToOpen.includes('valve-cover-off'));
    expect(Math.max(...behind.map(({ netValue }) => netValue.amount))).toBeGreaterThan(0);
  });

  test('at the end the repair is the bridge', () => {
    expect(adviceAfter('bridge-inspection', ['camshaft-out']).best).toMatchObject({
      kind: 'repair',
      repair: 'renew-bearing-bridge',
    });
  });
});
