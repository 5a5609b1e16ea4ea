import {
  caseNow,
  type CaseNow,
  type Circumstances,
  type CompiledModel,
  type Model,
  type Session,
} from '@faultodds/core';
import { evidenceConflict, type EvidenceConflict } from '@faultodds/core/doubt';
import { explainCase, type ObservationExplanation } from '@faultodds/core/explanation';
import { sentenceForObservation, sentenceForWarning } from '@faultodds/core/words';
import { english, stopAndTow } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import { paint } from '../terminal/paint.ts';
import { printBestStep } from './printBestStep.ts';
import { printConflict } from './printConflict.ts';
import { printRanking } from './printRanking.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** A case as it is now, with what is printed of it besides. Computed once per change. */
export interface CaseReview extends CaseNow {
  readonly conflict: EvidenceConflict;
  /** The latest observation and what it did. */
  readonly latest?: ObservationExplanation;
}

/** Computes all that is printed of a case. @throws EvidenceError when no cause can produce what was recorded. */
export function reviewCase(
  compiled: CompiledModel,
  session: Session,
  circumstances: Required<Circumstances>,
): CaseReview {
  const now = caseNow(compiled, session, circumstances);
  const { facts } = now.belief;
  const latest = explainCase(compiled, facts).observations.at(-1);
  return { ...now, conflict: evidenceConflict(compiled, facts), ...(latest === undefined ? {} : { latest }) };
}

/** The ranking, what the latest result did when it is new, what to mind, whether results fit together, and the best next step. */
export function printCase(
  terminal: Terminal,
  model: Model,
  now: CaseReview,
  { top, before }: { readonly top: number; readonly before?: CaseReview },
): void {
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  terminal.write('\n');
  printRanking(terminal, model, now.belief, before === undefined ? { top } : { top, before: before.belief });
  const { latest } = now;
  const known = before?.belief.facts.observations ?? now.belief.facts.observations;
  if (latest !== undefined && !known.some(({ id }) => id === latest.observation.id)) {
    paragraph(sentenceForObservation(model, latest, english));
  }
  const warned = new Set(before?.belief.warnings.map((warning) => JSON.stringify(warning)));
  for (const warning of now.belief.warnings) {
    if (!warned.has(JSON.stringify(warning)))
      paragraph(`Note: ${sentenceForWarning(model, now.belief.facts, warning, english)}`);
  }
  // said again only when it changed
  if (JSON.stringify(before?.conflict) !== JSON.stringify(now.conflict)) printConflict(terminal, model, now.conflict);
  const { openAccess } = now.state;
  if (openAccess.length > 0) {
    paragraph(`Open now: ${openAccess.map((id) => labelOf(model.access, id)).join('; ')}.`);
  }
  printBestStep(terminal, model, now.advice);
  terminal.write(`${paint(terminal, 'caution', foldText(stopAndTow, terminal.width, '  '))}\n`);
  terminal.write('\n');
}
