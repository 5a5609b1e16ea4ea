import type { RuleOfThumb } from '../model/readingModel.ts';
import { firingsOf } from './firingsOf.ts';
import type { CountsOfCylinders, CountsOfPart, Reading } from './reading.ts';

/** What the trade's rule of thumb says about a reading. Shown beside the likelihoods, never instead of them. */
export interface RuleResult {
  readonly text: string;
  readonly source: string;
  /** `kept`: within the rule. `broken`: outside it. `not-computable`: the entry lacks what the rule needs. */
  readonly verdict: 'kept' | 'broken' | 'not-computable';
  /** The number the rule is about, in the unit of the compared value, or a share from 0 to 1. */
  readonly value?: number;
}

/** Applies a rule of thumb.
 * @param compared the compared value; absent for counts. @param byCylinder readings of several cylinders, in one unit. */
export function applyRuleOfThumb(
  { text, source, limit }: RuleOfThumb,
  reading: Reading,
  compared?: number,
  byCylinder?: Readonly<Record<string, number>>,
): RuleResult {
  const result = (value: number | undefined, kept: boolean): RuleResult =>
    value === undefined || !Number.isFinite(value)
      ? { text, source, verdict: 'not-computable' }
      : { text, source, verdict: kept ? 'kept' : 'broken', value };
  switch (limit.kind) {
    case 'lowest-to-highest': {
      const values = Object.values(byCylinder ?? {});
      const value = values.length > 1 ? Math.min(...values) / Math.max(...values) : compared;
      return result(value, (value ?? 0) >= limit.atLeast);
    }
    case 'compared': {
      const { atLeast = -Infinity, atMost = Infinity } = limit;
      return result(compared, compared !== undefined && compared >= atLeast && compared <= atMost);
    }
    case 'share-of-all': {
      const share = reading.kind === 'counts' ? shareOfSuspect(reading) : undefined;
      return result(share, (share ?? 0) > limit.moreThan);
    }
    case 'most-counts': {
      const share = reading.kind === 'part-counts' ? shareThatLeft(reading) : undefined;
      return result(share, (share ?? 0) > 0.5);
    }
  }
}

function shareOfSuspect({ counts, suspect }: CountsOfCylinders): number | undefined {
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
  return all === 0 ? undefined : (counts[suspect] ?? 0) / all;
}

/** Of the misfires counted afterwards, the share on the other cylinder; of a part that was replaced, the share by which the rate fell. */
function shareThatLeft({ before, after }: CountsOfPart): number | undefined {
  if (after.partner !== undefined) {
    const all = after.suspect + after.partner;
    return all === 0 ? undefined : after.partner / all;
  }
  const was = before.suspect / firingsOf(before.exposure);
  return was === 0 ? undefined : Math.max(0, 1 - after.suspect / firingsOf(after.exposure) / was);
}
