import { caseState, factsOf, rankCauses } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { compiled, demos, model, uncapped } from './misfireCases.ts';
import { readDossier } from './readDossier.ts';

// The invented demo cases end to end. Reference: the trade dossier the knowledge was written from, whose figures two independent
// evaluators agree on to 0.0005 (best estimates, fault active, context multipliers uncapped). Kept outside the repository.
interface DossierCase {
  readonly id: string;
  readonly trueCause: string;
  readonly modelTop3: readonly { readonly cause: string; readonly p: number }[];
}
const published = (readDossier() as { readonly demoCases: readonly unknown[] } | undefined)?.demoCases as
  readonly DossierCase[] | undefined;

test('there are twelve, all marked as invented', () => {
  expect([...demos.keys()]).toEqual(Array.from({ length: 12 }, (_, at) => `demo-${String(at + 1).padStart(2, '0')}`));
  for (const session of demos.values()) expect(session.demo?.invented).toBe(true);
});

test.skipIf(published === undefined)('the dossier is at hand (skipped: nothing is compared with it)', () => {
  expect(published).toHaveLength(12);
});

describe.skipIf(published === undefined)(
  'against the dossier (needs ../shared/trade/dossier.json), tolerance 0.005',
  () => {
    test.each((published ?? []).map((one) => [one.id, one] as const))(
      'the top three of %s, multipliers uncapped',
      (id, { modelTop3 }) => {
        const { ranking } = rankCauses(uncapped, factsOf(caseState(demos.get(id)!)));
        expect(ranking.slice(0, 2).map(({ cause }) => cause)).toEqual(modelTop3.slice(0, 2).map(({ cause }) => cause));
        // third places can be ties of a few in ten thousand, so they are found by name
        for (const { cause, p } of modelTop3) {
          expect(Math.abs(ranking.find((one) => one.cause === cause)!.probability - p), cause).toBeLessThan(0.005);
        }
      },
    );
  },
);

describe('with the cap on context multipliers, as it is used', () => {
  test.each([
    ['demo-01', 'coil-weak', 0.8],
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
    ['demo-12', 'spring-broken', 0.98],
  ])('%s ends at its true cause, %s, above %d', (id, cause, least) => {
    const session = demos.get(id)!;
    const [first] = rankCauses(compiled, factsOf(caseState(session))).ranking;
    expect(session.demo?.trueCause).toBe(cause);
    expect(first!.cause).toBe(cause);
    expect(first!.probability).toBeGreaterThan(least);
  });

  test('only demo-06 feels the cap: 4 x 15 = 60 is cut to 50, and the leak to the coolant falls from 0.865 to 0.842', () => {
    const facts = factsOf(caseState(demos.get('demo-06')!));
    const multiplier = (feature: string) =>
      model.context.find((one) => one.id === feature)!.values.find((one) => one.id === facts.context[feature])!
        .multipliers['gasket-coolant']!.best;
    expect(multiplier('pattern') * multiplier('coolant-loss')).toBe(60);
    expect(model.contextCap.high).toBe(50);
    const [capped, free] = [rankCauses(compiled, facts).posterior, rankCauses(uncapped, facts).posterior];
    expect(capped['gasket-coolant']).toBeCloseTo(0.842, 3);
    expect(free['gasket-coolant']).toBeCloseTo(0.865, 3);
    // the competing crack keeps its whole 2.5 x 13 = 32.5 and gains
    expect(capped['head-cracked']).toBeCloseTo(0.142, 3);
    expect(free['head-cracked']).toBeCloseTo(0.122, 3);
    for (const [id, session] of demos) {
      const own = factsOf(caseState(session));
      const moved = Math.max(
        ...compiled.causes.map((c) =>
          Math.abs(rankCauses(compiled, own).posterior[c]! - rankCauses(uncapped, own).posterior[c]!),
        ),
      );
      expect(moved > 0.001, id).toBe(id === 'demo-06');
    }
  });
});
