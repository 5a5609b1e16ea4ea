import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import { drawBeta } from '../distributions/drawBeta.ts';
import { drawDirichlet } from '../distributions/drawDirichlet.ts';
import { drawLogNormal } from '../distributions/drawLogNormal.ts';
import type { Random } from '../distributions/random.ts';
import type { Model } from '../model/model.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Row } from '../model/row.ts';
import type { ReadingModel } from '../model/readingModel.ts';

/** What a draw may leave at its best estimate because the question does not depend on it. */
export interface DrawOptions {
  /** Tests whose rows are drawn. Default: all. */
  readonly tests?: ReadonlySet<string>;
  /** Values of intake features whose multipliers are drawn, as `feature:value`. Default: all. */
  readonly contextValues?: ReadonlySet<string>;
}

const argumentsSchema = z.strictObject({
  random: optionSchemas.callback,
  tests: z.optional(optionSchemas.names),
  contextValues: z.optional(optionSchemas.names),
});

/** A model that is as plausible as this one, given how few cases its numbers are worth: rows from Dirichlets of their equivalent
 * sample size, chances of success, activity and repeatability from Betas, weights and multipliers from the log-normal of their range, and
 * so the judgements behind every test and repair: that a fault was present unnoted, goes without a cure, the least time, and what a needless
 * opening counts for. Prices of single steps stay, which a
 * shop knows, and so do the distributions of readings and of misfire rates. Everything is drawn independently.
 * @throws OptionError
 * @example
 * ```ts
 * const drawn = drawModel(pump.model, createRandom(1));
 * [pump.model, drawn].map((one) => numberAt(one, '/causes/0/weight/best')); // [400, 886.49]
 * ``` */
export function drawModel(model: Model, random: Random, options: DrawOptions = {}): Model {
  checkOptions(argumentsSchema, { random, ...options });
  const row = <T extends Row>(given: T): T => ({ ...given, p: drawDirichlet(given.p, given.ess, random) });
  const reading = (given: ReadingModel): ReadingModel =>
    given.kind === 'measured' ? { ...given, rows: given.rows.map(row) } : given;
  const positive = (quantity: Quantity): Quantity => ({ ...quantity, best: drawLogNormal(quantity, random) });
  const chance = (quantity: Quantity): Quantity => ({
    ...quantity,
    best: drawBeta(quantity.best, quantity.ess, random),
  });
  const each = <T, U>(record: Readonly<Record<string, T>>, draw: (value: T) => U): Record<string, U> =>
    Object.fromEntries(Object.entries(record).map(([key, value]) => [key, draw(value)]));

  return {
    ...model,
    context: model.context.map((feature) => ({
      ...feature,
      values: feature.values.map((value) =>
        options.contextValues === undefined || options.contextValues.has(`${feature.id}:${value.id}`)
          ? { ...value, multipliers: each(value.multipliers, positive) }
          : value,
      ),
    })),
    causes: model.causes.map((cause) => ({
      ...cause,
      weight: positive(cause.weight),
      activeFraction: chance(cause.activeFraction),
      states: each(cause.states, row),
    })),
    mechanisms: model.mechanisms.map((mechanism) => ({
      ...mechanism,
      ...(mechanism.background === undefined ? {} : { background: row(mechanism.background) }),
      ...(mechanism.rows === undefined ? {} : { rows: mechanism.rows.map(row) }),
    })),
    tests: model.tests.map((test) =>
      options.tests === undefined || options.tests.has(test.id)
        ? {
            ...test,
            rows: test.rows.map(row),
            ...(test.asleep === undefined ? {} : { asleep: row(test.asleep) }),
            repeatability: chance(test.repeatability),
            ...(test.readings === undefined ? {} : { readings: test.readings.map(reading) }),
          }
        : test,
    ),
    repairs: model.repairs.map((repair) => ({ ...repair, cures: each(repair.cures, chance) })),
    goneWithoutCure: chance(model.goneWithoutCure),
    presentIfNotNoted: chance(model.presentIfNotNoted),
    leastRepairMinutes: positive(model.leastRepairMinutes),
    needlessOpening: positive(model.needlessOpening),
  };
}
