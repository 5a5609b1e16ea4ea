import { updateEventRate, type EventRate } from '../distributions/eventRate.ts';
import { logPredictiveCount } from '../distributions/logPredictiveCount.ts';
import type { PartCountsReading } from '../model/readingModel.ts';
import { firingsOf } from './firingsOf.ts';
import type { CountsOfPart } from './reading.ts';
import { ratePerFiring } from './ratePerFiring.ts';
import { withWildShare } from './withWildShare.ts';

/** How strongly counts before and after support each outcome: outcome -> P(counts after | outcome, counts before), scaled so that the
 * largest is 1. The fault's rate is known from the counts before, as a Gamma; afterwards it sits on the other cylinder (follows), on the
 * suspect (stays), or nowhere (gone). Conditions of two drives are never the same, so the rate before is carried over as a Gamma of the
 * same mean but of a shape no larger than the model says. */
export function supportOfPartCounts(
  model: PartCountsReading,
  { before, after }: CountsOfPart,
): Readonly<Record<string, number>> {
  const [healthy, fault] = [model.rates.healthy, model.rates.fault].map(ratePerFiring) as [EventRate, EventRate];
  const seen = updateEventRate(fault, { events: before.suspect, exposure: firingsOf(before.exposure) });
  const faulty = loosened(seen, model.carriesOver.shape);
  const exposure = firingsOf(after.exposure);
  const log = (rate: EventRate, events: number | undefined): number =>
    events === undefined ? 0 : logPredictiveCount(rate, { events, exposure });
  const { follows, stays, gone } = model.outcomes;
  const outcomes = [
    { outcome: stays, log: log(faulty, after.suspect) + log(healthy, after.partner) },
    { outcome: gone, log: log(healthy, after.suspect) + log(healthy, after.partner) },
    ...(follows === undefined
      ? []
      : [{ outcome: follows, log: log(healthy, after.suspect) + log(faulty, after.partner) }]),
  ];
  const largest = Math.max(...outcomes.map((one) => one.log));
  const mixed = withWildShare(
    outcomes.map((one) => Math.exp(one.log - largest)),
    model.wild.share,
  );
  return Object.fromEntries(outcomes.map(({ outcome }, at) => [outcome, mixed[at]!]));
}

function loosened({ shape, exposure }: EventRate, limit: number): EventRate {
  return shape <= limit ? { shape, exposure } : { shape: limit, exposure: (exposure * limit) / shape };
}
