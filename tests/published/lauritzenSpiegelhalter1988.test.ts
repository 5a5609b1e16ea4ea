import { type Evidence } from '@faultodds/inference';
import { jointPosterior, mostProbableExplanation } from '@faultodds/inference/analysis';
import { describe, expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

// Lauritzen S.L., Spiegelhalter D.J. (1988) Local computations with probabilities on graphical structures and their application to
// expert systems. J. R. Statist. Soc. B 50(2):157-224: the chest-clinic network. Tables seen in a stored public copy, posteriors by full
// enumeration. Checks B1 and B2. Tolerance 1e-8 (the digits quoted).
const clinic = yesNoNetwork([
  ['asia', [], [0.01]],
  ['smoke', [], [0.5]],
  ['tub', ['asia'], [0.05, 0.01]],
  ['lung', ['smoke'], [0.1, 0.01]],
  ['bronc', ['smoke'], [0.6, 0.3]],
  ['either', ['tub', 'lung'], [1, 1, 1, 0]],
  ['xray', ['either'], [0.98, 0.05]],
  ['dysp', ['either', 'bronc'], [0.9, 0.7, 0.8, 0.1]],
]);
const names = ['asia', 'smoke', 'tub', 'lung', 'bronc', 'either', 'xray', 'dysp'];

// evidence, P(evidence), then P(true | evidence) in the order of `names`; NaN where observed
const rows: readonly (readonly [Evidence, number, readonly number[]])[] = [
  [{}, 1, [0.01, 0.5, 0.0104, 0.055, 0.45, 0.064828, 0.11029004, 0.4359706]],
  [
    { dysp: 'yes' },
    0.4359706,
    [0.01032495, 0.63399688, 0.01884531, 0.10275922, 0.83396734, 0.12053583, 0.16209833, NaN],
  ],
  [
    { asia: 'yes', dysp: 'yes' },
    0.004501375,
    [NaN, 0.62591986, 0.08775096, 0.09952515, 0.81140207, 0.18229985, 0.21953886, NaN],
  ],
  [
    { asia: 'yes', dysp: 'yes', xray: 'yes' },
    0.00098822675,
    [NaN, 0.70202512, 0.39171172, 0.44427051, 0.62882178, 0.8137687, NaN, NaN],
  ],
  [
    { asia: 'yes', dysp: 'yes', xray: 'no' },
    0.00351314825,
    [NaN, 0.60451192, 0.0022487, 0.00255042, 0.86276077, 0.00467159, NaN, NaN],
  ],
  [
    { asia: 'yes', dysp: 'yes', xray: 'yes', smoke: 'yes' },
    0.00069376,
    [NaN, NaN, 0.28958141, 0.57916282, 0.70091963, 0.83978609, NaN, NaN],
  ],
  [
    { asia: 'yes', dysp: 'yes', xray: 'yes', smoke: 'no' },
    0.00029446675,
    [NaN, NaN, 0.63232946, 0.12646589, 0.45896014, 0.75247205, NaN, NaN],
  ],
  [
    { smoke: 'no', dysp: 'yes' },
    0.1595666,
    [0.0105528, NaN, 0.02476709, 0.02381451, 0.753945, 0.04833392, 0.09495055, NaN],
  ],
];

describe.each(rows)('chest clinic, given %j (B1)', (evidence, probability, expected) => {
  test(`P(evidence) is ${probability}`, () => {
    expect(chanceOfEvidence(clinic, evidence)).toBeCloseTo(probability, 11);
  });

  test.each(names.map((name, at) => [name, expected[at]!] as const).filter(([, p]) => !Number.isNaN(p)))(
    'P(%s) is %d',
    (name, p) => {
      expect(Math.abs(chanceOf(clinic, name, evidence) - p)).toBeLessThan(5.001e-9);
    },
  );
});

test('the most probable state of a visitor to Asia with dyspnoea is a smoker with bronchitis (B2)', () => {
  const evidence = { asia: 'yes', dysp: 'yes' };
  const { states, logProbability } = mostProbableExplanation(clinic, evidence);
  expect(states).toEqual({
    asia: 'yes',
    smoke: 'yes',
    tub: 'no',
    lung: 'no',
    bronc: 'yes',
    either: 'no',
    xray: 'no',
    dysp: 'yes',
  });
  expect(Math.exp(logProbability)).toBeCloseTo(0.0019494, 12);
  const { probabilities } = jointPosterior(clinic, evidence, names);
  expect(Math.max(...probabilities)).toBeCloseTo(0.4330676737663492, 12);
});
