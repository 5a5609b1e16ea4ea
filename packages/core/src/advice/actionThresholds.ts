import { atLeastOne } from '../errors/atLeastOne.ts';
import { ReadingError } from '../errors/readingError.ts';
import { problemFor, type ProblemParts } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';

/** Probabilities of a fault that part doing nothing, testing and acting. All in [0, 1] for a test that can be worth buying. */
export interface ActionThresholds {
  /** Without the test: act above, leave alone below. */
  readonly noTestThreshold: number;
  /** Below it neither test nor act: even a positive result would not pay. */
  readonly testingThreshold: number;
  /** Above it act without testing: even a negative result would not stop it. */
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
 * A threshold outside [0, 1] is never crossed. Where the testing threshold is not below the test-treatment threshold the test is never
 * worth its price and `noTestThreshold` alone decides. Loss of the test itself other than its price is not counted.
 * @throws ReadingError `stakes-invalid` for numbers outside the stated ranges
 * @example actionThresholds({ benefit: 50, loss: 10, sensitivity: 0.9, falsePositiveRate: 0.2 }).noTestThreshold // 1/6
 * Source: Pauker S.G., Kassirer J.P. 1980, New England Journal of Medicine 302:1109-1117. */
export function actionThresholds(stakes: ThresholdStakes): ActionThresholds {
  const { benefit, loss, testPrice = 0, sensitivity, falsePositiveRate } = stakes;
  const problems = [
    ...invalid('benefit', benefit, benefit > 0, 'positive'),
    ...invalid('loss', loss, loss > 0, 'positive'),
    ...invalid('testPrice', testPrice, testPrice >= 0, 'not-negative'),
    ...invalid('sensitivity', sensitivity, sensitivity >= 0 && sensitivity <= 1, 'share'),
    ...invalid('falsePositiveRate', falsePositiveRate, falsePositiveRate >= 0 && falsePositiveRate <= 1, 'share'),
  ];
  if (atLeastOne(problems)) throw new ReadingError(problems);
  const noTestThreshold = loss / (benefit + loss);
  // acting after a positive result is worth p se B - (1 - p) fp R, less the price: nothing at the testing threshold
  const alarms = falsePositiveRate * loss;
  const testing = alarms + sensitivity * benefit;
  // not acting after a negative one spares (1 - p)(1 - fp) R and forgoes p (1 - se) B, less the price
  const spared = (1 - falsePositiveRate) * loss;
  const treating = spared + (1 - sensitivity) * benefit;
  return {
    noTestThreshold,
    // a test that is never positive, or never negative, changes nothing on that side
    testingThreshold: testing > 0 ? (alarms + testPrice) / testing : noTestThreshold,
    testTreatmentThreshold: treating > 0 ? (spared - testPrice) / treating : noTestThreshold,
  };
}

type Range = ProblemParts<'stakes-invalid'>['range'];

function invalid(name: string, value: number, isRight: boolean, range: Range): Problem[] {
  return isRight && Number.isFinite(value) ? [] : [problemFor('stakes-invalid', `/${name}`, { value, range })];
}
