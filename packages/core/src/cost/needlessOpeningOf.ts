import type { Model } from '../model/model.ts';
import type { Prices } from './circumstances.ts';

/** What opening the engine counts for beyond its price where it proves needless, in the currency of the prices: what they say, or the
 * model's amount times their `partsFactor`.
 * @example
 * ```ts
 * needlessOpeningOf(pump.model, defaultPrices(pump.model)); // 50
 * needlessOpeningOf(pump.model, { ...defaultPrices(pump.model), needlessOpening: 80 }); // 80
 * ``` */
export function needlessOpeningOf(model: Model, prices: Prices): number {
  return prices.needlessOpening ?? model.needlessOpening.best * prices.partsFactor;
}
