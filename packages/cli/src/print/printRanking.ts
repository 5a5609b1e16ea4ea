import type { CauseRanking, Model } from '@faultodds/core';
import { formatProbability } from '@faultodds/core/words/en';
import { bar } from '../terminal/bar.ts';
import { foldText } from '../terminal/foldText.ts';
import { labelOf } from './labelOf.ts';
import { paint } from '../terminal/paint.ts';
import type { Terminal } from '../terminal/terminal.ts';

/** The likeliest causes as bars with their probability, and what each was in the ranking before. */
export function printRanking(
  terminal: Terminal,
  model: Model,
  ranking: CauseRanking,
  { top, before }: { readonly top: number; readonly before?: CauseRanking },
): void {
  const shown = ranking.ranking.slice(0, top);
  const numbers = shown.map(({ probability }) => formatProbability(probability));
  const numberWidth = Math.max(...numbers.map((number) => number.length));
  const barWidth = terminal.width < 80 ? 12 : 24;
  const margin = 2 + barWidth + 1 + numberWidth + 2;
  shown.forEach(({ cause, probability }, at) => {
    const number = (numbers[at] ?? '').padStart(numberWidth);
    const was = before === undefined ? undefined : formatProbability(before.posterior[cause] ?? 0);
    const moved = was === undefined || was === numbers[at] ? '' : `  was ${was}`;
    const drawn = paint(terminal, 'bar', bar(probability, barWidth, terminal.unicode));
    // folded beside the bar, never under it
    const name = foldText(`${labelOf(model.causes, cause)}${moved}`, terminal.width - margin).replaceAll(
      '\n',
      `\n${' '.repeat(margin)}`,
    );
    terminal.write(`  ${drawn} ${number}  ${at === 0 ? paint(terminal, 'strong', name) : name}\n`);
  });
}
