import { nextObservationId, type CaseEvent, type CompiledModel, type Model, type Session } from '@faultodds/core';
import { sentenceForNotNow, sentenceForTest } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { askActivity } from './askActivity.ts';
import { askEvidence } from './askEvidence.ts';
import type { Drafts } from './drafts.ts';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from '../print/labelOf.ts';
import { printCautions } from '../print/printCautions.ts';
import type { CaseReview } from '../print/printCase.ts';
import type { Choice, Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Asks which test was done (unless it is given) and what it showed. @returns events to record; nothing when left. */
export async function askResult(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    session,
    drafts,
    now,
    test: given,
  }: {
    readonly compiled: CompiledModel;
    readonly session: Session;
    readonly drafts: Drafts;
    readonly now: CaseReview;
    readonly test?: string | undefined;
  },
): Promise<CaseEvent[] | undefined> {
  const { model } = compiled;
  const { advice } = now;
  const chosen = given ?? (await prompter.find('Which test?', choicesOf(model, now)));
  const test = model.tests.find(({ id }) => id === chosen);
  if (test === undefined) return undefined;
  for (const text of [test.how, ...(test.note === undefined ? [] : [test.note])]) {
    terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  }
  const named = [...advice.tests, ...advice.notNow].find((one) => one.test === test.id);
  printCautions(terminal, model, named?.cautions ?? test.cautions);

  const evidence = await askEvidence(terminal, prompter, { compiled, test, drafts });
  if (evidence === undefined) return undefined;
  return askActivity(prompter, test, { id: nextObservationId(session), ...evidence });
}

/** Tests worth their price first, then those that are not proposed. */
function choicesOf(model: Model, { advice }: CaseReview): Choice[] {
  return [
    ...advice.tests.map((one) => ({
      value: one.test,
      label: labelOf(model.tests, one.test),
      hint: sentenceForTest(one, english),
    })),
    ...advice.notNow
      .filter(({ reason }) => reason !== 'not-applicable')
      .map((one) => ({
        value: one.test,
        label: labelOf(model.tests, one.test),
        hint: sentenceForNotNow(model, one, english),
      })),
  ];
}
