import {
  defaultPrices,
  type CaseState,
  type Circumstances,
  type CompiledModel,
  circumstancesOf,
  type Model,
} from '@faultodds/core';
import { CommandError } from '../terminal/commandError.ts';

/** What can be said of prices on the command line. */
export interface PriceOptions {
  readonly labour?: number;
  readonly currency?: string;
  readonly partsFactor?: number;
  readonly needlessOpening?: number;
}

/** The circumstances of a case, with the prices of the command line over its own.
 * @throws CommandError a currency without the labour rate in it */
export function circumstancesWith(
  compiled: CompiledModel,
  state: CaseState,
  options: PriceOptions,
): Required<Circumstances> {
  const own = circumstancesOf(compiled, state);
  return { ...own, prices: { ...own.prices, ...pricesGiven(compiled.model, options) } };
}

function pricesGiven(
  model: Model,
  { labour, currency, partsFactor, needlessOpening }: PriceOptions,
): Partial<Circumstances['prices']> {
  if (currency !== undefined && labour === undefined && currency !== defaultPrices(model).currency) {
    throw new CommandError(`--currency ${currency} needs --labour as well: the labour rate per hour in ${currency}`);
  }
  return {
    ...(labour === undefined ? {} : { labourPerHour: labour }),
    ...(currency === undefined ? {} : { currency }),
    ...(partsFactor === undefined ? {} : { partsFactor }),
    ...(needlessOpening === undefined ? {} : { needlessOpening }),
  };
}
