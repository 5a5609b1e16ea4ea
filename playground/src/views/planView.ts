import type { Plan } from '@faultodds/core/planning';
import type { FigureTable } from '../figures/figureTable.ts';
import { coreLanguage } from '../words/coreLanguage.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { PlanSoFar } from '../worker/question.ts';

/** A search for a plan, as the screen tells it. */
export interface PlanView {
  /** How much dearer than the best possible plan it is at most, in words. */
  readonly gap: string;
  /** Places examined. */
  readonly steps: number;
  /** The bounds at every step forward. */
  readonly points: readonly { readonly steps: number; readonly lower: number; readonly upper: number }[];
  readonly labels: { readonly upper: string; readonly lower: string };
  readonly table: FigureTable;
}

/** Below this share two plans cost the same to whoever pays. */
const NONE = 0.0005;

/** How the search went so far; `undefined` before anything has come. @param plan the one shown: its own gap is told */
export function planView(answers: readonly PlanSoFar[], plan: Plan | undefined): PlanView | undefined {
  const latest = answers.at(-1)?.progress;
  if (latest === undefined || plan === undefined) return undefined;
  const words = t.ahead.plan;
  const money = (amount: number): string => coreLanguage.formatMoney({ amount, currency: plan.cost.expected.currency });
  const points = answers.map(({ progress: { steps, lowerBound, upperBound } }) => ({
    steps,
    lower: lowerBound,
    upper: upperBound,
  }));
  return {
    gap: plan.certifiedGap < NONE ? words.gapNone : words.gap(shortChance(plan.certifiedGap)),
    steps: latest.steps,
    points,
    labels: { upper: words.upper(money(latest.upperBound)), lower: words.lower(money(latest.lowerBound)) },
    table: {
      caption: words.searchTitle,
      heads: words.searchHeads,
      rows: points
        .filter(({ steps }, at) => steps !== points[at + 1]?.steps)
        .map(({ steps, upper, lower }) => [String(steps), money(upper), money(lower)]),
    },
  };
}
