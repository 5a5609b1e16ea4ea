import {
  FaultoddsError,
  kindsOf,
  parseReading,
  type CompiledModel,
  type Engine,
  type Model,
  type Problem,
  type Reading,
  type ReadingModel,
} from '@faultodds/core';
import type { Desk } from './desk.ts';
import { engineAtDesk } from './engineAtDesk.ts';
import { foldText } from '../terminal/foldText.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { readingFields, type ReadingField } from './readingFields.ts';
import type { Terminal } from '../terminal/terminal.ts';

type Part = Readonly<Record<string, unknown>>;

const kindNames: Readonly<Record<Reading['kind'], string>> = {
  'per-cylinder': 'The reading of each cylinder',
  single: 'One figure, worked out already',
  pair: 'Two readings, one held against the other',
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
    desk,
  }: { readonly compiled: CompiledModel; readonly test: Model['tests'][number]; readonly desk: Desk },
): Promise<Reading | undefined> {
  const models = test.readings ?? [];
  const measure = await only(
    prompter,
    'What was read?',
    models.map(({ id, label }) => ({ value: id, label })),
  );
  const model = models.find(({ id }) => id === measure);
  if (model === undefined) return undefined;
  const kinds = kindsOf(model);
  const chosen = await only(
    prompter,
    'How was it noted?',
    kinds.map((kind) => ({ value: kind, label: kindNames[kind] })),
  );
  const kind = kinds.find((one) => one === chosen);
  if (kind === undefined) return undefined;
  if (kind !== 'per-cylinder' && kind !== 'counts') {
    return askLines(terminal, prompter, { compiled, test: test.id, model, kind, desk, engine: undefined });
  }
  const engine = await engineAtDesk(prompter, desk);
  if (engine === undefined) return undefined;
  return askLines(terminal, prompter, { compiled, test: test.id, model, kind, desk, engine });
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
    desk,
    engine,
  }: {
    readonly compiled: CompiledModel;
    readonly test: string;
    readonly model: ReadingModel;
    readonly kind: Reading['kind'];
    readonly desk: Desk;
    readonly engine: Engine | undefined;
  },
): Promise<Reading | undefined> {
  const head: Part = { kind, measure: model.id };
  const fields = readingFields(model, kind, engine);
  const parts: Part[] = [];
  let at = 0;
  for (;;) {
    const field = fields[at];
    if (field === undefined) {
      // asked again next time, in case it was that
      [desk.guess, desk.told] = [engine ?? desk.guess, undefined];
      return undefined;
    }
    const draft = `${test} ${model.id} ${kind} ${field.id}`;
    const text = await prompter.type(field.question, desk.typed.get(draft) ?? '', (typed) => {
      desk.typed.set(draft, typed);
      const part = field.read(typed);
      if (typeof part === 'string') return part;
      const own = problemsOf(compiled, test, [head, ...parts.slice(0, at), part], engine).find(({ path }) =>
        field.owns.test(path),
      );
      return own === undefined ? undefined : sayProblem(own);
    });
    if (text === undefined) {
      at -= 1;
      continue;
    }
    parts[at] = field.read(text) as Part;
    at += 1;
    if (at < fields.length) continue;
    const input = joined([head, ...parts]);
    const [problem] = problemsOf(compiled, test, [head, ...parts], engine);
    if (problem === undefined) {
      for (const { id } of fields) desk.typed.delete(`${test} ${model.id} ${kind} ${id}`);
      return parseReading(compiled, test, input, engine);
    }
    terminal.write(`${foldText(sayProblem(problem), terminal.width, '  ')}\n`);
    at = ownerOf(fields, problem);
  }
}

function ownerOf(fields: readonly ReadingField[], { path }: Problem): number {
  return Math.max(
    0,
    fields.findIndex(({ owns }) => owns.test(path)),
  );
}

/** What core says of the lines so far. What is still to come is taken to be like what is there, so that it is not found wanting. */
function problemsOf(
  compiled: CompiledModel,
  test: string,
  parts: readonly Part[],
  engine: Engine | undefined,
): readonly Problem[] {
  const input = joined(parts);
  const stand: Part = 'before' in input ? { after: input['before'], ...input } : input;
  try {
    parseReading(compiled, test, stand, engine);
    return [];
  } catch (error) {
    if (error instanceof FaultoddsError) return error.problems;
    throw error;
  }
}

/** One reading out of its parts; `before` and `after` come in two lines each. */
function joined(parts: readonly Part[]): Part {
  return parts.reduce<Part>((whole, part) => {
    const next: Record<string, unknown> = { ...whole, ...part };
    for (const when of ['before', 'after']) {
      if (when in whole && when in part) next[when] = { ...(whole[when] as Part), ...(part[when] as Part) };
    }
    return next;
  }, {});
}

function sayProblem({ path, message, hint }: Problem): string {
  const [, cylinder] = /^\/(?:values|counts|temperatures\/values)\/(\d+)/.exec(path) ?? [];
  return `${cylinder === undefined ? '' : `Cylinder ${cylinder}: `}${message}; ${hint}`;
}
