import { caseState, factsOf, type CompiledModel, type Session } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { describeObservation, sentenceForObservation, sentenceWithoutObservation } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { foldText } from '../terminal/foldText.ts';
import { paint } from '../terminal/paint.ts';
import { printContext } from './printContext.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Why the ranking stands as it does: the intake answers, then what every result did and who would lead without it. */
export function printReasons(terminal: Terminal, compiled: CompiledModel, session: Session): void {
  const { model } = compiled;
  const state = caseState(session);
  const explanation = explainCase(compiled, factsOf(state));
  terminal.write('\n');
  printContext(terminal, model, state.context);
  explanation.observations.forEach((step, at) => {
    const heading = foldText(
      `${at + 1}. ${describeObservation(model, step.observation, english)}`,
      terminal.width,
      '  ',
    );
    terminal.write(`${paint(terminal, 'strong', heading)}\n`);
    for (const text of [
      sentenceForObservation(model, step, english),
      sentenceWithoutObservation(model, explanation, at, english),
    ]) {
      terminal.write(`${foldText(text, terminal.width, '     ')}\n`);
    }
  });
  if (explanation.observations.length === 0)
    terminal.write('  No result yet: the ranking follows from the intake answers alone.\n');
  terminal.write('\n');
}
