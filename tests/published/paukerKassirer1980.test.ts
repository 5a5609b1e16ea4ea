import { actionThresholds } from '@faultodds/core/planning';
import { describe, expect, test } from 'vitest';

// Pauker S.G., Kassirer J.P. (1980) The threshold approach to clinical decision making. N Engl J Med 302:1109-1117; (1975) 293:229-234.
// Formulas from memory, checked by indifference below; the clinical example was not found. Check C8. Tolerance 1e-12.
const cases = [
  {
    stakes: { benefit: 50, loss: 10, testPrice: 0.5, sensitivity: 0.9, falsePositiveRate: 0.2 },
    expected: [1 / 6, 0.05319148936170213, 0.5769230769230769],
  },
  {
    stakes: { benefit: 50, loss: 10, testPrice: 0, sensitivity: 0.9, falsePositiveRate: 0.2 },
    expected: [1 / 6, 0.0425531914893617, 0.6153846153846154],
  },
  {
    stakes: { benefit: 20, loss: 20, testPrice: 1, sensitivity: 0.8, falsePositiveRate: 0.1 },
    expected: [0.5, 0.16666666666666666, 0.7727272727272727],
  },
];

describe.each(cases)('stakes $stakes (C8)', ({ stakes, expected }) => {
  const found = actionThresholds(stakes);

  test('act, test and act-without-test thresholds', () => {
    expect(found.noTestThreshold).toBeCloseTo(expected[0]!, 12);
    expect(found.testingThreshold).toBeCloseTo(expected[1]!, 12);
    expect(found.testTreatmentThreshold).toBeCloseTo(expected[2]!, 12);
  });

  test('at each threshold the two neighbouring choices are worth the same', () => {
    const { benefit, loss, testPrice, sensitivity, falsePositiveRate } = stakes;
    const act = (p: number) => p * benefit - (1 - p) * loss;
    const follow = (p: number) => p * sensitivity * benefit - (1 - p) * falsePositiveRate * loss - testPrice;
    expect(act(found.noTestThreshold)).toBeCloseTo(0, 12);
    expect(follow(found.testingThreshold)).toBeCloseTo(0, 12);
    expect(follow(found.testTreatmentThreshold)).toBeCloseTo(act(found.testTreatmentThreshold), 12);
  });
});
