import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { Problem } from '../errors/faultoddsError.ts';

/** Probabilities of a fault that part doing nothing, testing and acting. All in [0, 1] for a test that can be worth buying. */
export interface ActionThresholds {
  /** Without the test: act above, leave alone below. */
  readonly noTestThreshold: number;
  /** Below it neither test nor act: even a positive result would not pay. */
  readonly testingThreshold: number;
  /** Above it act without testing: even a negative result would not stop it. Not above `testingThreshold`: never buy the test. */
  readonly testTreatmentThreshold: number;
}

/** What an action and a test of two outcomes are worth, money in one currency. */
export interface ThresholdStakes {
  /** What acting gains when the fault is there, above 0. */
  readonly benefit: number;
  /** What acting loses when the fault is not there, above 0. */
  readonly loss: number;
  /** Price of the test, not negative. Default 0. */
  readonly testPrice?: number;
  /** P(positive | fault) and P(positive | no fault), in [0, 1]. */
  readonly sensitivity: number;
  readonly falsePositiveRate: number;
}

/** When to leave alone, when to test, when to act: the three probabilities at which neighbouring choices are worth the same.
 * A result outside [0, 1] says that the choice beyond it is never the best. A test that tells nothing and costs nothing gives
 * `noTestThreshold` for all three.
 * @throws EvidenceError `stakes-invalid` for numbers outside the stated ranges
 * @example actionThresholds({ benefit: 50, loss: 10, sensitivity: 0.9, falsePositiveRate: 0.2 }).noTestThreshold // 1/6
 * Source: Pauker S.G., Kassirer J.P. 1980, New England Journal of Medicine 302:1109-1117. */
export function actionThresholds(stakes: ThresholdStakes): ActionThresholds {
  const { benefit, loss, testPrice = 0, sensitivity, falsePositiveRate } = stakes;
  const problems = [
    ...invalid('benefit', benefit, benefit > 0, 'above 0'),
    ...invalid('loss', loss, loss > 0, 'above 0'),
    ...invalid('testPrice', testPrice, testPrice >= 0, 'not negative'),
    ...invalid('sensitivity', sensitivity, sensitivity >= 0 && sensitivity <= 1, 'between 0 and 1'),
    ...invalid(
      'falsePositiveRate',
      falsePositiveRate,
      falsePositiveRate >= 0 && falsePositiveRate <= 1,
      'between 0 and 1',
    ),
  ];
  if (atLeastOne(problems)) throw new EvidenceError(problems);
  const noTestThreshold = loss / (benefit + loss);
  // after a positive result act: worth p se B - (1 - p) fp R - price; nothing otherwise
  const testingThreshold = quotient(
    falsePositiveRate * loss + testPrice,
    falsePositiveRate * loss + sensitivity * benefit,
  );
  // a negative result stops the action: saves (1 - p)(1 - fp) R, loses p (1 - se) B, costs the price
  const spared = (1 - falsePositiveRate) * loss;
  const testTreatmentThreshold = quotient(spared - testPrice, spared + (1 - sensitivity) * benefit);
  return { noTestThreshold, testingThreshold, testTreatmentThreshold };

  /** A test that is never positive (or never negative) leaves that side of the choice out: 0/0 means "never". */
  function quotient(numerator: number, denominator: number): number {
    return denominator > 0 ? numerator / denominator : noTestThreshold;
  }
}

function invalid(name: string, value: number, isRight: boolean, range: string): Problem[] {
  if (isRight && Number.isFinite(value)) return [];
  return [
    {
      code: 'stakes-invalid',
      path: `/${name}`,
      message: `found ${value}, expected a number ${range}`,
      hint: `give a finite number ${range}`,
    },
  ];
}
