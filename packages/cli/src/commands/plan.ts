import { setImmediate } from 'node:timers/promises';
import {
  caseState,
  factsOf,
  FaultoddsError,
  advise,
  runInTurns,
  beliefOf,
  type Belief,
  type Circumstances,
  type CompiledModel,
  type LanguageCode,
} from '@faultodds/core';
import {
  boundedSearch,
  writePlanInTurns,
  compileCaseProblem,
  whatWouldItTake,
  testsWhileOpen,
  type Limits,
  type Solution,
} from '@faultodds/core/planning';
import {
  planAsMermaid,
  planAsSvg,
  planAsText,
  planLabels,
  sentenceForAdvice,
  sentenceForBound,
  sentenceForLimits,
  sentencesForNotices,
  titleForPlan,
} from '@faultodds/core/words';
import { circumstancesWith, type CircumstanceOptions } from '../read/circumstancesWith.ts';
import { closestName } from '../read/closestName.ts';
import { CommandError } from '../terminal/commandError.ts';
import { foldText } from '../terminal/foldText.ts';
import { loadModel } from '../read/loadModel.ts';
import { paint } from '../terminal/paint.ts';
import { printJson } from '../print/printJson.ts';
import { printNotices } from '../print/printNotices.ts';
import { printOpening, type Opening } from '../print/printOpening.ts';
import { readCase } from '../read/readCase.ts';
import { replaceFile } from '../files/replaceFile.ts';
import type { Terminal } from '../terminal/terminal.ts';
import { untilInterrupted } from './untilInterrupted.ts';
import { visibleText } from '../terminal/visibleText.ts';
import { wordsOf } from '../print/wordsOf.ts';

/** Options of `faultodds plan`. */
export interface PlanOptions extends CircumstanceOptions {
  readonly model?: string;
  /** Steps written out below each other. Default 4. */
  readonly steps?: number;
  /** Places the search examines at most: the more, the smaller the certified gap. Default 40. */
  readonly search?: number;
  /** What may be spent from here on, in minutes and in the currency of the prices. Default: no limit. */
  readonly minutes?: number;
  readonly money?: number;
  /** Id of an access: also what it would take to open it, and what to look at while it is open. */
  readonly open?: string;
  readonly json?: boolean;
  readonly mermaid?: boolean;
  /** A file to draw the plan to. */
  readonly svg?: string;
  /** Of the plan. Default English. */
  readonly language?: LanguageCode;
}

const SEARCHED = 40;

/** Prints what to do from here on, whatever comes: steps with their prices, outcomes with their probabilities, what it costs and how far
 * from the best possible plan it can be at most.
 * @throws CommandError the case, the access or an option cannot be used */
export async function plan(terminal: Terminal, name: string, options: PlanOptions): Promise<void> {
  const loaded = await loadModel(options.model);
  const { model, compiled } = loaded;
  const { open } = options;
  if (open !== undefined && !model.access.some(({ id }) => id === open)) {
    const ids = model.access.map(({ id }) => id);
    const closest = closestName(open, ids);
    const hint = closest === undefined ? "'faultodds list access' shows them" : `did you mean '${closest}'?`;
    throw new CommandError(`no access '${open}'; ${hint}`);
  }
  const { session } = await readCase(loaded, name);
  const state = caseState(session);
  const belief = beliefOf(compiled, factsOf(state));
  const circumstances = circumstancesWith(compiled, state, options);
  const { search = SEARCHED, steps, minutes, money } = options;
  const limits: Limits = { ...(minutes === undefined ? {} : { minutes }), ...(money === undefined ? {} : { money }) };
  if (terminal.interactive) terminal.warn('Searching for the cheapest plan … (Ctrl-C: show the best one so far)\n');
  const isLimited = Object.keys(limits).length > 0;
  const problem = compileCaseProblem(compiled, belief, circumstances, limits);
  const find = (signal?: AbortSignal): Promise<Solution> =>
    runInTurns(boundedSearch.inTurns(problem, { steps: search, ...(signal === undefined ? {} : { signal }) }), {
      pause: () => setImmediate(),
    });
  const solution = terminal.interactive ? await untilInterrupted(process, find) : await find();
  const found = await runInTurns(writePlanInTurns(problem, solution, steps === undefined ? {} : { depth: steps }), {
    pause: () => setImmediate(),
  });
  const words = wordsOf(options.language);
  const labels = planLabels(model, words);
  const opening = open === undefined ? undefined : openingOf(compiled, belief, circumstances, open);

  if (options.svg !== undefined) {
    // what XML forbids is left out already; what makes a line read other than it is is spelled out
    replaceFile(options.svg, visibleText(planAsSvg(found, labels, words, titleForPlan(state.title, words))));
  }
  if (options.json === true) {
    const document = {
      ...found,
      case: state.id,
      ...(isLimited ? { limits } : {}),
      notices: sentencesForNotices(model, session.notices, words),
      examined: solution.progress.steps,
      ...(opening === undefined ? {} : { opening }),
    };
    printJson(terminal, document);
    return;
  }
  if (options.mermaid === true) {
    terminal.write(planAsMermaid(found, labels, words));
    return;
  }
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  terminal.write(`${paint(terminal, 'strong', foldText(state.title, terminal.width))}\n`);
  if (session.demo !== undefined) paragraph('An invented case, for teaching.');
  printNotices(terminal, model, session, options.language);
  const advice = advise(compiled, belief, circumstances);
  if (advice.proof !== undefined) paragraph(sentenceForAdvice(model, advice, words));
  if (isLimited) paragraph(sentenceForLimits(limits, problem.currency, words));
  terminal.write('\n');
  for (const line of planAsText(found, labels, words).trimEnd().split('\n')) {
    const [indent = ''] = /^ */.exec(line) ?? [];
    terminal.write(`${foldText(line.trimStart(), terminal.width, indent)}\n`);
  }
  terminal.write('\n');
  paragraph(sentenceForBound(found, solution.progress.steps, words));
  if (options.svg !== undefined) paragraph(`Drawing written to ${options.svg}.`);
  if (opening !== undefined) printOpening(terminal, model, opening);
  else paragraph('With --open <access>: when to open something, and which tests to do then.');
}

function openingOf(compiled: CompiledModel, belief: Belief, circumstances: Circumstances, access: string): Opening {
  try {
    return {
      access,
      takes: whatWouldItTake(compiled, belief, circumstances, { kind: 'access', access }),
      looks: testsWhileOpen(compiled, belief, circumstances, access),
    };
  } catch (error) {
    if (error instanceof FaultoddsError)
      throw new CommandError(error.problems.map(({ message }) => message).join('; '));
    throw error;
  }
}
