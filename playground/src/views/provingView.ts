import type { ProofOfRepair } from '@faultodds/core';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** How a repair that seems to have cured is proved. */
export interface ProvingView {
  readonly repair: string;
  /** What to drive, and how long. */
  readonly exposure: string;
  readonly accept: string;
  readonly order: readonly string[];
  /** Of the drive, and of closing what is open before it. */
  readonly cautions: readonly string[];
}

/** The proof that is advised, in words; null where none is. */
export function provingView(knowledge: Knowledge, proof: ProofOfRepair | undefined): ProvingView | null {
  if (proof === undefined) return null;
  const { repair, check, accept, order, cautions } = proof;
  return {
    repair: knowledge.repairLabel(repair),
    exposure: t.proving.exposure(
      check.exposure,
      coreLanguage.formatMinutes(check.minutes.best),
      check.distanceKm,
      check.days ?? 0,
    ),
    accept,
    order,
    cautions: cautions.map(knowledge.cautionText),
  };
}
