import type { Model } from '../model/model.ts';
import type { Prices } from './circumstances.ts';

/** The model's own labour rate and currency unit. */
export function defaultPrices(model: Model): Prices {
  return { currency: model.currencyUnit, labourPerHour: model.labourPerHour.best, partsFactor: 1 };
}
