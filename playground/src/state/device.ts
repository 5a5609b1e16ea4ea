import type { CaseDocument } from '@faultodds/core';
import { createStore, del, entries, get, set } from 'idb-keyval';

/** A case as it lies on the device: unparsed, since another version of the page may have written it. */
export interface KeptCase {
  readonly id: string;
  readonly title: string;
  readonly document: unknown;
}

/** Which case was open, and how far when it was a replay. */
export interface OpenCase {
  readonly id: string;
  readonly replayStep?: number;
}

/** The cases on this device (IndexedDB). Every promise rejects where the browser keeps nothing. */
export interface Device {
  keep(document: CaseDocument, title: string): Promise<void>;
  kept(): Promise<readonly KeptCase[]>;
  find(id: string): Promise<KeptCase | undefined>;
  forget(id: string): Promise<void>;
  rememberOpen(open: OpenCase): Promise<void>;
  lastOpen(): Promise<OpenCase | undefined>;
}

/** Opens nothing yet: the database is made at the first question. */
export function openDevice(): Device {
  const cases = createStore('faultodds', 'cases');
  const place = createStore('faultodds-place', 'open');
  return {
    keep: (document, title) => set(document.id, { id: document.id, title, document } satisfies KeptCase, cases),
    kept: async () => (await entries<string, KeptCase>(cases)).map(([, kept]) => kept),
    find: (id) => get<KeptCase>(id, cases),
    forget: (id) => del(id, cases),
    rememberOpen: (open) => set('open', open, place),
    lastOpen: () => get<OpenCase>('open', place),
  };
}
