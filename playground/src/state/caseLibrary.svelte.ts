import { type Session, caseState, loadCase, recordEvent, saveCase } from '@faultodds/core';
import { t } from '../words/t.ts';
import { type CaseSummary, type CaseToStore, type Device, type StoredCase, summaryOf } from '../device/device.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** Who leads and how many results there are: what the list shows of a case. */
export type CaseLead = NonNullable<CaseSummary['standing']>;

/** The cases stored on the device, the latest changed first. Everything here rejects where the browser stores nothing. */
export interface CaseLibrary {
  /** What the list shows; null until it was read. Not read before somebody looks: a thousand cases need not be in memory to work on one. */
  readonly all: readonly CaseSummary[] | null;
  /** The one deleted last, while it can still be put back. */
  readonly deleted: StoredCase | null;
  read(): Promise<void>;
  find(id: string): Promise<StoredCase | undefined>;
  /** Shows a case in the list as it is to be kept, before it is. */
  show(session: Session, lead?: CaseLead): void;
  /** From now on this is the revision a write of the case is based on. */
  noteSeen(kept: CaseSummary): void;
  /** @returns whether this very revision was read or written here last. */
  hasSeen(kept: CaseSummary): boolean;
  /** @returns whether the case was read or written here. */
  has(id: string): boolean;
  /** Another window changed or deleted a case. @returns it as it lies there now. */
  reload(id: string): Promise<StoredCase | undefined>;
  /** @returns false when another window has written something this one has not seen; nothing is changed then. */
  save(session: Session, lead?: CaseLead): Promise<boolean>;
  rename(id: string, title: string): Promise<void>;
  duplicate(id: string): Promise<void>;
  remove(id: string): Promise<void>;
  restore(): Promise<void>;
}

/** Makes the library, with nothing read yet. @param newId a fresh id, for copies and revisions. */
export function createCaseLibrary(knowledge: Knowledge, device: Device, newId: () => string): CaseLibrary {
  let all = $state.raw<readonly CaseSummary[] | null>(null);
  let deleted = $state.raw<StoredCase | null>(null);
  const seen: Record<string, string | undefined> = {};

  /** Puts a case at its place in the list, or takes it out; the rest is not read again. */
  function putInList(id: string, kept: CaseSummary | undefined): void {
    if (all === null) return;
    const others = all.filter((one) => one.id !== id);
    all = kept === undefined ? others : [kept, ...others].sort(latestFirst);
  }

  function caseToStore(session: Session, lead: CaseLead | undefined): CaseToStore {
    const { id, title } = caseState(session);
    const bare = { id, title, document: saveCase(knowledge.compiled, session), revision: newId(), changed: Date.now() };
    return lead === undefined ? bare : { ...bare, standing: lead };
  }

  async function save(session: Session, lead?: CaseLead): Promise<boolean> {
    const mine = caseToStore(session, lead);
    if ((await device.save(mine, seen[mine.id])) !== undefined) return false;
    seen[mine.id] = mine.revision;
    putInList(mine.id, summaryOf(mine));
    return true;
  }

  async function reload(id: string): Promise<StoredCase | undefined> {
    const there = await device.find(id);
    putInList(id, there && summaryOf(there));
    return there;
  }

  return {
    get all() {
      return all;
    },
    get deleted() {
      return deleted;
    },
    async read() {
      try {
        all = [...(await device.list())].sort(latestFirst);
      } finally {
        all ??= [];
      }
    },
    find: device.find,
    show(session, lead) {
      all ??= [];
      const summary = summaryOf(caseToStore(session, lead));
      putInList(summary.id, summary);
    },
    noteSeen: ({ id, revision }) => void (seen[id] = revision),
    hasSeen: ({ id, revision }) => id in seen && seen[id] === revision,
    has: (id) => id in seen,
    reload,
    save,
    async rename(id, title) {
      // another window may write between reading and writing: then the newer one is renamed
      for (let kept = await reload(id); kept !== undefined; kept = await reload(id)) {
        const session = loadCase(knowledge.compiled, kept.document);
        seen[id] = kept.revision;
        if (await save(recordEvent(knowledge.compiled, session, { kind: 'title-set', title }), kept.standing)) return;
      }
    },
    async duplicate(id) {
      const kept = await reload(id);
      if (kept === undefined) return;
      const document = { ...saveCase(knowledge.compiled, loadCase(knowledge.compiled, kept.document)), id: newId() };
      const copy = loadCase(knowledge.compiled, document);
      const title = t.cases.copyOf(kept.title).slice(0, 80);
      await save(recordEvent(knowledge.compiled, copy, { kind: 'title-set', title }), kept.standing);
    },
    async remove(id) {
      const there = await device.remove(id);
      delete seen[id];
      putInList(id, undefined);
      if (there !== undefined) deleted = there;
    },
    async restore() {
      if (deleted === null) return;
      await device.restore(deleted);
      const there = await reload(deleted.id);
      if (there !== undefined) seen[there.id] = there.revision;
      deleted = null;
    },
  };
}

function latestFirst(a: CaseSummary, b: CaseSummary): number {
  return (b.changed ?? 0) - (a.changed ?? 0);
}
