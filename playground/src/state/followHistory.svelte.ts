import { createAsker } from '../worker/asker.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { RankingHistory } from './rankingHistory.ts';

/** Has the history of a long case worked out beside the page whenever the open case has none. Called while a component is being made. */
export function followHistory(knowledge: () => Knowledge, store: () => CaseStore): void {
  const asker = createAsker(knowledge().model);
  /** What the worker is following; its moments come later. */
  let asked: RankingHistory['facts'] | null = null;

  $effect(() => {
    const { history, belief } = store().now;
    const { facts } = belief;
    if (history !== null) {
      asked = null;
      return asker.cancel();
    }
    // one result more does not make the work so far worthless: the worker goes on, and the rest is added to it
    if (asked !== null && isBegun(asked, facts)) return;
    const following = facts;
    asked = following;
    asker.ask([{ kind: 'history', facts }], [], (answer) => {
      if (answer.kind !== 'history' || asked !== following) return;
      asked = null;
      store().takeHistory({ facts: following, moments: answer.answer });
    });
  });
  $effect(() => () => asker.end());
}

/** Whether facts begin as others do. */
function isBegun(begun: RankingHistory['facts'], facts: RankingHistory['facts']): boolean {
  return begun.context === facts.context && begun.observations.every((one, at) => facts.observations[at] === one);
}
