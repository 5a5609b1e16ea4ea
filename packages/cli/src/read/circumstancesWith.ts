import {
  defaultPrices,
  type CaseState,
  type Circumstances,
  type CompiledModel,
  circumstancesOf,
  type Model,
} from '@faultodds/core';
import { closestName } from './closestName.ts';
import { CommandError } from '../terminal/commandError.ts';

/** What can be said of prices and of what is at hand on the command line. */
export interface CircumstanceOptions {
  readonly labour?: number;
  readonly currency?: string;
  readonly partsFactor?: number;
  readonly needlessOpening?: number;
  /** Ids of the equipment at hand, with commas between them; nothing between them: none is. Default: what the case says. */
  readonly equipment?: string;
}

/** The circumstances of a case, with the prices and the equipment of the command line over its own.
 * @throws CommandError a currency without the labour rate in it; equipment the model does not know */
export function circumstancesWith(
  compiled: CompiledModel,
  state: CaseState,
  options: CircumstanceOptions,
): Required<Circumstances> {
  const own = circumstancesOf(compiled, state);
  const equipment = options.equipment === undefined ? own.equipment : equipmentGiven(compiled.model, options.equipment);
  return { ...own, equipment, prices: { ...own.prices, ...pricesGiven(compiled.model, options) } };
}

function pricesGiven(
  model: Model,
  { labour, currency, partsFactor, needlessOpening }: CircumstanceOptions,
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

function equipmentGiven(model: Model, given: string): readonly string[] {
  const known = model.equipment.map(({ id }) => id);
  const ids = given
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  for (const id of ids) {
    if (known.includes(id)) continue;
    const closest = closestName(id, known);
    const hint = closest === undefined ? "'faultodds list equipment' shows them" : `did you mean '${closest}'?`;
    throw new CommandError(`no equipment '${id}'; ${hint}`);
  }
  return [...new Set(ids)];
}
