import { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
import { jsonPointer } from '../errors/jsonPointer.ts';
import type { Model, Quantity } from '../model/model.ts';
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

/** Every number that bears on the ranking, or on what cures; minutes and prices are left out. */
export function modelNumbers({ causes, mechanisms, tests, context, repairs }: Model): readonly ModelNumber[] {
  return [
    ...causes.flatMap(({ weight, activeFraction, states }, at) => [
      estimate(['causes', at, 'weight'], weight, false),
      estimate(['causes', at, 'activeFraction'], activeFraction, true),
      ...Object.entries(states).flatMap(([mechanism, row]) => entriesOf(['causes', at, 'states', mechanism], row)),
    ]),
    ...mechanisms.flatMap(({ background, rows = [] }, at) => [
      ...(background === undefined ? [] : entriesOf(['mechanisms', at, 'background'], background)),
      ...rows.flatMap((row, index) => entriesOf(['mechanisms', at, 'rows', index], row)),
    ]),
    ...tests.flatMap(({ rows, repeatability }, at) => [
      ...rows.flatMap((row, index) => entriesOf(['tests', at, 'rows', index], row)),
      estimate(['tests', at, 'repeatability'], repeatability, true),
    ]),
    ...context.flatMap(({ values }, at) =>
      values.flatMap(({ multipliers }, index) =>
        Object.entries(multipliers)
          .filter(([, { definitional }]) => definitional !== true)
          .map(([cause, one]) => estimate(['context', at, 'values', index, 'multipliers', cause], one, false)),
      ),
    ),
    ...repairs.flatMap(({ cures }, at) =>
      Object.entries(cures).map(([cause, chance]) => estimate(['repairs', at, 'cures', cause], chance, true)),
    ),
  ];
}

function estimate(
  keys: readonly PropertyKey[],
  { best, low, high, ess, source }: Quantity,
  isProbability: boolean,
): ModelNumber {
  return { path: jsonPointer([...keys, 'best']), value: best, low, high, ess, source, isProbability };
}

function entriesOf(keys: readonly PropertyKey[], { p, ess, source }: Row): ModelNumber[] {
  return Object.entries(p).map(([key, value]) => {
    const [low, high] = rangeOfProbability(value, ess);
    return { path: jsonPointer([...keys, 'p', key]), value, low, high, ess, source, isProbability: true };
  });
}
