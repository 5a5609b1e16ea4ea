import type { IntakeQuestion, Model } from '@faultodds/core';
import { formatProbability } from '@faultodds/core/words/en';
import { labelOf } from './labelOf.ts';

/** What answering an intake question could do, in a phrase. */
export function describeIntakeQuestion(model: Model, { couldMove, bringsIn, enables }: IntakeQuestion): string {
  const waiting = [
    ...bringsIn.map((cause) => `“${labelOf(model.causes, cause)}”`),
    ...enables.map((test) => `“${labelOf(model.tests, test)}”`),
  ];
  const moves =
    couldMove > 0 ? `could change the ranking by ${formatProbability(couldMove)}` : 'changes nothing by itself';
  return waiting.length === 0
    ? moves
    : `${moves}; ${waiting.join(', ')} ${waiting.length === 1 ? 'needs' : 'need'} the answer`;
}
