import { FaultoddsError, nextObservationId, type CaseEvent, type CompiledModel, type Session } from '@faultodds/core';
import { countsOfMonitors, decodeMonitorResponse, type MonitorCount } from '@faultodds/core/codes';
import { parseReading, readingOfEntries } from '@faultodds/core/readings';
import { askActivity } from './askActivity.ts';
import { askBesideNumbers } from './askBesideNumbers.ts';
import type { Drafts } from './drafts.ts';
import { askEngineIfUnknown } from './askEngineIfUnknown.ts';
import { foldText } from '../terminal/foldText.ts';
import type { Prompter } from '../terminal/prompter.ts';
import { entryLines, type Entries } from './entryLines.ts';
import type { Terminal } from '../terminal/terminal.ts';

const DRAFT = 'monitors';
const coversNames = { 'last-cycle': 'The last or the current drive', average: 'The average over drives' } as const;

/** Asks for a raw response of the misfire monitors in hexadecimal and makes a reading of the counts of all cylinders out of it.
 * @returns events to record; nothing when left, what was pasted is kept. */
export async function askMonitors(
  terminal: Terminal,
  prompter: Prompter,
  {
    compiled,
    session,
    drafts,
  }: { readonly compiled: CompiledModel; readonly session: Session; readonly drafts: Drafts },
): Promise<CaseEvent[] | undefined> {
  const test = compiled.model.tests.find(({ readings = [] }) => readings.some(({ kind }) => kind === 'counts'));
  const measure = test?.readings?.find(({ kind }) => kind === 'counts');
  if (test === undefined || measure === undefined) return undefined;
  const engine = await askEngineIfUnknown(prompter, drafts);
  if (engine === undefined) return undefined;
  const paragraph = (text: string): void => terminal.write(`${foldText(text, terminal.width, '  ')}\n`);
  for (;;) {
    const hex = await prompter.paste(
      'Response to service $06, in hexadecimal (46 A2 0C 24 …)',
      drafts.lines.get(DRAFT) ?? '',
    );
    if (hex === undefined) {
      [drafts.guessedEngine, drafts.newEngine] = [engine, undefined];
      return undefined;
    }
    drafts.lines.set(DRAFT, hex);
    const { counts, problems } = decodeMonitorResponse(hex);
    for (const { path, message, hint } of problems) paragraph(`Byte ${path.slice(1)}: ${message}; ${hint}.`);
    const covers = await askCovers(prompter, counts);
    if (covers === undefined) {
      if (counts.length > 0) continue;
      paragraph('No misfire counts in it.');
      if ((await prompter.confirm('Correct it?')) !== true) return undefined;
      continue;
    }
    const byCylinder = countsOfMonitors(counts, covers);
    paragraph(
      `Misfires: ${Object.entries(byCylinder)
        .map(([cylinder, count]) => `cylinder ${cylinder}: ${count}`)
        .join(', ')}.`,
    );
    const exposure = entryLines(measure, 'counts', engine).find(({ id }) => id === 'exposure')!;
    const text = await prompter.type(exposure.question, '', (typed) => asProblem(exposure.read(typed)));
    if (text === undefined) continue;
    try {
      const counted = Object.entries(byCylinder).map(([cylinder, count]) => [`/counts/${cylinder}`, count] as const);
      const entries = { ...Object.fromEntries(counted), ...(exposure.read(text) as Entries) };
      const reading = parseReading(compiled, test.id, readingOfEntries(measure, 'counts', entries), engine);
      const evidence = await askBesideNumbers(terminal, prompter, { compiled, test, reading });
      if (evidence === undefined) return undefined;
      drafts.lines.delete(DRAFT);
      return askActivity(prompter, test, { id: nextObservationId(session), ...evidence });
    } catch (error) {
      if (!(error instanceof FaultoddsError)) throw error;
      for (const { message, hint } of error.problems) paragraph(`${message}; ${hint}.`);
      if ((await prompter.confirm('Correct it?')) !== true) return undefined;
    }
  }
}

function asProblem(part: unknown): string | undefined {
  return typeof part === 'string' ? part : undefined;
}

async function askCovers(
  prompter: Prompter,
  counts: readonly MonitorCount[],
): Promise<MonitorCount['covers'] | undefined> {
  const found = (['last-cycle', 'average'] as const).filter((one) =>
    counts.some(({ covers, cylinder }) => covers === one && cylinder !== 'all'),
  );
  if (found.length < 2) return found[0];
  const chosen = await prompter.choose(
    'Which counts?',
    found.map((value) => ({ value, label: coversNames[value] })),
  );
  return found.find((one) => one === chosen);
}
