import type { CauseRanking, Model } from '@faultodds/core';
import { formatProbability } from '@faultodds/core/words/en';
import { bar } from './bar.ts';
import { labelOf } from './labelOf.ts';
import { paint } from './paint.ts';
import type { Terminal } from './terminal.ts';

const BAR_WIDTH = 24;

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
  shown.forEach(({ cause, probability }, at) => {
    const number = (numbers[at] ?? '').padStart(numberWidth);
    const was = before === undefined ? undefined : formatProbability(before.posterior[cause] ?? 0);
    const moved = was === undefined || was === numbers[at] ? '' : paint(terminal, 'faint', `  was ${was}`);
    const drawn = paint(terminal, 'bar', bar(probability, BAR_WIDTH, terminal.unicode));
    const name = labelOf(model.causes, cause);
    terminal.write(`  ${drawn} ${number}  ${at === 0 ? paint(terminal, 'strong', name) : name}${moved}\n`);
  });
}
