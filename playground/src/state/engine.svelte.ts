import type { CaseState } from '@faultodds/core';

/** How many cylinders the engine of the open case has and which one misfires. */
export interface Engine {
  cylinders: number;
  /** 0 while nobody has said. */
  suspect: number;
  /** Fuel and cam codes are told by bank; 0 when it is not known. */
  bank: 0 | 1 | 2;
}

interface Kept {
  readonly cylinders: number;
  readonly suspect: number;
  readonly bank: 0 | 1 | 2;
}

const key = 'faultodds-engines';
const MOST = 50;

/** The engine of the open case: what was said on this device, else what its readings tell, else four cylinders and no suspect.
 * @param open where the open case stands; read reactively. */
export function createEngine(open: () => CaseState): Engine {
  let said = $state.raw(kept());
  const now = $derived(said[open().id] ?? toldBy(open()));
  const say = (change: Partial<Kept>): void => {
    const { id } = open();
    const others = Object.entries(said).filter(([other]) => other !== id);
    said = Object.fromEntries([...others.slice(1 - MOST), [id, { ...now, ...change }]]);
    try {
      localStorage.setItem(key, JSON.stringify(said));
    } catch {
      // storage is refused: it lasts as long as the page
    }
  };
  return {
    get cylinders() {
      return now.cylinders;
    },
    set cylinders(cylinders) {
      say(now.suspect > cylinders ? { cylinders, suspect: 0 } : { cylinders });
    },
    get suspect() {
      return now.suspect;
    },
    set suspect(suspect) {
      say({ suspect });
    },
    get bank() {
      return now.bank;
    },
    set bank(bank) {
      say({ bank });
    },
  };
}

function kept(): Readonly<Record<string, Kept>> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof found === 'object' && found !== null ? Object.fromEntries(Object.entries(found).filter(isKept)) : {};
  } catch {
    return {};
  }
}

function isKept(entry: [string, unknown]): entry is [string, Kept] {
  const one = entry[1] as Partial<Kept> | null;
  return Number.isInteger(one?.cylinders) && Number.isInteger(one?.suspect);
}

function toldBy({ observations }: CaseState): Kept {
  for (const observation of observations.toReversed()) {
    const reading = observation.kind === 'result' ? observation.reading : undefined;
    if (reading?.kind !== 'per-cylinder' && reading?.kind !== 'counts') continue;
    const read = Object.keys(reading.kind === 'counts' ? reading.counts : reading.values).map(Number);
    return { cylinders: Math.max(...read, reading.suspect), suspect: reading.suspect, bank: 0 };
  }
  return { cylinders: 4, suspect: 0, bank: 0 };
}
