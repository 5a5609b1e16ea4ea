import { compileModel, rankCauses } from '@faultodds/core';
import { describe, expect, test } from 'vitest';
import { dossierFacts, dossierModel } from './dossierModel.ts';
import { model } from './misfireCases.ts';
import { readDossier } from './readDossier.ts';

// The engine against other people's evaluators: on the trade dossier's own numbers it must give the dossier's own top three, which two
// independent evaluators computed and agree on to 0.0005 (best estimates, fault active, multipliers uncapped). The dossier prints three
// digits; tolerance 0.0006.
type WithTopThree = { readonly modelTop3: readonly { readonly cause: string; readonly p: number }[] };
const dossier = readDossier();

test.skipIf(dossier === undefined)(
  'the dossier is at hand (skipped: the engine was not held against its figures)',
  () => {
    expect(dossier!.demoCases).toHaveLength(12);
  },
);

describe.skipIf(dossier === undefined)('against the dossier (needs ../shared/trade/dossier.json)', () => {
  const cases = dossier?.demoCases ?? [];
  // there the frozen data count in full beside the customer's pattern; here they share one likelihood
  const inFull = {
    ...model,
    dependentPairs: model.dependentPairs.filter(({ a, b }) => a !== 'freeze-frame' || b !== 'pattern'),
  };
  const compiledWith = (low: number, high: number) => compileModel(dossierModel(dossier!, inFull, { low, high }));

  test.each(cases.map((one) => [one.id, one] as const))('the top three of %s', (_, one) => {
    const { ranking } = rankCauses(compiledWith(1e-9, 1e9), dossierFacts(one));
    const { modelTop3 } = one as unknown as WithTopThree;
    modelTop3.forEach(({ cause, p }, at) => {
      expect(Math.abs(ranking.find((ranked) => ranked.cause === cause)!.probability - p), cause).toBeLessThan(0.0006);
      // places by name only where they are further apart than the printed digits
      if (p - (modelTop3[at + 1]?.p ?? 0) > 0.001) expect(ranking[at]!.cause).toBe(cause);
    });
  });

  test('the cap of 50 moves demo-06 alone: 4 x 15 = 60 is cut, the leak to the coolant falls from 0.865 to 0.842', () => {
    const { cap, features } = dossier!.context;
    expect(cap.high).toBe(50);
    const seepage = cases.find(({ id }) => id === 'demo-06')!;
    const product = Object.entries(seepage.context).reduce((product, [id, value]) => {
      const answer = features.find((feature) => feature.id === id)!.values.find((one) => one.value === value)!;
      return product * (answer.multipliers['gasket-coolant']?.best ?? 1);
    }, 1);
    expect(product).toBe(60);
    const [capped, free] = [compiledWith(cap.low, cap.high), compiledWith(1e-9, 1e9)];
    for (const one of cases) {
      const [a, b] = [rankCauses(capped, dossierFacts(one)).posterior, rankCauses(free, dossierFacts(one)).posterior];
      const moved = Math.max(...Object.keys(a).map((cause) => Math.abs(a[cause]! - b[cause]!)));
      expect(moved > 0.0005, one.id).toBe(one.id === 'demo-06');
      if (one.id !== 'demo-06') continue;
      expect([a['gasket-coolant'], b['gasket-coolant']]).toEqual([expect.closeTo(0.842, 3), expect.closeTo(0.865, 3)]);
      // the competing crack keeps its whole 2.5 x 13 = 32.5 and gains
      expect([a['head-cracked'], b['head-cracked']]).toEqual([expect.closeTo(0.142, 3), expect.closeTo(0.122, 3)]);
    }
  });
});
