import { updateEventRate, type EventRate } from '../distributions/eventRate.ts';
import { logPredictiveCount } from '../distributions/logPredictiveCount.ts';
import type { PartCountsReading } from '../model/readingModel.ts';
import { firingsOf } from './firingsOf.ts';
import type { CountsSupport } from './countsSupport.ts';
import type { CountOfPart, CountsOfPart } from './reading.ts';
import { ratePerFiring } from './ratePerFiring.ts';
import { withWildShare } from './withWildShare.ts';

/** How strongly counts before and after support each outcome: P(counts after | outcome, counts before). The fault's rate is known from the
 * counts before, as a Gamma; afterwards it sits on the other cylinder (follows), on the suspect (stays), or nowhere (gone). Conditions of
 * two drives are never the same, so the rate before is carried over as a Gamma of the same mean but of a shape no larger than the model says. */
export function supportOfPartCounts(model: PartCountsReading, { before, after }: CountsOfPart): CountsSupport {
  const healthy = ratePerFiring(model.rates.healthy);
  const fault = ratePerFiring(model.rates.fault);
  const log = (rate: EventRate, events: number | undefined, { exposure }: CountOfPart): number =>
    events === undefined ? 0 : logPredictiveCount(rate, { events, exposure: firingsOf(exposure) });
  const seen = updateEventRate(fault, { events: before.suspect, exposure: firingsOf(before.exposure) });
  const faulty = loosened(seen, model.carriesOver.shape);
  const elsewhere = log(fault, before.partner, before) > log(healthy, before.partner, before);

  const { follows, stays, gone } = model.outcomes;
  const outcomes = [
    { outcome: stays, log: log(faulty, after.suspect, after) + log(healthy, after.partner, after) },
    { outcome: gone, log: log(healthy, after.suspect, after) + log(healthy, after.partner, after) },
  ];
  if (follows !== undefined) {
    const moved = log(healthy, after.suspect, after) + log(faulty, after.partner, after);
    outcomes.push({ outcome: follows, log: moved });
  }
  const largest = Math.max(...outcomes.map((one) => one.log));
  const likelihoods = outcomes.map((one) => (elsewhere ? 1 : Math.exp(one.log - largest)));
  const mixed = withWildShare(likelihoods, model.wild.share);
  return { byOutcome: Object.fromEntries(outcomes.map(({ outcome }, at) => [outcome, mixed[at]!])), elsewhere };
}

function loosened({ shape, exposure }: EventRate, limit: number): EventRate {
  return shape <= limit ? { shape, exposure } : { shape: limit, exposure: (exposure * limit) / shape };
}
