import type { EventRate } from '../distributions/eventRate.ts';
import { logPredictiveCount } from '../distributions/logPredictiveCount.ts';
import type { CountsReading } from '../model/readingModel.ts';
import { firingsOf } from './firingsOf.ts';
import type { CountsSupport } from './countsSupport.ts';
import type { CountsOfCylinders } from './reading.ts';
import { ratePerFiring } from './ratePerFiring.ts';
import { withWildShare } from './withWildShare.ts';

// Points of the average over an exposure that was not noted; more move the fourth digit only.
const GRID = 13;

/** How strongly misfire counts support each pattern. Rates differ from engine to engine as Gammas, so a count is negative binomial
 * (Gelman et al., Bayesian Data Analysis, 3rd ed. 2013, 2.6); cylinders are independent given the pattern. Without an exposure the
 * likelihood is averaged over what it may have been, evenly in its logarithm. */
export function supportOfCounts(model: CountsReading, reading: CountsOfCylinders): CountsSupport {
  const { low, high } = model.exposureUnknown;
  const firings =
    reading.exposure === undefined
      ? Array.from({ length: GRID }, (_, at) => low * (high / low) ** (at / (GRID - 1)))
      : [firingsOf(reading.exposure)];
  const perExposure = firings.map((exposure) => logPatterns(model, reading, exposure));
  const largest = Math.max(...perExposure.flatMap((logs) => Object.values(logs)));
  const likelihood = (pattern: Pattern | 'elsewhere'): number =>
    perExposure.reduce((sum, logs) => sum + Math.exp(logs[pattern] - largest), 0);
  const likelihoods = PATTERNS.map(likelihood);
  const elsewhere = likelihood('elsewhere') > Math.max(...likelihoods);
  const mixed = withWildShare(elsewhere ? likelihoods.map(() => 1) : likelihoods, model.wild.share);
  return {
    byOutcome: Object.fromEntries(PATTERNS.map((pattern, at) => [model.patterns[pattern], mixed[at]!])),
    elsewhere,
  };
}

const PATTERNS = ['suspectOnly', 'suspectAndOne', 'all', 'none'] as const;
type Pattern = (typeof PATTERNS)[number];

function logPatterns(
  { rates }: CountsReading,
  { counts, suspect }: CountsOfCylinders,
  exposure: number,
): Record<Pattern | 'elsewhere', number> {
  const log = (rate: EventRate, events: number): number => logPredictiveCount(rate, { events, exposure });
  const healthy = ratePerFiring(rates.healthy);
  const fault = ratePerFiring(rates.fault);
  const scattered = ratePerFiring(rates.scattered);
  const suspectCount = counts[suspect] ?? 0;
  const others = Object.entries(counts).flatMap(([cylinder, count]) => (Number(cylinder) === suspect ? [] : [count]));
  const othersHealthy = others.reduce((sum, count) => sum + log(healthy, count), 0);
  const oneOther = logMean(others.map((count) => log(fault, count) - log(healthy, count)));
  return {
    suspectOnly: log(fault, suspectCount) + othersHealthy,
    suspectAndOne: log(fault, suspectCount) + othersHealthy + oneOther,
    all: [suspectCount, ...others].reduce((sum, count) => sum + log(scattered, count), 0),
    none: log(healthy, suspectCount) + othersHealthy,
    elsewhere: log(healthy, suspectCount) + othersHealthy + oneOther,
  };
}

function logMean(logs: readonly number[]): number {
  const largest = Math.max(...logs);
  return largest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - largest), 0) / logs.length);
}
