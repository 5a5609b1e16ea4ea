// What is computed from the data of priors/ instead of stored, against the figures printed in the trade reference.
import { describe, expect, test } from 'vitest';
import { compileModel, parseModel } from '@faultodds/core';
import { lintModel, rangeOfProbability } from '@faultodds/core/authoring';
import { misfire } from '@faultodds/misfire';
import { dossierModel } from './dossierModel.ts';
import { readDossier, type Dossier } from './readDossier.ts';

const found = readDossier();

describe.skipIf(found === undefined)('figures that follow from the data', () => {
  const dossier = (found ?? {}) as Dossier;

  // Ranges are derived from p and ess and not stored. The dossier's were drawn at random (a few thousand draws), hence 0.023; below a
  // twentieth of a case its draws do not follow Beta(p ess, (1 - p) ess) but are wider, and only that is checked.
  test('derived 5-95 % intervals agree with the printed ones', () => {
    const rows = [
      ...dossier.causes.flatMap(({ states }) => Object.values(states)),
      ...dossier.mechanisms.roots.map(({ background }) => background),
      ...dossier.mechanisms.dependent.flatMap((mechanism) => mechanism.rows),
      ...dossier.tests.flatMap((of) => of.rows),
    ];
    const cells = rows.flatMap(({ p, ess, range90 }) =>
      Object.entries(p).map(([state, value]) => ({ p: value, ess, printed: range90[state]! })),
    );
    expect(cells).toHaveLength(1387);
    for (const { p, ess, printed } of cells) {
      const [low, high] = rangeOfProbability(p, ess);
      if (Math.min(p, 1 - p) * ess < 0.05) expect(high).toBeLessThan(printed[1] + 1e-3);
      else
        expect(Math.max(Math.abs(low - printed[0]), Math.abs(high - printed[1])), `p ${p}, ess ${ess}`).toBeLessThan(
          0.023,
        );
    }
  });

  test('the linter finds the pairs of causes that the dossier calls hard to separate, with the same figures', () => {
    const findings = lintModel(compileModel(dossierModel(dossier, parseModel(misfire), dossier.context.cap))).filter(
      ({ code }) => code === 'causes-not-separated',
    );
    expect(findings).toHaveLength(dossier.hardPairs.length);
    for (const { a, b, bestTest, totalVariation } of dossier.hardPairs) {
      const message = findings
        .map((finding) => finding.message)
        .find((text) => [a, b, bestTest].every((id) => text.includes(`'${id}'`)));
      expect(message, `${a} / ${b}`).toContain(`in ${Math.round(totalVariation * 100)} of 100`);
    }
  });
});

test('with the confirming tests one pair is left that no single test separates: two lifters that fail alike', () => {
  const findings = lintModel(compileModel(parseModel(misfire)));
  expect(findings.map(({ code }) => code)).toEqual(['causes-not-separated']);
  expect(findings[0]!.message).toContain("'variable-lift-fault' and 'deactivation-stuck'");
});
