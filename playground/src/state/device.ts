import type { CaseDocument } from '@faultodds/core';
import { createStore, del, entries, get, set, update } from 'idb-keyval';

/** A case as it lies on the device: unparsed, since another version of the page may have written it. */
export interface KeptCase {
  readonly id: string;
  readonly title: string;
  readonly document: unknown;
  /** New with every change: whoever wants to write must have seen the one that lies there. Absent in cases of the first version. */
  readonly revision?: string;
  /** When it was last changed, milliseconds since 1970. */
  readonly changed?: number;
  /** What the list shows of it: results recorded and who led, as core said. */
  readonly standing?: { readonly results: number; readonly cause: string; readonly probability: number };
}

/** A case about to be kept. */
export interface CaseToKeep extends KeptCase {
  readonly document: CaseDocument;
  readonly revision: string;
}

/** Which case was open, and how far when it was a replay. */
export interface OpenCase {
  readonly id: string;
  readonly replayStep?: number;
}

/** The cases on this device (IndexedDB), shared by all windows of the page. Every promise rejects where the browser keeps nothing. */
export interface Device {
  /** Writes in one transaction, unless another window wrote something this one has not seen: then nothing is changed.
   * @param seen revision last read or written here. @returns the case in the way, or undefined when it was written. */
  keep(kept: CaseToKeep, seen: string | undefined): Promise<KeptCase | undefined>;
  /** Puts a case back as it was. */
  putBack(kept: KeptCase): Promise<void>;
  kept(): Promise<readonly KeptCase[]>;
  find(id: string): Promise<KeptCase | undefined>;
  forget(id: string): Promise<void>;
  /** Remembered for this window, and for the next one that is opened. */
  rememberOpen(open: OpenCase): Promise<void>;
  lastOpen(): Promise<OpenCase | undefined>;
  /** Calls back with the id of every case another window changed or deleted. */
  listen(changed: (id: string) => void): void;
}

/** Opens nothing yet: the database is made at the first question. */
export function openDevice(): Device {
  const cases = createStore('faultodds', 'cases');
  const place = createStore('faultodds-place', 'open');
  const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('faultodds-cases');
  return {
    async keep(kept, seen) {
      let inTheWay: KeptCase | undefined;
      await update<KeptCase>(
        kept.id,
        (there) => {
          inTheWay = there !== undefined && there.revision !== seen ? there : undefined;
          return inTheWay ?? kept;
        },
        cases,
      );
      if (inTheWay === undefined) channel?.postMessage(kept.id);
      return inTheWay;
    },
    async putBack(kept) {
      await set(kept.id, kept, cases);
      channel?.postMessage(kept.id);
    },
    kept: async () => (await entries<string, KeptCase>(cases)).map(([, kept]) => kept),
    find: (id) => get<KeptCase>(id, cases),
    async forget(id) {
      await del(id, cases);
      channel?.postMessage(id);
    },
    async rememberOpen(open) {
      try {
        sessionStorage.setItem('faultodds-open', JSON.stringify(open));
      } catch {
        // refused: the window starts with the case opened last in any of them
      }
      await set('open', open, place);
    },
    lastOpen: async () => openHere() ?? (await get<OpenCase>('open', place)),
    listen(changed) {
      channel?.addEventListener('message', ({ data }) => {
        if (typeof data === 'string') changed(data);
      });
    },
  };
}

/** What this very window had open; several windows may have several cases. */
function openHere(): OpenCase | undefined {
  try {
    return JSON.parse(sessionStorage.getItem('faultodds-open') ?? 'null') ?? undefined;
  } catch {
    return undefined;
  }
}
