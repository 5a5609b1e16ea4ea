import type { Model } from '@faultodds/core';
import { closestName } from '../read/closestName.ts';
import { CommandError } from '../terminal/commandError.ts';
import { loadModel } from '../read/loadModel.ts';
import { paint } from '../terminal/paint.ts';
import { printJson } from '../print/printJson.ts';
import { caseIdOf } from '../read/readCase.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** What can be listed. */
export const listed = ['causes', 'tests', 'repairs', 'intake', 'access', 'equipment', 'cases'] as const;

/** Options of `faultodds list`. */
export interface ListOptions {
  readonly model?: string;
  readonly json?: boolean;
}

interface Entry {
  readonly id: string;
  readonly label: string;
  /** Ids that go with it: outcomes of a test, values of an intake fact. */
  readonly of?: readonly { readonly id: string; readonly label: string }[];
}

/** Prints ids and labels: the names a case file is written with.
 * @throws CommandError there is no such list, or the model cannot be used */
export async function list(
  terminal: Terminal,
  name: string,
  { model: path, json = false }: ListOptions,
): Promise<void> {
  const what = listed.find((one) => one === name);
  if (what === undefined) {
    const closest = closestName(name, listed);
    const hint = closest === undefined ? `there is ${listed.join(', ')}` : `did you mean '${closest}'?`;
    throw new CommandError(`no list '${name}'; ${hint}`);
  }
  const { model, cases } = await loadModel(path);
  const entries = what === 'cases' ? cases.map(caseEntry) : entriesOf(model, what);
  if (json) {
    printJson(terminal, entries);
    return;
  }
  const width = Math.max(
    0,
    ...entries.flatMap(({ id, of = [] }) => [id.length, ...of.map((one) => one.id.length + 2)]),
  );
  for (const { id, label, of = [] } of entries) {
    terminal.write(`${paint(terminal, 'strong', id.padEnd(width))}  ${label}\n`);
    for (const one of of) terminal.write(`  ${one.id.padEnd(width - 2)}  ${paint(terminal, 'dim', one.label)}\n`);
  }
}

function entriesOf(model: Model, what: Exclude<(typeof listed)[number], 'cases'>): Entry[] {
  const bare = (entries: readonly Entry[]): Entry[] => entries.map(({ id, label }) => ({ id, label }));
  switch (what) {
    case 'causes':
      return bare(model.causes);
    case 'repairs':
      return bare(model.repairs);
    case 'access':
      return bare(model.access);
    case 'equipment':
      return bare(model.equipment);
    case 'tests':
      return model.tests.map(({ id, label, outcomes }) => ({ id, label, of: outcomes }));
    case 'intake':
      return model.context.map(({ id, question, values }) => ({
        id,
        label: question,
        of: values.map((value) => ({ id: value.id, label: value.label })),
      }));
  }
}

function caseEntry(document: unknown): Entry {
  const title: unknown = typeof document === 'object' && document !== null && 'title' in document ? document.title : '';
  return { id: caseIdOf(document), label: `${String(title)} (invented)` };
}
