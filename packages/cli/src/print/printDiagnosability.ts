import type { Diagnosability } from '@faultodds/core/authoring';
import { formatProbability } from '@faultodds/core/words/en';
import { paint } from '../terminal/paint.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** Prints what a model can tell apart at a bearable price, which tests add nothing, and what its numbers rest on, as plain tables. */
export function printDiagnosability(
  terminal: Terminal,
  { hardPairs, dominated, provenance, bareJudgement }: Diagnosability,
): void {
  table(
    terminal,
    'Pairs of causes that no affordable test separates',
    hardPairs,
    ({ a, b, separation, bestTest, dearerTest }) => [
      `${a} / ${b}`,
      formatProbability(separation),
      bestTest === undefined ? 'no test' : `best: ${bestTest}`,
      dearerTest === undefined ? '' : `dearer: ${dearerTest}`,
    ],
  );
  table(terminal, 'Tests that another test makes superfluous', dominated, ({ test, by }) => [test, `by ${by}`]);
  table(terminal, 'Where the numbers come from', provenance, ({ kind, numbers, share }) => [
    kind,
    String(numbers),
    formatProbability(share),
  ]);
  table(terminal, 'Judgement only: numbers worth the fewest cases', bareJudgement.slice(0, 20), ({ path, ess }) => [
    path,
    `${ess} cases`,
  ]);
  if (bareJudgement.length > 20) terminal.write(`  and ${bareJudgement.length - 20} more (--json lists all)\n`);
}

function table<T>(terminal: Terminal, title: string, rows: readonly T[], cells: (row: T) => readonly string[]): void {
  terminal.write(`${paint(terminal, 'strong', title)}\n`);
  if (rows.length === 0) terminal.write('  none\n');
  const texts = rows.map((row) => cells(row));
  const widths = (texts[0] ?? []).map((_, column) => Math.max(...texts.map((row) => row[column]!.length)));
  for (const row of texts) {
    terminal.write(
      `  ${row
        .map((cell, column) => cell.padEnd(widths[column]!))
        .join('  ')
        .trimEnd()}\n`,
    );
  }
}
