import type { CaseDocument } from '@faultodds/core';
import { entries, get, promisifyRequest, set, update } from 'idb-keyval';
import { openStore } from './openStore.ts';

/** What the list shows of a case. */
export interface CaseSummary {
  readonly id: string;
  readonly title: string;
  /** New with every change: whoever wants to write must have seen the one that lies there. Absent in cases of the first version. */
  readonly revision?: string;
  /** When it was last changed, milliseconds since 1970. */
  readonly changed?: number;
  /** Results recorded and who led, as core said. */
  readonly standing?: { readonly results: number; readonly cause: string; readonly probability: number };
}

/** A case as it lies on the device: unparsed, since another version of the page may have written it. */
export interface StoredCase extends CaseSummary {
  readonly document: unknown;
}

/** A case about to be kept. */
export interface CaseToStore extends StoredCase {
  readonly document: CaseDocument;
  readonly revision: string;
}

/** Which case was open, and how far when it was a replay. */
interface OpenCase {
  readonly id: string;
  readonly replayStep?: number;
}

/** What a window finds when it opens: which case was open, and that case when it is kept. */
export interface LastOpen {
  readonly last?: OpenCase | undefined;
  readonly kept?: StoredCase | undefined;
}

/** The cases on this device (IndexedDB), shared by all windows of the page. Every promise rejects where the browser keeps nothing, and
 * may never settle where it does not answer. */
export interface Device {
  /** Writes in one transaction, unless another window wrote something this one has not seen: then nothing is changed.
   * @param seen revision last read or written here. @returns the case in the way, or undefined when it was written. */
  save(kept: CaseToStore, seen: string | undefined): Promise<StoredCase | undefined>;
  /** Puts a case back as it was, unless one of its id lies there again. */
  restore(kept: StoredCase): Promise<void>;
  /** All cases, without their documents. */
  list(): Promise<readonly CaseSummary[]>;
  find(id: string): Promise<StoredCase | undefined>;
  /** @returns what lay there, in the state in which it was deleted. */
  remove(id: string): Promise<StoredCase | undefined>;
  /** Remembered for this window, and for the next one that is opened. */
  rememberOpen(open: OpenCase): Promise<void>;
  readLastOpen(): Promise<LastOpen>;
  /** Calls back with the id of every case another window changed or deleted. */
  listen(changed: (id: string) => void): void;
}

/** Opens nothing yet: the database is made at the first question. Throws nothing, whatever the browser refuses. */
export function openDevice(): Device {
  const cases = openStore('faultodds', 'cases');
  const lastOpen = openStore('faultodds-place', 'open');
  const channel = openChannel();
  let remembered = '';
  return {
    async save(kept, seen) {
      let inTheWay: StoredCase | undefined;
      await update<StoredCase>(
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
    async restore(kept) {
      await update<StoredCase>(kept.id, (there) => there ?? kept, cases);
      channel?.postMessage(kept.id);
    },
    list: async () => (await entries<string, StoredCase>(cases)).map(([, kept]) => summaryOf(kept)),
    find: async (id) => get<StoredCase>(id, cases),
    async remove(id) {
      const there = await cases('readwrite', async (store) => {
        const found = store.get(id) as IDBRequest<StoredCase | undefined>;
        store.delete(id);
        await promisifyRequest(store.transaction);
        return found.result;
      });
      channel?.postMessage(id);
      return there;
    },
    async rememberOpen(open) {
      const text = JSON.stringify(open);
      if (text === remembered) return;
      try {
        sessionStorage.setItem('faultodds-open', text);
      } catch {
        // refused: the window starts with the case opened last in any of them
      }
      await set('open', open, lastOpen);
      remembered = text;
    },
    async readLastOpen() {
      const last = openHere() ?? (await get<OpenCase>('open', lastOpen));
      return last === undefined ? {} : { last, kept: await get<StoredCase>(last.id, cases) };
    },
    listen(changed) {
      channel?.addEventListener('message', ({ data }) => {
        if (typeof data === 'string') changed(data);
      });
    },
  };
}

/** A case without its document. */
export function summaryOf(kept: StoredCase): CaseSummary {
  const summary: Partial<StoredCase> = { ...kept };
  delete (summary as { document?: unknown }).document;
  return summary as CaseSummary;
}

function openChannel(): BroadcastChannel | undefined {
  try {
    return new BroadcastChannel('faultodds-cases');
  } catch {
    return undefined; // missing or refused: windows do not hear of each other, and overwrite nothing all the same
  }
}

/** What this very window had open; several windows may have several cases. */
function openHere(): OpenCase | undefined {
  try {
    return JSON.parse(sessionStorage.getItem('faultodds-open') ?? 'null') ?? undefined;
  } catch {
    return undefined;
  }
}
