import type { Observation } from '../../belief/observation.ts';
import type { Model } from '../../model/model.ts';
import { messages } from './messages.ts';
import { nameOf } from './nameOf.ts';

/** An observation as a heading: "Cranking compression, dry, all cylinders: compression normal". */
export function describeObservation(model: Model, observation: Observation): string {
  if (observation.kind === 'repair-tried') {
    const repair = nameOf(model.repairs, observation.repair);
    return observation.cured ? messages.repairHelped({ repair }) : messages.repairDidNotHelp({ repair });
  }
  const test = model.tests.find((one) => one.id === observation.test);
  const label = test?.label ?? observation.test;
  const outcomes = test?.outcomes ?? [];
  const heading =
    observation.outcome === undefined
      ? messages.resultByDegree({ test: label, shares: describeShares(outcomes, observation.likelihood ?? {}) })
      : messages.result({ test: label, outcome: nameOf(outcomes, observation.outcome) });
  if (test?.faultMustBeActive !== true) return heading;
  if (observation.faultActive === 'no') return messages.whileAsleep(heading);
  return observation.faultActive === 'unknown' ? messages.perhapsAsleep(heading) : heading;
}

function describeShares(
  outcomes: readonly { readonly id: string; readonly label: string }[],
  likelihood: Readonly<Record<string, number>>,
): string {
  return Object.entries(likelihood)
    .filter(([, weight]) => weight > 0)
    .sort(([, a], [, b]) => b - a)
    .map(([id, weight]) =>
      messages.share({ outcome: nameOf(outcomes, id), weight: String(Number(weight.toPrecision(2))) }),
    )
    .join(' to ');
}
