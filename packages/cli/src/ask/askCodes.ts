import {
  caseState,
  nextObservationId,
  type CaseEvent,
  type CompiledModel,
  type Session,
  type TestResult,
} from '@faultodds/core';
import { observationsFromCodes, parseTroubleCodes, describeTroubleCode, type TroubleCode } from '@faultodds/core/codes';
import type { Drafts } from './drafts.ts';
import { askEngineIfUnknown } from './askEngineIfUnknown.ts';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from '../print/labelOf.ts';
import { printCodes } from '../print/printCodes.ts';
import type { Prompter } from '../terminal/prompter.ts';
import type { Terminal } from '../terminal/terminal.ts';

const DRAFT = 'codes';

/** Asks for a pasted list of trouble codes, says what it means for the suspect cylinder, and lets it be corrected before it counts.
 * @returns events to record; nothing when left, what was pasted is kept. */
export async function askCodes(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    session,
    drafts,
  }: { readonly compiled: CompiledModel; readonly session: Session; readonly drafts: Drafts },
): Promise<CaseEvent[] | undefined> {
  let engine = await askEngineIfUnknown(prompter, drafts);
  if (engine === undefined) return undefined;
  for (;;) {
    const text = await prompter.paste('Trouble codes, as the scan tool shows them', drafts.lines.get(DRAFT) ?? '');
    if (text === undefined) {
      [drafts.guessedEngine, drafts.newEngine] = [engine, undefined];
      return undefined;
    }
    drafts.lines.set(DRAFT, text);
    const { codes, malformed } = parseTroubleCodes(text);
    if (codes.some(namesBank) && engine.bank === undefined) {
      const bank = await askBank(prompter);
      if (bank !== undefined) engine = drafts.newEngine = { ...engine, bank };
    }
    const complete = await prompter.choose('Is this every code stored in the modules?', [
      { value: 'some', label: 'No, or not known' },
      { value: 'all', label: 'Yes', hint: 'then a missing code counts as well' },
    ]);
    if (complete === undefined) continue;
    const read = observationsFromCodes(compiled, codes, {
      suspectCylinder: engine.suspect,
      cylinders: engine.cylinders,
      listIsComplete: complete === 'all',
      ...(engine.bank === undefined ? {} : { bank: engine.bank }),
    });
    terminal.write('\n');
    printCodes(terminal, compiled.model, read, malformed);
    const done = new Set(caseState(session).observations.flatMap((one) => (one.kind === 'result' ? [one.test] : [])));
    const fresh = read.observations.filter(({ test }) => !done.has(test));
    for (const { test } of read.observations.filter((one) => !fresh.includes(one))) {
      const name = labelOf(compiled.model.tests, test);
      terminal.write(
        `${foldText(`“${name}” is recorded already: take it back first to replace it.`, terminal.width, '  ')}\n`,
      );
    }
    terminal.write('\n');
    const wanted = await prompter.choose('What now?', [
      ...(fresh.length === 0
        ? []
        : [
            {
              value: 'record',
              label: fresh.length === 1 ? 'Record this result' : `Record these ${fresh.length} results`,
            },
          ]),
      { value: 'correct', label: 'Correct the list' },
      { value: 'leave', label: 'Discard the list' },
    ]);
    if (wanted === 'correct') continue;
    if (wanted !== 'record') return undefined;
    drafts.lines.delete(DRAFT);
    return fresh.reduce<CaseEvent[]>((events, result) => [...events, eventOf(session, events, result)], []);
  }
}

/** With an id that neither the case nor the events before it have. */
function eventOf(
  session: Session,
  before: readonly CaseEvent[],
  { kind: _kind, id: _id, ...result }: TestResult,
): CaseEvent {
  const events = [...session.content.events, ...before];
  const id = nextObservationId({ ...session, content: { ...session.content, events } });
  return { kind: 'result-recorded', id, ...result };
}

function namesBank({ code }: TroubleCode): boolean {
  const { kind } = describeTroubleCode(code);
  return kind === 'mixture' || kind === 'cam';
}

async function askBank(prompter: Prompter): Promise<1 | 2 | undefined> {
  const answer = await prompter.choose('On which bank is this cylinder?', [
    { value: '1', label: 'Bank 1', hint: 'also where there is only one' },
    { value: '2', label: 'Bank 2' },
    { value: '', label: 'Not known', hint: 'codes of either bank count' },
  ]);
  return answer === '1' ? 1 : answer === '2' ? 2 : undefined;
}
