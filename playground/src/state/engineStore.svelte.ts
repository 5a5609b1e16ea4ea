import { engineOf, type CaseState } from '@faultodds/core';
import { engineLimits } from '@faultodds/core/readings';
import { describeEngine } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import type { CaseStore } from './caseStore.svelte.ts';

/** How many cylinders the engine of the open case has and which one misfires. */
export interface EngineStore {
  cylinders: number;
  /** 0 while nobody has said. */
  suspect: number;
  /** Fuel and cam codes are told by bank; 0 when it is not known. */
  bank: 0 | 1 | 2;
}

type Said = Readonly<EngineStore>;

/** Numbers of cylinders to choose from. */
export const cylinderCounts: readonly number[] = Array.from(
  { length: engineLimits.most - engineLimits.least + 1 },
  (_, at) => engineLimits.least + at,
);

/** The engine of the open case: what the case states, else what its readings tell, else four cylinders and no suspect. What is said goes
 * into the case as soon as it is whole. @param store read reactively. */
export function createEngineStore(store: () => CaseStore): EngineStore {
  // said without the suspect: kept here until it is whole, for the case and the engine it was said of
  let begun = $state.raw<{ readonly id: string; readonly stated: CaseState['engine']; readonly said: Said } | null>(
    null,
  );
  const now = $derived.by((): Said => {
    const { state } = store().now;
    if (begun !== null && begun.id === state.id && begun.stated === state.engine) return begun.said;
    const { cylinders, suspect, bank } = engineOf(state) ?? { cylinders: 4, suspect: 0 };
    return { cylinders, suspect, bank: bank ?? 0 };
  });
  const change = (part: Partial<Said>): void => {
    const said = { ...now, ...part };
    const { cylinders, suspect, bank } = said;
    const { id, engine: stated } = store().now.state;
    begun = suspect === 0 ? { id, stated, said } : null;
    if (suspect === 0) return;
    const engine = { cylinders, suspect, ...(bank === 0 ? {} : { bank }) };
    store().record({ kind: 'engine-set', ...engine }, describeEngine(engine, coreLanguage));
  };
  return {
    get cylinders() {
      return now.cylinders;
    },
    set cylinders(cylinders) {
      change(now.suspect > cylinders ? { cylinders, suspect: 0 } : { cylinders });
    },
    get suspect() {
      return now.suspect;
    },
    set suspect(suspect) {
      change({ suspect });
    },
    get bank() {
      return now.bank;
    },
    set bank(bank) {
      change({ bank });
    },
  };
}
