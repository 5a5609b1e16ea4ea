import { existsSync } from 'node:fs';
import {
  caseState,
  engineOf,
  factsOf,
  FaultoddsError,
  recordEvent,
  redo,
  startCase,
  undo,
  type CaseEvent,
  type Circumstances,
  type Session,
} from '@faultodds/core';
import { settleAdvice } from '@faultodds/core/planning';
import { stopAndTow } from '@faultodds/core/words/en';
import { askAccess } from '../ask/askAccess.ts';
import { askCodes } from '../ask/askCodes.ts';
import { askEngine } from '../ask/askEngine.ts';
import { askEquipment } from '../ask/askEquipment.ts';
import { askIntake } from '../ask/askIntake.ts';
import { askIntakeChange } from '../ask/askIntakeChange.ts';
import { askMenu } from '../ask/askMenu.ts';
import { askMonitors } from '../ask/askMonitors.ts';
import { askRepair } from '../ask/askRepair.ts';
import { askResult } from '../ask/askResult.ts';
import { askRetraction } from '../ask/askRetraction.ts';
import { circumstancesWith, type CircumstanceOptions } from '../read/circumstancesWith.ts';
import { CommandError } from '../terminal/commandError.ts';
import type { Drafts } from '../ask/drafts.ts';
import { foldText } from '../terminal/foldText.ts';
import { describeSaving, isUnsaved, saveInNewFile, saveChanges, type SaveState } from '../save/saveState.ts';
import { loadModel } from '../read/loadModel.ts';
import { paint } from '../terminal/paint.ts';
import { printAdvice } from '../print/printAdvice.ts';
import { printNotices } from '../print/printNotices.ts';
import { printReasons } from '../print/printReasons.ts';
import { printCase, reviewCase, type CaseReview } from '../print/printCase.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { readCase } from '../read/readCase.ts';
import { saveForRecovery, RECOVERY_FILE } from '../save/saveForRecovery.ts';
import { restoreTerminal } from '../terminal/restoreTerminal.ts';
import { saveToFile } from '../save/saveToFile.ts';
import type { Terminal } from '../terminal/terminal.ts';
import { whenEnded } from '../terminal/whenEnded.ts';

/** Options of `faultodds ask`. */
export interface AskOptions extends CircumstanceOptions {
  readonly model?: string;
  /** Causes shown per ranking. Default 5. */
  readonly top?: number;
  /** Tests and repairs shown. Default 3. */
  readonly steps?: number;
  /** A file that is not there yet: the case is kept in it from the first answer on. Default: the case's own file, where it has one. */
  readonly keep?: string;
}

/** Works on a case with questions and answers: intake facts, results, repairs; shows the ranking and the best next step after each. Every
 * answer is kept in the case's file, where it has one; what is not kept is left in `RECOVERED` when the program is ended.
 * @throws CommandError nobody can answer, or the case or an option cannot be used */
export async function ask(
  terminal: Terminal,
  given: Prompter | undefined,
  name: string | undefined,
  options: AskOptions,
): Promise<void> {
  if (given === undefined && !terminal.interactive) {
    throw new CommandError(
      "'ask' needs an interactive terminal; 'faultodds replay' reads a case from a file or standard input",
    );
  }
  const prompter = given ?? (await import('../terminal/clackPrompter.ts')).clackPrompter;
  const { top = 5, steps = 3 } = options;
  const loaded = await loadModel(options.model);
  const { model, compiled } = loaded;
  const read = name === undefined ? undefined : await readCase(loaded, name);
  let session = read?.session ?? startCase({ id: 'case-1', title: 'New case' });
  const circumstances = (): Required<Circumstances> => circumstancesWith(compiled, caseState(session), options);
  const review = (): CaseReview => reviewCase(compiled, session, circumstances());
  let now = review();
  let saveState: SaveState =
    options.keep === undefined
      ? { file: read?.file, saved: session.content }
      : saveInNewFile(compiled, options.keep, session);
  const drafts: Drafts = {
    caseEngine: undefined,
    newEngine: undefined,
    guessedEngine: engineOf(caseState(session)),
    lines: new Map(),
  };

  /** Takes over a session if it can be computed; a mistake is told and changes nothing. */
  const move = (next: () => Session): void => {
    const before = session;
    try {
      session = next();
      now = review();
    } catch (error) {
      session = before;
      if (!(error instanceof FaultoddsError)) throw error;
      for (const { message, hint } of error.problems)
        terminal.write(`${foldText(`${message}; ${hint}`, terminal.width, '  ')}\n`);
    }
  };
  const keep = (events: readonly CaseEvent[]): void => {
    const engineSet: readonly CaseEvent[] =
      drafts.newEngine === undefined || drafts.newEngine === drafts.caseEngine
        ? []
        : [{ kind: 'engine-set', ...drafts.newEngine }];
    move(() => [...engineSet, ...events].reduce((so_far, event) => recordEvent(compiled, so_far, event), session));
    drafts.newEngine = undefined;
    saveState = saveChanges(terminal, compiled, saveState, session);
  };
  const record = (events: readonly CaseEvent[] | undefined): void => {
    if (events === undefined || events.length === 0) return;
    const before = now;
    keep(events);
    printCase(terminal, model, now, { top, before });
  };
  /** Leaves what nobody saved in a file. @returns what to say of it */
  const leaveBehind = (): string => {
    if (!isUnsaved(saveState, session)) return '';
    const path = saveForRecovery(compiled, session);
    return path === undefined
      ? 'faultodds: the answers could not be saved\n'
      : `faultodds: the answers are saved in '${path}'; 'faultodds ask ${path}' continues with them\n`;
  };
  const done =
    given !== undefined
      ? undefined
      : whenEnded(process, () => {
          // first of all: to touch a terminal that is gone can end the program on the spot
          const left = leaveBehind();
          restoreTerminal(process);
          terminal.warn(left);
        });

  terminal.write(`${foldText(`${model.title}. Nothing is sent anywhere. Escape goes back.`, terminal.width)}\n`);
  terminal.write(`${foldText(describeSaving(saveState), terminal.width)}\n`);
  printNotices(terminal, model, session);
  terminal.write(`${paint(terminal, 'caution', foldText(stopAndTow, terminal.width))}\n`);
  if (name === undefined) {
    if (existsSync(RECOVERY_FILE)) {
      const text = `Unsaved answers of an earlier run are in '${RECOVERY_FILE}': 'faultodds ask ${RECOVERY_FILE}' continues with them.`;
      terminal.write(`${foldText(text, terminal.width)}\n`);
    }
    const before = now;
    const engine = await askEngine(prompter, { optional: true });
    if (engine !== undefined) keep([{ kind: 'engine-set', ...engine }]);
    // given with the command it holds for this run, whatever the case says
    if (options.equipment === undefined) {
      const equipment = await askEquipment(prompter, model, caseState(session));
      if (equipment !== undefined) keep(equipment);
    }
    await askIntake(terminal, prompter, compiled, factsOf(caseState(session)), (event) => keep([event]));
    if (now !== before) printCase(terminal, model, now, { top, before });
  }
  if (session.content.events.length === 0 || name !== undefined) printCase(terminal, model, now, { top });
  for (;;) {
    drafts.caseEngine = caseState(session).engine;
    const { best } = now.advice;
    const wanted = await askMenu(prompter, model, session, now);
    switch (wanted) {
      case 'best-test':
        record(
          await askResult(terminal, prompter, {
            compiled,
            session,
            drafts,
            now,
            test: best.kind === 'test' ? best.test : undefined,
          }),
        );
        break;
      case 'best-repair':
        record(
          await askRepair(terminal, prompter, {
            compiled,
            session,
            circumstances: circumstances(),
            repair: best.kind === 'repair' ? best.repair : undefined,
          }),
        );
        break;
      case 'test':
        record(await askResult(terminal, prompter, { compiled, session, drafts, now }));
        break;
      case 'repair':
        record(await askRepair(terminal, prompter, { compiled, session, circumstances: circumstances() }));
        break;
      case 'intake':
        record(await askIntakeChange(terminal, prompter, { compiled, session, drafts }));
        break;
      case 'codes':
        record(await askCodes(terminal, prompter, { compiled, session, drafts }));
        break;
      case 'monitors':
        record(await askMonitors(terminal, prompter, { compiled, session, drafts }));
        break;
      case 'access':
        record(
          await askAccess(terminal, prompter, { compiled, state: caseState(session), circumstances: circumstances() }),
        );
        break;
      case 'equipment':
        record(await askEquipment(prompter, model, caseState(session)));
        break;
      case 'retract':
        record(await askRetraction(prompter, model, caseState(session)));
        break;
      case 'steps':
        printAdvice(terminal, model, now.advice, steps, settleAdvice(compiled, now.belief, now.circumstances));
        break;
      case 'why':
        printReasons(terminal, compiled, session);
        break;
      case 'undo':
      case 'redo': {
        const before = now;
        drafts.newEngine = undefined;
        move(() => (wanted === 'undo' ? undo(session) : redo(session)));
        saveState = saveChanges(terminal, compiled, saveState, session);
        printCase(terminal, model, now, { top, before });
        break;
      }
      case 'save': {
        const file = await saveToFile(terminal, prompter, compiled, session, saveState.file);
        if (file !== undefined) saveState = { file, saved: session.content };
        break;
      }
      case 'leave': {
        const sure = isUnsaved(saveState, session) ? await prompter.confirm('Leave without saving?') : true;
        if (sure === false) break;
        // pressing Ctrl-C again means it, but not that everything is to be thrown away
        if (sure === undefined) terminal.warn(leaveBehind());
        done?.();
        return;
      }
    }
  }
}
