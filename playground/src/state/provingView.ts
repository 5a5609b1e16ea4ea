import { type CaseState, factsOf, proofOfRepair } from '@faultodds/core';
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

/** What proves the last repair, while it is the latest entry and recorded as having cured; null otherwise. */
export function provingView(knowledge: Knowledge, state: CaseState): ProvingView | null {
  const proof = proofOfRepair(knowledge.model, factsOf(state));
  if (proof === undefined) return null;
  const { repair, check, accept, order } = proof;
  return {
    repair: knowledge.repairLabel(repair),
    exposure: t.proving.exposure(
      check.exposure,
      say.formatMinutes(check.minutes.best),
      check.distanceKm,
      check.days ?? 0,
    ),
    accept,
    order,
  };
}
