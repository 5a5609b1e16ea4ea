import type { Observation, TestResult } from '../../evidence/observation.ts';
import type { Model } from '../../model/model.ts';
import { describeReading } from './describeReading.ts';
import { nameOf } from './nameOf.ts';
import type { Language } from '../languages/language.ts';

/** An observation as a heading: "Cranking compression, dry, all cylinders: compression normal".
 * @example
 * ```ts
 * const said = describeObservation(model, { kind: 'result', id: 'r1', test: 'coil-swap', outcome: 'stays' }, english);
 * said // 'Swap the coil with another cylinder: misfire stays'
 * ``` */
export function describeObservation(model: Model, observation: Observation, language: Language): string {
  const { messages } = language;
  if (observation.kind === 'repair-tried') {
    const repair = nameOf(model.repairs, observation.repair, language);
    return observation.cured ? messages.repairHelped({ repair }) : messages.repairDidNotHelp({ repair });
  }
  const test = model.tests.find((one) => one.id === observation.test);
  const label = test?.label ?? observation.test;
  const outcomes = test?.outcomes ?? [];
  const heading = describeResult(label, outcomes, observation, language);
  if (test?.faultMustBeActive !== true) return heading;
  if (observation.faultActive === 'no') return messages.whileAsleep(heading);
  return observation.faultActive === 'unknown' ? messages.perhapsAsleep(heading) : heading;
}

type Labelled = readonly { readonly id: string; readonly label: string }[];

function describeResult(
  test: string,
  outcomes: Labelled,
  { outcome, likelihood, reading }: TestResult,
  language: Language,
): string {
  const { messages } = language;
  const name = outcome === undefined ? undefined : nameOf(outcomes, outcome, language);
  if (reading !== undefined) {
    const numbers = describeReading(reading, language);
    return messages.resultByNumbers({
      test,
      numbers: name === undefined ? numbers : messages.numbersAndOutcome({ numbers, outcome: name }),
    });
  }
  return name === undefined
    ? messages.resultByDegree({ test, shares: describeShares(outcomes, likelihood ?? {}, language) })
    : messages.result({ test, outcome: name });
}

function describeShares(outcomes: Labelled, likelihood: Readonly<Record<string, number>>, language: Language): string {
  const { messages, formatNumber } = language;
  const shares = Object.entries(likelihood)
    .filter(([, weight]) => weight > 0)
    .sort(([, a], [, b]) => b - a)
    .map(([id, weight]) =>
      messages.share({ outcome: nameOf(outcomes, id, language), weight: formatNumber(Number(weight.toPrecision(2))) }),
    );
  return messages.sharesTogether(shares);
}
