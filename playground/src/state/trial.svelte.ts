import {
  type Advice,
  type Belief,
  changeNumber,
  type CompiledModel,
  factsOf,
  FaultoddsError,
  nextActions,
  type RankedCause,
  updateBelief,
} from '@faultodds/core';
import type { ChangedNumber } from '../worker/question.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import type { Knowledge } from './knowledge.ts';
import { problemInWords } from './problemInWords.ts';

/** What the open case would look like if some numbers were others. The case itself stays as it is. */
export interface Trial {
  readonly changes: readonly ChangedNumber[];
  /** As it would be; the case's own while nothing is changed. */
  readonly ranking: readonly RankedCause[];
  readonly best: Advice['best'];
  /** What core refused, in its words; '' while all is well. */
  readonly refused: string;
  /** The number as it stands now: a change in its row takes it along. */
  valueAt(path: string): number | undefined;
  set(path: string, value: number): void;
  reset(path: string): void;
  resetAll(): void;
}

/** A slider is followed by the ranking at once; the dearer advice waits until it rests this long. */
const PAUSE = 120;

/** Starts with every number its own. Called while a component is being made. */
export function createTrial(knowledge: () => Knowledge, store: () => CaseStore): Trial {
  let changes = $state.raw<readonly ChangedNumber[]>([]);
  let rested = $state.raw<readonly ChangedNumber[]>([]);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const apply = (all: readonly ChangedNumber[]): CompiledModel =>
    all.reduce((made, { path, value }) => changeNumber(made, path, value), knowledge().compiled);
  const model = $derived.by((): { compiled: CompiledModel; refused: string } => {
    try {
      return { compiled: apply(changes), refused: '' };
    } catch (error) {
      if (error instanceof FaultoddsError)
        return { compiled: knowledge().compiled, refused: error.problems.map(problemInWords).join(' ') };
      throw error;
    }
  });
  const beliefOf = (compiled: CompiledModel): Belief => updateBelief(compiled, factsOf(store().now.state));
  const ranking = $derived(changes.length === 0 ? store().now.belief.ranking : beliefOf(model.compiled).ranking);
  const best = $derived.by(() => {
    const { advice, circumstances } = store().now;
    if (rested.length === 0) return advice.best;
    const compiled = apply(rested);
    return nextActions(compiled, beliefOf(compiled), circumstances).best;
  });
  function change(all: readonly ChangedNumber[]): void {
    changes = all;
    clearTimeout(timer);
    timer = setTimeout(() => {
      if (model.refused === '') rested = all;
    }, PAUSE);
  }

  return {
    get changes() {
      return changes;
    },
    get ranking() {
      return ranking;
    },
    get best() {
      return best;
    },
    get refused() {
      return model.refused;
    },
    valueAt(path) {
      const found = path
        .split('/')
        .slice(1)
        .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], model.compiled.model);
      return typeof found === 'number' ? found : undefined;
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
  };
}
