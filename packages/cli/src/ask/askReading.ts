import { FaultoddsError, type CompiledModel, type Model, type Problem, type ReadingModel } from '@faultodds/core';
import { kindsOf, parseReading, readingOfEntries, type Engine, type Reading } from '@faultodds/core/readings';
import type { Drafts } from './drafts.ts';
import { askEngineIfUnknown } from './askEngineIfUnknown.ts';
import { foldText } from '../terminal/foldText.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { entryLines, type Entries, type EntryLine } from './entryLines.ts';
import type { Terminal } from '../terminal/terminal.ts';

const kindNames: Readonly<Record<Reading['kind'], string>> = {
  'per-cylinder': 'The reading of each cylinder',
  single: 'One number, already computed',
  pair: 'Two readings, one compared with the other',
  trim: 'Short-term and long-term trim',
  counts: 'Counts of each cylinder',
  'part-counts': 'Counts before and after',
};

/** Asks for the numbers of a test, one line at a time. A line that cannot be right is refused where it stands and keeps what was typed;
 * Escape goes back a line. @returns nothing when left. */
export async function askReading(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    test,
    drafts,
  }: { readonly compiled: CompiledModel; readonly test: Model['tests'][number]; readonly drafts: Drafts },
): Promise<Reading | undefined> {
  const models = test.readings ?? [];
  const measure = await only(
    prompter,
    'What was measured?',
    models.map(({ id, label }) => ({ value: id, label })),
  );
  const model = models.find(({ id }) => id === measure);
  if (model === undefined) return undefined;
  const kinds = kindsOf(model);
  const chosen = await only(
    prompter,
    'How was it recorded?',
    kinds.map((kind) => ({ value: kind, label: kindNames[kind] })),
  );
  const kind = kinds.find((one) => one === chosen);
  if (kind === undefined) return undefined;
  if (kind !== 'per-cylinder' && kind !== 'counts') {
    return askLines(terminal, prompter, { compiled, test: test.id, model, kind, drafts, engine: undefined });
  }
  const engine = await askEngineIfUnknown(prompter, drafts);
  if (engine === undefined) return undefined;
  return askLines(terminal, prompter, { compiled, test: test.id, model, kind, drafts, engine });
}

async function only(
  prompter: Prompter,
  question: string,
  choices: readonly { value: string; label: string }[],
): Promise<string | undefined> {
  return choices.length === 1 ? choices[0]?.value : prompter.choose(question, choices);
}

async function askLines(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    test,
    model,
    kind,
    drafts,
    engine,
  }: {
    readonly compiled: CompiledModel;
    readonly test: string;
    readonly model: ReadingModel;
    readonly kind: Reading['kind'];
    readonly drafts: Drafts;
    readonly engine: Engine | undefined;
  },
): Promise<Reading | undefined> {
  const lines = entryLines(model, kind, engine);
  const entered: Entries[] = [];
  const draftOf = ({ id }: EntryLine): string => `${test} ${model.id} ${kind} ${id}`;
  const problemsIn = (entries: readonly Entries[]): readonly Problem[] =>
    problemsOf(
      compiled,
      test,
      readingOfEntries(model, kind, foreseen(Object.assign({}, ...entries) as Entries)),
      engine,
    );
  let at = 0;
  for (;;) {
    const line = lines[at];
    if (line === undefined) {
      // asked again next time, in case it was that
      [drafts.guessedEngine, drafts.newEngine] = [engine ?? drafts.guessedEngine, undefined];
      return undefined;
    }
    const draft = draftOf(line);
    const text = await prompter.type(line.question, drafts.lines.get(draft) ?? '', (typed) => {
      drafts.lines.set(draft, typed);
      const entries = line.read(typed);
      if (typeof entries === 'string') return entries;
      const problem = problemsIn([...entered.slice(0, at), entries]).find((one) => lineOf(lines, one) === at);
      return problem === undefined ? undefined : sayProblem(problem);
    });
    if (text === undefined) {
      at -= 1;
      continue;
    }
    entered[at] = line.read(text) as Entries;
    at += 1;
    if (at < lines.length) continue;
    const [problem] = problemsIn(entered);
    if (problem === undefined) {
      for (const one of lines) drafts.lines.delete(draftOf(one));
      return parseReading(
        compiled,
        test,
        readingOfEntries(model, kind, Object.assign({}, ...entered) as Entries),
        engine,
      );
    }
    terminal.write(`${foldText(sayProblem(problem), terminal.width, '  ')}\n`);
    at = lineOf(lines, problem);
  }
}

/** The line at which a problem is reported: the one with the smallest part of the reading that holds it. */
function lineOf(lines: readonly EntryLine[], { path }: Problem): number {
  const parts = lines.map(({ part }) =>
    path === part || path.startsWith(`${part}/`) || part === '' ? part.length : -1,
  );
  return Math.max(0, parts.indexOf(Math.max(...parts)));
}

/** What was entered so far, and what is still to come taken to be like what is there, so that it is not reported as missing. */
function foreseen(entries: Entries): Entries {
  const after = Object.entries(entries).flatMap(([path, entry]) =>
    path.startsWith('/before') ? [[path.replace('/before', '/after'), entry] as const] : [],
  );
  return { ...Object.fromEntries(after), ...entries };
}

function problemsOf(
  compiled: CompiledModel,
  test: string,
  input: unknown,
  engine: Engine | undefined,
): readonly Problem[] {
  try {
    parseReading(compiled, test, input, engine);
    return [];
  } catch (error) {
    if (error instanceof FaultoddsError) return error.problems;
    throw error;
  }
}

function sayProblem({ path, message, hint }: Problem): string {
  const [, cylinder] = /^\/(?:values|counts|temperatures\/values)\/(\d+)/.exec(path) ?? [];
  return `${cylinder === undefined ? '' : `Cylinder ${cylinder}: `}${message}; ${hint}`;
}
