import { type ConditionalRow, type Quantity, rangeOfProbability, type Row } from '@faultodds/core';
import { t } from '../words/t.ts';
import type { Knowledge } from './knowledge.ts';

/** One number of the knowledge, with where it comes from. */
export interface ModelNumber {
  /** JSON Pointer in the model. */
  readonly path: string;
  readonly label: string;
  readonly value: number;
  /** 5-95 % range. */
  readonly low: number;
  readonly high: number;
  /** How many cases it is worth. */
  readonly ess: number;
  readonly source: string;
  /** Between 0 and 1; otherwise any positive number. */
  readonly isProbability: boolean;
}

/** Every number that bears on the ranking or on what cures, named; prices are the shop's own and left out. */
export function modelNumbers(knowledge: Knowledge): readonly ModelNumber[] {
  const { model, causeLabel } = knowledge;
  const words = t.numbers;
  const mechanisms = new Map(model.mechanisms.map((one) => [one.id, one]));
  const stateLabel = (mechanism: string, state: string): string =>
    mechanisms.get(mechanism)?.states.find(({ id }) => id === state)?.label ?? state;
  const mechanismLabel = (id: string): string => mechanisms.get(id)?.label ?? id;
  const when = (conditions: ConditionalRow['when']): string => {
    const named = Object.entries(conditions).map(([id, states]) =>
      id === 'cause'
        ? words.condition(words.theCause, states.map(causeLabel).join(words.or))
        : words.condition(mechanismLabel(id), states.map((state) => stateLabel(id, state)).join(words.or)),
    );
    return named.length === 0 ? words.otherwise : words.when(named.join(words.and));
  };
  return [
    ...model.causes.flatMap((cause, at) => [
      quantity(`/causes/${at}/weight`, words.weight(cause.label), cause.weight, false),
      quantity(`/causes/${at}/activeFraction`, words.active(cause.label), cause.activeFraction, true),
      ...Object.entries(cause.states).flatMap(([id, row]) =>
        entries(`/causes/${at}/states/${id}`, row, (state) =>
          words.state(cause.label, mechanismLabel(id), stateLabel(id, state)),
        ),
      ),
    ]),
    ...model.mechanisms.flatMap(({ id, label, background, rows }, at) => [
      ...(background === undefined
        ? []
        : entries(`/mechanisms/${at}/background`, background, (state) =>
            words.background(label, stateLabel(id, state)),
          )),
      ...(rows ?? []).flatMap((row, r) =>
        entries(`/mechanisms/${at}/rows/${r}`, row, (state) =>
          words.mechanism(label, stateLabel(id, state), when(row.when)),
        ),
      ),
    ]),
    ...model.tests.flatMap((test, at) => [
      ...test.rows.flatMap((row, r) =>
        entries(`/tests/${at}/rows/${r}`, row, (outcome) =>
          words.outcome(test.label, knowledge.outcomeLabel(test.id, outcome), when(row.when)),
        ),
      ),
      quantity(`/tests/${at}/repeatability`, words.repeats(test.label), test.repeatability, true),
    ]),
    ...model.context.flatMap((feature, f) =>
      feature.values.flatMap((value, v) =>
        Object.entries(value.multipliers)
          .filter(([, multiplier]) => multiplier.definitional !== true)
          .map(([cause, multiplier]) =>
            quantity(
              `/context/${f}/values/${v}/multipliers/${cause}`,
              words.answer(feature.question, value.label, causeLabel(cause)),
              multiplier,
              false,
            ),
          ),
      ),
    ),
    ...model.repairs.flatMap((repair, at) =>
      Object.entries(repair.cures).map(([cause, chance]) =>
        quantity(`/repairs/${at}/cures/${cause}`, words.cures(repair.label, causeLabel(cause)), chance, true),
      ),
    ),
  ];
}

function quantity(
  path: string,
  label: string,
  { best, low, high, ess, source }: Quantity,
  isProbability: boolean,
): ModelNumber {
  return { path: `${path}/best`, label, value: best, low, high, ess, source, isProbability };
}

function entries(path: string, { p, ess, source }: Row, labelOf: (key: string) => string): ModelNumber[] {
  return Object.entries(p).map(([key, value]) => {
    const [low, high] = rangeOfProbability(value, ess);
    return { path: `${path}/p/${key}`, label: labelOf(key), value, low, high, ess, source, isProbability: true };
  });
}
