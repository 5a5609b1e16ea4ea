import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { ClosedForTest } from '../compiled/closedForTest.ts';
import type { Context } from '../evidence/facts.ts';
import { accessBits } from './accessBits.ts';
import { checkFor } from './checkFor.ts';
import type { Prices } from './circumstances.ts';
import type { Money } from './money.ts';
import { needlessOpeningOf } from './needlessOpeningOf.ts';
import type { Price } from './price.ts';

/** Cost of one step, as plain numbers in the prices' currency. */
export interface Cost {
  readonly total: number;
  readonly access: number;
  readonly parts: number;
  readonly minutes: number;
}

/** What everything costs at given prices, on a car with given intake facts; access as bits (see `accessBits`). */
export interface Tariff {
  readonly prices: Prices;
  /** A test with the access it still needs opened and closed. */
  readonly test: (index: number, open: number) => Cost;
  /** The same test once more, because the fault slept: its labour, nothing opened and nothing bought. */
  readonly again: (index: number) => Cost;
  /** A repair from a closed engine, less the labour of what is open already, but never under the model's least. */
  readonly repair: (index: number, open: number) => Cost;
  /** Checking a repair by the model's verification table. */
  readonly check: Cost;
  /** Opening these access operations (bits) alone: its labour. */
  readonly opening: (bits: number) => Cost;
  /** Closing them again: its labour, and the gaskets. */
  readonly closing: (bits: number) => Cost;
  /** Opening and closing each access alone, in the model's order. */
  readonly accessCost: Float64Array;
  /** Access a test or repair needs, prerequisites included. */
  readonly testAccess: readonly number[];
  /** Access that has to be closed for a test, and with which it cannot be done. */
  readonly closedForTest: readonly ClosedForTest[];
  readonly repairAccess: readonly number[];
  /** Access bits that count as opening the engine. */
  readonly opensEngine: number;
  /** What opening one of them counts for beyond its price where it proves needless; nobody is paid it. */
  readonly needlessOpening: number;
}

/** Prices the model's steps. @throws EvidenceError `access-unknown` when the model was not validated. */
export function makeTariff(compiled: CompiledModel, prices: Prices, context: Context): Tariff {
  const { model } = compiled;
  const perMinute = prices.labourPerHour / 60;
  const cost = (minutes: number, parts: number, access: number): Cost => {
    const bought = parts * prices.partsFactor;
    return { total: minutes * perMinute + bought, access, parts: bought, minutes };
  };
  const dearer = costMultipliers(compiled, context);
  const opening = model.access.map((access) => ({
    minutes: (access.openMinutes.best + access.closeMinutes.best) * dearer(access.id),
    openMinutes: access.openMinutes.best * dearer(access.id),
    closeMinutes: access.closeMinutes.best * dearer(access.id),
    parts: access.parts.best * dearer(access.id),
  }));
  const sumOver = (bits: number, of: 'minutes' | 'openMinutes' | 'closeMinutes' | 'parts'): number =>
    opening.reduce((sum, access, index) => ((bits & (1 << index)) === 0 ? sum : sum + access[of]), 0);

  const { testAccess, closedForTest } = compiled.structure;
  const repairAccess = model.repairs.map((repair) => accessBits(compiled, repair.access));
  const check = checkFor(model, context);

  return {
    prices,
    opening: (bits) => {
      const minutes = sumOver(bits, 'openMinutes');
      return cost(minutes, 0, minutes * perMinute);
    },
    closing: (bits) => {
      const { total, ...rest } = cost(sumOver(bits, 'closeMinutes'), sumOver(bits, 'parts'), 0);
      return { ...rest, total, access: total };
    },
    accessCost: Float64Array.from(opening, ({ minutes, parts }) => cost(minutes, parts, 0).total),
    testAccess,
    closedForTest,
    repairAccess,
    opensEngine: model.access.reduce((bits, one, index) => (one.opensEngine === true ? bits | (1 << index) : bits), 0),
    needlessOpening: needlessOpeningOf(model, prices),
    test: (index, open) => {
      const { id, minutes, consumables } = model.tests[index]!;
      const missing = testAccess[index]! & ~open;
      const access = cost(sumOver(missing, 'minutes'), sumOver(missing, 'parts'), 0);
      const parts = consumables.best * dearer(id) + sumOver(missing, 'parts');
      return cost(minutes.best * dearer(id) + access.minutes, parts, access.total);
    },
    again: (index) => {
      const { id, minutes } = model.tests[index]!;
      return cost(minutes.best * dearer(id), 0, 0);
    },
    repair: (index, open) => {
      const { id, minutes, parts } = model.repairs[index]!;
      const spared = sumOver(repairAccess[index]! & open, 'minutes');
      const left = Math.max(model.leastRepairMinutes.best, minutes.best * dearer(id) - spared);
      const access = Math.min(left, sumOver(repairAccess[index]! & ~open, 'minutes')) * perMinute;
      return cost(left, parts.best * dearer(id), access);
    },
    check: cost(check?.minutes.best ?? 0, 0, 0),
  };
}

/** What the intake facts multiply minutes and parts of a test, repair or access by. */
function costMultipliers({ model }: CompiledModel, context: Context): (id: string) => number {
  const stated = model.context.flatMap(({ id, values }) => {
    const costs = values.find((value) => value.id === context[id])?.costs;
    return costs === undefined ? [] : [costs];
  });
  return (id) => stated.reduce((product, costs) => product * (costs[id]?.best ?? 1), 1);
}

/** An amount in the tariff's currency. */
export function moneyOf(tariff: Tariff, amount: number): Money {
  return { amount, currency: tariff.prices.currency };
}

/** A cost as it is shown. */
export function priceOf(tariff: Tariff, { total, access, parts, minutes }: Cost): Price {
  const money = (amount: number): Money => moneyOf(tariff, amount);
  return { total: money(total), labour: money(total - parts), parts: money(parts), access: money(access), minutes };
}
