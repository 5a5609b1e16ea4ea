import type { Model } from '../model/model.ts';
import type { Prices } from './circumstances.ts';

/** The model's own labour rate and currency unit.
 * @example defaultPrices(pump.model) // { currency: 'unit', labourPerHour: 60, partsFactor: 1 } */
export function defaultPrices(model: Model): Prices {
  return { currency: model.currencyUnit, labourPerHour: model.labourPerHour.best, partsFactor: 1 };
}
