import type { CaseEvent, Model, Prices } from '@faultodds/core';

/** What is chosen once on this device and every new case begins with. */
interface Preferences {
  /** Absent: the model's own. */
  readonly prices?: Prices;
  /** Ids at hand; absent: everything. */
  readonly equipment?: readonly string[];
}

/** The choices kept on this device. */
export interface PreferenceStore {
  readonly now: Preferences;
  set(change: Partial<Preferences>): void;
  /** The choices as the first events of a case; equipment as far as the model knows it. */
  firstEvents(model: Model): readonly CaseEvent[];
}

const key = 'faultodds-preferences';

/** Reads what is kept. A device that keeps nothing, or something else under this name, begins without choices. */
export function createPreferences(): PreferenceStore {
  let now = $state.raw<Preferences>(kept());
  return {
    get now() {
      return now;
    },
    set(change) {
      now = { ...now, ...kept(), ...change }; // another window may have chosen something else meanwhile
      try {
        localStorage.setItem(key, JSON.stringify(now));
      } catch {
        // storage is refused: the choices last as long as the page
      }
    },
    firstEvents: (model) => [
      ...(now.prices === undefined ? [] : [{ kind: 'prices-set' as const, prices: now.prices }]),
      ...(Array.isArray(now.equipment)
        ? [
            {
              kind: 'equipment-set' as const,
              equipment: now.equipment.filter((id) => model.equipment.some((one) => one.id === id)),
            },
          ]
        : []),
    ],
  };
}

function kept(): Preferences {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof found === 'object' && found !== null ? found : {};
  } catch {
    return {};
  }
}
