import { createAsker } from '../worker/asker.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import type { Trail } from './trail.ts';

/** Has the trail of a long case worked out beside the page whenever the open case has none. Called while a component is being made. */
export function followTrail(knowledge: () => Knowledge, store: () => CaseStore): void {
  const asker = createAsker(knowledge().model);
  /** What the worker is following; its moments come later. */
  let asked: Trail['facts'] | null = null;

  $effect(() => {
    const { trail, belief } = store().now;
    const { facts } = belief;
    if (trail !== null) {
      asked = null;
      return asker.cancel();
    }
    // one result more does not make the work so far worthless: the worker goes on, and the rest is added to it
    if (asked !== null && isBegun(asked, facts)) return;
    const following = facts;
    asked = following;
    asker.ask([{ kind: 'trail', facts }], [], (answer) => {
      if (answer.kind !== 'trail' || asked !== following) return;
      asked = null;
      store().takeTrail({ facts: following, moments: answer.answer });
    });
  });
  $effect(() => () => asker.end());
}

/** Whether facts begin as others do. */
function isBegun(begun: Trail['facts'], facts: Trail['facts']): boolean {
  return begun.context === facts.context && begun.observations.every((one, at) => facts.observations[at] === one);
}
