import { type Advice, factsOf, FaultoddsError, type Model, type RankedCause, type Session } from '@faultodds/core';
import { changeNumber, numberAt } from '@faultodds/core/doubt';
import { problemInWords } from '../words/problemInWords.ts';
import { createAsker } from '../worker/asker.ts';
import type { Answers, ChangedNumber } from '../worker/question.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What the open case would look like if some numbers were others. The case itself stays as it is. */
export interface Trial {
  readonly changes: readonly ChangedNumber[];
  /** As it would be; those of the case while nothing is changed. */
  readonly ranking: readonly RankedCause[];
  readonly best: Advice['best'];
  /** What core refused, in its words; '' while all is well. */
  readonly refused: string;
  /** The number as it stands now: a change in its row takes it along. */
  valueAt(path: string): number | undefined;
  set(path: string, value: number): void;
  reset(path: string): void;
  resetAll(): void;
  /** The case may have changed since: what was worked out of another is dropped and asked anew. */
  refresh(): void;
}

/** Starts with the numbers of the model. A slider is followed by ranking and advice from beside the page: while one answer is being worked out,
 * only the latest position waits. Called while a component is being made. */
export function createTrial(knowledge: () => Knowledge, store: () => CaseStore): Trial {
  const asker = createAsker(knowledge().model);
  let changes = $state.raw<readonly ChangedNumber[]>([]);
  let answered = $state.raw<Answers['trial'] | null>(null);
  let of: Session | undefined;
  let busy = false;
  let waits = false;
  const model = $derived.by((): { changed: Model; refused: string } => {
    const { compiled } = knowledge();
    try {
      const changed = changes.reduce((made, { path, value }) => changeNumber(made, path, value), compiled);
      return { changed: changed.model, refused: '' };
    } catch (error) {
      if (error instanceof FaultoddsError)
        return { changed: compiled.model, refused: error.problems.map(problemInWords).join(' ') };
      throw error;
    }
  });
  const trial = $derived(changes.length === 0 ? null : answered);

  function work(): void {
    const { state, session, circumstances } = store().now;
    if (of !== session) answered = null;
    of = session;
    waits = busy;
    if (busy || changes.length === 0 || model.refused !== '') return;
    busy = true;
    asker.ask(
      [{ kind: 'trial', facts: factsOf(state), circumstances }],
      changes,
      ({ kind, answer }) => {
        // until the best step is worked out anew, the one before stays
        if (kind === 'trial' && of === session && changes.length > 0) answered = { ...answered, ...answer };
      },
      () => {
        busy = false;
        if (waits) work();
      },
    );
  }
  function change(all: readonly ChangedNumber[]): void {
    changes = all;
    if (all.length === 0) answered = null;
    work();
  }

  return {
    get changes() {
      return changes;
    },
    get ranking() {
      return trial?.ranking ?? store().now.belief.ranking;
    },
    get best() {
      return trial?.best ?? store().now.advice.best;
    },
    get refused() {
      return model.refused;
    },
    valueAt(path) {
      return numberAt(model.changed, path);
    },
    set(path, value) {
      const others = changes.filter((one) => one.path !== path);
      change([...others, { path, value }]);
    },
    reset(path) {
      change(changes.filter((one) => one.path !== path));
    },
    resetAll() {
      change([]);
    },
    refresh: work,
  };
}
