import { caseState, factsOf, advise, beliefOf } from '@faultodds/core';
import { evidenceConflict } from '@faultodds/core/doubt';
import { explainCase } from '@faultodds/core/explanation';
import { settleAdvice } from '@faultodds/core/planning';
import {
  describeEngine,
  describeObservation,
  sentenceForObservation,
  sentenceForWarning,
  sentenceWithoutObservation,
} from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { circumstancesWith, type CircumstanceOptions } from '../read/circumstancesWith.ts';
import { conflictSentences } from '../print/printConflict.ts';
import { measureDoubt } from '../print/measureDoubt.ts';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from '../print/labelOf.ts';
import { loadModel } from '../read/loadModel.ts';
import { paint } from '../terminal/paint.ts';
import { printAdvice } from '../print/printAdvice.ts';
import { printContext } from '../print/printContext.ts';
import { printDoubt } from '../print/printDoubt.ts';
import { printJson } from '../print/printJson.ts';
import { printNotices } from '../print/printNotices.ts';
import { printRanking } from '../print/printRanking.ts';
import { printReading } from '../print/printReading.ts';
import { readCase } from '../read/readCase.ts';
import { replayDocument } from '../print/replayDocument.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Options of `faultodds replay`. */
export interface ReplayOptions extends CircumstanceOptions {
  readonly model?: string;
  readonly json?: boolean;
  /** Causes shown per ranking. Default 5; with `json` all. */
  readonly top?: number;
  /** Tests and repairs shown. Default 3; with `json` all. */
  readonly steps?: number;
  /** Situations examined ahead; 0: one step only. Default: as many as core takes for settled. */
  readonly search?: number;
  /** Plausible models to draw; `true`: 200. Default: none. */
  readonly doubt?: number | true;
  /** Allow two causes at once. Default false. */
  readonly two?: boolean;
}

const DRAWS = 200;
// pricing every test takes about a hundred times as long as ranking causes
const ADVICE_DRAWS = 20;

/** Prints how the ranking moved with every result of a case, then what to do next and why.
 * @throws CommandError the case or an option cannot be used */
export async function replay(terminal: Terminal, name: string, options: ReplayOptions): Promise<void> {
  const loaded = await loadModel(options.model, { atMost: options.two === true ? 2 : 1 });
  const { model, compiled } = loaded;
  const { session } = await readCase(loaded, name);
  const state = caseState(session);
  const facts = factsOf(state);
  const explanation = explainCase(compiled, facts);
  const belief = beliefOf(compiled, facts);
  const circumstances = circumstancesWith(compiled, state, options);
  const advice = advise(compiled, belief, circumstances);
  const { search } = options;
  const settled = settleAdvice(compiled, belief, circumstances, search === undefined ? {} : { steps: search });
  const conflict = conflictSentences(model, evidenceConflict(compiled, facts));
  const draws = options.doubt === true ? DRAWS : options.doubt;
  if (draws !== undefined && terminal.interactive) terminal.warn(`Drawing ${draws} plausible models …\n`);
  const doubt =
    draws === undefined
      ? undefined
      : measureDoubt(compiled, facts, circumstances, { draws, adviceDraws: Math.min(draws, ADVICE_DRAWS) });
  if (options.json === true) {
    const document = replayDocument(
      { compiled, session, explanation, belief, advice, settled, conflict, doubt },
      options,
    );
    printJson(terminal, document);
    return;
  }

  const { top = 5, steps = 3 } = options;
  const heading = (text: string): void =>
    terminal.write(`\n${paint(terminal, 'strong', foldText(text, terminal.width))}\n`);
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  terminal.write(`${paint(terminal, 'strong', foldText(state.title, terminal.width))}\n`);
  if (session.demo !== undefined) paragraph('An invented case, for teaching.');
  printNotices(terminal, model, session);
  if (options.two === true) paragraph('Two causes at once are considered as well.');
  if (state.engine !== undefined) paragraph(`${describeEngine(state.engine, english)}.`);
  printContext(terminal, model, state.context);

  heading('At intake');
  printRanking(terminal, model, explanation.beliefs[0], { top });
  explanation.observations.forEach((step, at) => {
    const [before, after] = [explanation.beliefs[at], explanation.beliefs[at + 1]];
    heading(`${at + 1}. ${describeObservation(model, step.observation, english)}`);
    if (after !== undefined) printRanking(terminal, model, after, before === undefined ? { top } : { top, before });
    const { observation } = step;
    if (observation.kind === 'result' && observation.reading !== undefined) {
      printReading(terminal, compiled, { ...observation, reading: observation.reading });
    }
    paragraph(sentenceForObservation(model, step, english));
    paragraph(sentenceWithoutObservation(model, explanation, at, english));
    if (step.observation.note !== undefined) paragraph(`Note: ${step.observation.note}`);
  });
  if (belief.warnings.length + conflict.length > 0) heading('Note');
  for (const sentence of conflict) paragraph(sentence);
  for (const warning of belief.warnings) paragraph(sentenceForWarning(model, facts, warning, english));
  if (state.openAccess.length > 0) {
    heading('Open now');
    paragraph(state.openAccess.map((id) => labelOf(model.access, id)).join('; '));
  }
  heading('What next');
  printAdvice(terminal, model, advice, steps, settled);
  if (doubt !== undefined) {
    heading('How sure this is');
    printDoubt(terminal, model, doubt, { top });
  }
  if (session.demo !== undefined) {
    heading('How this invented case ended');
    paragraph(`The cause was: ${labelOf(model.causes, session.demo.trueCause)}. ${session.demo.lesson}`);
  }
}
