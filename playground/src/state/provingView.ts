import type { CaseState } from '@faultodds/core';
import { say } from '../words/say.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from './knowledge.ts';

/** How a repair that seems to have cured is proved. */
export interface ProvingView {
  readonly repair: string;
  /** What to drive, and how long. */
  readonly exposure: string;
  readonly accept: string;
  readonly order: readonly string[];
}

/** What proves the last repair, when it was recorded as having cured; null otherwise. The first row of the model's table that fits applies. */
export function provingView(knowledge: Knowledge, { context, observations }: CaseState): ProvingView | null {
  const last = observations.at(-1);
  if (last?.kind !== 'repair-tried' || !last.cured) return null;
  const { checks, accept, order } = knowledge.model.verification;
  const check = checks.find(({ when }) =>
    Object.entries(when).every(([feature, values]) => values.includes(context[feature] ?? '')),
  );
  return {
    repair: knowledge.repairLabel(last.repair),
    exposure: check
      ? t.proving.exposure(check.exposure, say.formatMinutes(check.minutes.best), check.distanceKm, check.days ?? 0)
      : '',
    accept: accept.monitorRun,
    order,
  };
}
