import type { Model } from '../../model/model.ts';
import type { PlanStep } from './plan.ts';

/** Names of the steps and outcomes of a plan. */
export interface PlanLabels {
  readonly step: (step: Pick<PlanStep, 'kind' | 'id'>) => string;
  readonly outcome: (step: Pick<PlanStep, 'kind' | 'id'>, outcome: string) => string;
}

const ENDS: Readonly<Record<string, string>> = {
  cured: 'cured',
  'not-cured': 'the fault stays',
  referred: 'handed on',
};

/** The model's own labels; what has none is shown by its id. */
export function planLabels({ tests, repairs }: Pick<Model, 'tests' | 'repairs'>): PlanLabels {
  const test = new Map(tests.map((one) => [one.id, one]));
  const repair = new Map(repairs.map((one) => [one.id, one.label]));
  return {
    step: ({ kind, id }) => (kind === 'test' ? test.get(id)?.label : repair.get(id)) ?? id,
    outcome: ({ kind, id }, outcome) =>
      (kind === 'test' ? test.get(id)?.outcomes.find((one) => one.id === outcome)?.label : ENDS[outcome]) ?? outcome,
  };
}
