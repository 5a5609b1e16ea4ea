import type { Facts, Model, Quantity } from '@faultodds/core';
import { results } from '../fixtures/results.ts';
import type { Dossier, DossierRow, Number3 } from './readDossier.ts';

type Row = Model['tests'][number]['rows'][number];

const quantity = ({ best, low, high, ess, source }: Number3): Quantity => ({
  best,
  low,
  high,
  ess,
  source,
  ...(ess === 0 ? { definitional: true } : {}),
});
const row = ({ p, ess, source }: DossierRow): Omit<Row, 'when'> => ({ p, ess, source });
const conditional = (from: DossierRow): Row => ({
  when: Object.fromEntries(Object.entries(from.when ?? {}).map(([id, value]) => [id, [value].flat()])),
  ...row(from),
});
const named = (id: string) => ({ id, label: id });

/** The dossier's own numbers as a model, for belief alone: what does not touch belief is taken from `like`. So the engine can be held
 * against the dossier's evaluators whatever the knowledge has learned since.
 * @param cap on context multipliers; the dossier's figures were computed without one. */
export function dossierModel(
  dossier: Dossier,
  like: Model,
  cap: { readonly low: number; readonly high: number },
): Model {
  const anyTest = like.tests[0]!;
  return {
    ...like,
    id: 'dossier',
    contextCap: { ...like.contextCap, ...cap },
    context: dossier.context.features.map(({ id, values }) => ({
      ...named(id),
      question: id,
      values: values.map(({ value, multipliers }) => ({
        ...named(value),
        why: id,
        multipliers: Object.fromEntries(
          Object.entries(multipliers).map(([cause, number]) => [cause, quantity(number)]),
        ),
      })),
    })),
    causes: dossier.causes.map((cause) => ({
      ...named(cause.id),
      group: cause.group,
      description: cause.description,
      customerFeels: cause.customerFeels,
      ifDrivenOn: cause.collateralIfDriven,
      driving: 'as-usual',
      ...(cause.requires === null ? {} : { requires: cause.requires }),
      weight: quantity(cause.weight),
      activeFraction: quantity(cause.activeFraction),
      states: Object.fromEntries(Object.entries(cause.states).map(([id, from]) => [id, row(from)])),
    })),
    mechanisms: [
      ...dossier.mechanisms.roots.map(({ id, states, background }) => ({
        ...named(id),
        states: states.map(named),
        background: row(background),
      })),
      ...dossier.mechanisms.dependent.map(({ id, states, parents, rows }) => ({
        ...named(id),
        states: states.map(named),
        parents,
        rows: rows.map(conditional),
      })),
    ],
    tests: dossier.tests.map((test) => ({
      ...named(test.id),
      category: anyTest.category,
      how: test.label,
      outcomes: test.outcomes.map(named),
      rows: test.rows.map(conditional),
      ...(test.appliesWhen === null ? {} : { appliesWhen: test.appliesWhen.anyOf }),
      minutes: anyTest.minutes,
      consumables: anyTest.consumables,
      equipment: [],
      access: anyTest.access,
      cautions: [],
      faultMustBeActive: test.faultMustBeActive,
      repeatability: quantity(test.repeatability),
    })),
  };
}

/** A demo case of the dossier, the fault present in every test. */
export function dossierFacts({ context, steps }: Dossier['demoCases'][number]): Facts {
  return { context, observations: results(...steps.map(({ test, outcome }) => [test, outcome] as const)) };
}
