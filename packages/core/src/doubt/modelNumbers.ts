import { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
import { jsonPointer } from '../errors/jsonPointer.ts';
import { isProbabilityAt } from '../model/isProbabilityAt.ts';
import type { Model } from '../model/model.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Row } from '../model/row.ts';

/** One number of a model, with how far it can be trusted. */
export interface ModelNumber {
  /** JSON Pointer in the model, as `changeNumber` takes it; `describeNumber` says what it is. */
  readonly path: string;
  readonly value: number;
  /** 5-95 % range. */
  readonly low: number;
  readonly high: number;
  /** Equivalent sample size: how many cases the number is worth. */
  readonly ess: number;
  /** Id of its source. */
  readonly source: string;
  /** Between 0 and 1; otherwise any positive number. */
  readonly isProbability: boolean;
}

/** Every number that bears on the ranking, on what cures or on every repair; minutes and prices of single steps are left out.
 * @example
 * ```ts
 * const [weight] = modelNumbers(pump.model);
 * weight?.path; // '/causes/0/weight/best'
 * [weight?.low, weight?.value, weight?.high]; // [200, 400, 800]
 * ``` */
export function modelNumbers(model: Model): readonly ModelNumber[] {
  const { causes, mechanisms, tests, context, repairs } = model;
  const { goneWithoutCure, presentIfNotNoted, leastRepairMinutes, needlessOpening } = model;
  return [
    ...causes.flatMap(({ weight, activeFraction, states }, at) => [
      estimate(['causes', at, 'weight'], weight),
      estimate(['causes', at, 'activeFraction'], activeFraction),
      ...Object.entries(states).flatMap(([mechanism, row]) => entriesOf(['causes', at, 'states', mechanism], row)),
    ]),
    ...mechanisms.flatMap(({ background, rows = [] }, at) => [
      ...(background === undefined ? [] : entriesOf(['mechanisms', at, 'background'], background)),
      ...rows.flatMap((row, index) => entriesOf(['mechanisms', at, 'rows', index], row)),
    ]),
    ...tests.flatMap(({ rows, asleep, repeatability }, at) => [
      ...rows.flatMap((row, index) => entriesOf(['tests', at, 'rows', index], row)),
      ...(asleep === undefined ? [] : entriesOf(['tests', at, 'asleep'], asleep)),
      estimate(['tests', at, 'repeatability'], repeatability),
    ]),
    ...context.flatMap(({ values }, at) =>
      values.flatMap(({ multipliers }, index) =>
        Object.entries(multipliers)
          .filter(([, { definitional }]) => definitional !== true)
          .map(([cause, one]) => estimate(['context', at, 'values', index, 'multipliers', cause], one)),
      ),
    ),
    ...repairs.flatMap(({ cures }, at) =>
      Object.entries(cures).map(([cause, chance]) => estimate(['repairs', at, 'cures', cause], chance)),
    ),
    estimate(['goneWithoutCure'], goneWithoutCure),
    estimate(['presentIfNotNoted'], presentIfNotNoted),
    estimate(['leastRepairMinutes'], leastRepairMinutes),
    estimate(['needlessOpening'], needlessOpening),
  ];
}

function estimate(keys: readonly PropertyKey[], { best, low, high, ess, source }: Quantity): ModelNumber {
  const path = jsonPointer([...keys, 'best']);
  return { path, value: best, low, high, ess, source, isProbability: isProbabilityAt(path) };
}

function entriesOf(keys: readonly PropertyKey[], { p, ess, source }: Row): ModelNumber[] {
  return Object.entries(p).map(([key, value]) => {
    const [low, high] = rangeOfProbability(value, ess);
    return { path: jsonPointer([...keys, 'p', key]), value, low, high, ess, source, isProbability: true };
  });
}
