import type { Belief } from '@faultodds/core';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** One of the leading causes, as it stands at the head of the page. */
export interface LeaderView {
  readonly letter: string;
  readonly label: string;
  readonly chance: string;
  /** Its probability at intake; '' while nothing has been recorded. */
  readonly was: string;
}

/** The three most likely causes now. */
export function nowView(knowledge: Knowledge, { ranking, facts }: Belief): readonly LeaderView[] {
  return ['A', 'B', 'C'].flatMap((letter, rank) => {
    const ranked = ranking[rank];
    if (!ranked) return [];
    const { cause, probability, prior } = ranked;
    return [
      {
        letter,
        label: knowledge.causeLabel(cause),
        chance: shortChance(probability),
        was: facts.observations.length > 0 ? t.now.was(shortChance(prior)) : '',
      },
    ];
  });
}
