import {
  caseState,
  evidenceConflict,
  explainCase,
  factsOf,
  advise,
  beliefOf,
  type Advice,
  type Belief,
  type Circumstances,
  type CompiledModel,
  type EvidenceConflict,
  type Model,
  type ObservationExplanation,
  type Session,
} from '@faultodds/core';
import { sentenceForAdvice, sentenceForObservation, sentenceForWarning } from '@faultodds/core/words';
import { english, stopAndTow } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import { paint } from '../terminal/paint.ts';
import { printCautions } from './printCautions.ts';
import { printConflict } from './printConflict.ts';
import { printRanking } from './printRanking.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Where a case stands: belief and advice, computed once per move. */
export interface Standing {
  readonly belief: Belief;
  readonly advice: Advice;
  readonly openAccess: readonly string[];
  readonly conflict: EvidenceConflict;
  /** The latest observation and what it did. */
  readonly latest?: ObservationExplanation;
  readonly bestTest?: string;
  readonly bestRepair?: string;
}

/** Computes where a case stands. @throws EvidenceError when no cause can produce what was recorded. */
export function standingOf(compiled: CompiledModel, session: Session, circumstances: Circumstances): Standing {
  const state = caseState(session);
  const facts = factsOf(state);
  const belief = beliefOf(compiled, facts);
  const advice = advise(compiled, belief, circumstances);
  const latest = explainCase(compiled, facts).observations.at(-1);
  return {
    belief,
    advice,
    openAccess: state.openAccess,
    conflict: evidenceConflict(compiled, facts),
    ...(latest === undefined ? {} : { latest }),
    ...(advice.best.kind === 'test' ? { bestTest: advice.best.test } : {}),
    ...(advice.best.kind === 'repair' ? { bestRepair: advice.best.repair } : {}),
  };
}

/** The ranking, what the latest result did when it is new, what to mind, whether results fit together, and the best next step. */
export function printStanding(
  terminal: Terminal,
  model: Model,
  now: Standing,
  { top, before }: { readonly top: number; readonly before?: Standing },
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
      paragraph(`Mind: ${sentenceForWarning(model, now.belief.facts, warning, english)}`);
  }
  // said again only when it changed
  if (JSON.stringify(before?.conflict) !== JSON.stringify(now.conflict)) printConflict(terminal, model, now.conflict);
  if (now.openAccess.length > 0) {
    paragraph(`Open now: ${now.openAccess.map((id) => labelOf(model.access, id)).join('; ')}.`);
  }
  const advice = foldText(sentenceForAdvice(model, now.advice, english), terminal.width, '  ');
  terminal.write(`${paint(terminal, 'strong', advice)}\n`);
  printCautions(terminal, model, now.advice.best.cautions);
  terminal.write(`${paint(terminal, 'caution', foldText(stopAndTow, terminal.width, '  '))}\n`);
  terminal.write('\n');
}
