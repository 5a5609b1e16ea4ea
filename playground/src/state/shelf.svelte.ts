import { type Session, caseState, loadCase, recordEvent, saveCase } from '@faultodds/core';
import { t } from '../words/t.ts';
import { type CaseSummary, type CaseToKeep, type Device, type KeptCase, summaryOf } from '../device/device.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** Who leads and how many results there are: what the list shows of a case. */
export type Standing = NonNullable<CaseSummary['standing']>;

/** The cases kept on the device, the latest changed first. Everything here rejects where the browser keeps nothing. */
export interface Shelf {
  /** What the list shows; null until it was read. Not read before somebody looks: a thousand cases need not be in memory to work on one. */
  readonly all: readonly CaseSummary[] | null;
  /** The one deleted last, while it can still be put back. */
  readonly deleted: KeptCase | null;
  read(): Promise<void>;
  find(id: string): Promise<KeptCase | undefined>;
  /** Shows a case in the list as it is to be kept, before it is. */
  show(session: Session, standing?: Standing): void;
  /** From now on this is the revision a write of the case is based on. */
  saw(kept: CaseSummary): void;
  /** @returns whether this very revision was read or written here last. */
  hasSeen(kept: CaseSummary): boolean;
  /** @returns whether the case was read or written here. */
  knows(id: string): boolean;
  /** Another window changed or deleted a case. @returns it as it lies there now. */
  follow(id: string): Promise<KeptCase | undefined>;
  /** @returns false when another window has written something this one has not seen; nothing is changed then. */
  keep(session: Session, standing?: Standing): Promise<boolean>;
  rename(id: string, title: string): Promise<void>;
  duplicate(id: string): Promise<void>;
  remove(id: string): Promise<void>;
  putBack(): Promise<void>;
}

/** Makes the shelf. @param newId a fresh id, for copies and revisions. */
export function createShelf(knowledge: Knowledge, device: Device, newId: () => string): Shelf {
  let all = $state.raw<readonly CaseSummary[] | null>(null);
  let deleted = $state.raw<KeptCase | null>(null);
  const seen: Record<string, string | undefined> = {};

  /** Puts a case at its place in the list, or takes it out; the rest is not read again. */
  function place(id: string, kept: CaseSummary | undefined): void {
    if (all === null) return;
    const others = all.filter((one) => one.id !== id);
    all = kept === undefined ? others : [kept, ...others].sort(latestFirst);
  }

  function caseToKeep(session: Session, standing: Standing | undefined): CaseToKeep {
    const { id, title } = caseState(session);
    const bare = { id, title, document: saveCase(knowledge.compiled, session), revision: newId(), changed: Date.now() };
    return standing === undefined ? bare : { ...bare, standing };
  }

  async function keep(session: Session, standing?: Standing): Promise<boolean> {
    const mine = caseToKeep(session, standing);
    if ((await device.keep(mine, seen[mine.id])) !== undefined) return false;
    seen[mine.id] = mine.revision;
    place(mine.id, summaryOf(mine));
    return true;
  }

  async function follow(id: string): Promise<KeptCase | undefined> {
    const there = await device.find(id);
    place(id, there && summaryOf(there));
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
    show(session, standing) {
      all ??= [];
      const summary = summaryOf(caseToKeep(session, standing));
      place(summary.id, summary);
    },
    saw: ({ id, revision }) => void (seen[id] = revision),
    hasSeen: ({ id, revision }) => id in seen && seen[id] === revision,
    knows: (id) => id in seen,
    follow,
    keep,
    async rename(id, title) {
      // another window may write between reading and writing: then the newer one is renamed
      for (let kept = await follow(id); kept !== undefined; kept = await follow(id)) {
        const session = loadCase(knowledge.compiled, kept.document);
        seen[id] = kept.revision;
        if (await keep(recordEvent(knowledge.compiled, session, { kind: 'title-set', title }), kept.standing)) return;
      }
    },
    async duplicate(id) {
      const kept = await follow(id);
      if (kept === undefined) return;
      const document = { ...saveCase(knowledge.compiled, loadCase(knowledge.compiled, kept.document)), id: newId() };
      const copy = loadCase(knowledge.compiled, document);
      const title = t.cases.copyOf(kept.title).slice(0, 80);
      await keep(recordEvent(knowledge.compiled, copy, { kind: 'title-set', title }), kept.standing);
    },
    async remove(id) {
      const there = await device.forget(id);
      delete seen[id];
      place(id, undefined);
      if (there !== undefined) deleted = there;
    },
    async putBack() {
      if (deleted === null) return;
      await device.putBack(deleted);
      const there = await follow(deleted.id);
      if (there !== undefined) seen[there.id] = there.revision;
      deleted = null;
    },
  };
}

function latestFirst(a: CaseSummary, b: CaseSummary): number {
  return (b.changed ?? 0) - (a.changed ?? 0);
}
