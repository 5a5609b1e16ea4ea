import type { Model } from '../model/model.ts';
import { textIn } from '../model/textIn.ts';
import type { PlanStep } from './plan.ts';
import type { PlanLanguage } from './planLanguage.ts';

/** Names of the steps and outcomes of a plan, and its cautions in full. */
export interface PlanLabels {
  readonly step: (step: Pick<PlanStep, 'kind' | 'id'>) => string;
  readonly outcome: (step: Pick<PlanStep, 'kind' | 'id'>, outcome: string) => string;
  readonly caution: (id: string) => string;
}

/** The model's own labels, and how a repair or referral ends in words of the language; what has none is shown by its id.
 * @example
 * ```ts
 * const labels = planLabels(model, english);
 * labels.step({ kind: 'test', id: 'coil-swap' }) // 'Swap the coil with another cylinder'
 * labels.outcome({ kind: 'repair', id: 'replace-coil' }, 'cured') // 'fixed'
 * ``` */
export function planLabels(
  { tests, repairs, cautions }: Pick<Model, 'tests' | 'repairs' | 'cautions'>,
  { planWords, code }: Pick<PlanLanguage, 'planWords' | 'code'>,
): PlanLabels {
  const ends: Readonly<Record<string, string>> = planWords.ends;
  const test = new Map(tests.map((one) => [one.id, one]));
  const repair = new Map(repairs.map((one) => [one.id, one.label]));
  return {
    caution: (id) => textIn(cautions.find((one) => one.id === id)?.text ?? id, code),
    step: ({ kind, id }) => (kind === 'test' ? test.get(id)?.label : repair.get(id)) ?? id,
    outcome: ({ kind, id }, outcome) =>
      (kind === 'test' ? test.get(id)?.outcomes.find((one) => one.id === outcome)?.label : ends[outcome]) ?? outcome,
  };
}
