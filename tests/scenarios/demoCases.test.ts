import { caseState, factsOf, rankCauses } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { compiled, demos, model, uncapped } from './misfireCases.ts';

// The invented demo cases end to end, as they are used: with the cap on context multipliers. That the engine agrees with other evaluators
// on the numbers these cases were first made with is held in `dossierFigures.test.ts`.

test('there are twelve, all marked as invented', () => {
  expect([...demos.keys()]).toEqual(Array.from({ length: 12 }, (_, at) => `demo-${String(at + 1).padStart(2, '0')}`));
  for (const session of demos.values()) expect(session.demo?.invented).toBe(true);
});

describe('with the cap on context multipliers, as it is used', () => {
  test.each([
    ['demo-01', 'coil-weak', 0.79],
    ['demo-02', 'plug-cracked-loose', 0.99],
    ['demo-03', 'injector-clogged', 0.74],
    ['demo-04', 'runner-air-leak', 0.95],
    ['demo-05', 'exhaust-valve-burnt', 0.83],
    ['demo-06', 'gasket-coolant', 0.83],
    ['demo-07', 'cam-bridge-cracked', 0.99],
    ['demo-08', 'cam-lobe-slipped', 0.91],
    ['demo-09', 'deactivation-stuck', 0.95],
    ['demo-10', 'false-report', 0.83],
    ['demo-11', 'coil-circuit', 0.75],
    ['demo-12', 'spring-broken', 0.96],
  ])('%s ends at its true cause, %s, above %d', (id, cause, least) => {
    const session = demos.get(id)!;
    const [first] = rankCauses(compiled, factsOf(caseState(session))).ranking;
    expect(session.demo?.trueCause).toBe(cause);
    expect(first!.cause).toBe(cause);
    expect(first!.probability).toBeGreaterThan(least);
  });

  test('where answers overlap so far that the cap cuts them, the cause they point at loses, and still leads', () => {
    const facts = factsOf(caseState(demos.get('demo-06')!));
    const product = Object.entries(facts.context).reduce((product, [feature, value]) => {
      const answer = model.context.find(({ id }) => id === feature)!.values.find(({ id }) => id === value)!;
      return product * (answer.multipliers['gasket-coolant']?.best ?? 1);
    }, 1);
    expect(product).toBeGreaterThan(model.contextCap.high);
    const [capped, free] = [rankCauses(compiled, facts), rankCauses(uncapped, facts)];
    expect(capped.posterior['gasket-coolant']).toBeLessThan(free.posterior['gasket-coolant']!);
    expect(capped.posterior['head-cracked']).toBeGreaterThan(free.posterior['head-cracked']!);
    expect(capped.ranking[0]!.cause).toBe('gasket-coolant');
  });
});
