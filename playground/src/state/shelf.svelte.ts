import { type Session, caseState, loadCase, recordEvent, saveCase } from '@faultodds/core';
import { t } from '../words/t.ts';
import type { CaseToKeep, Device, KeptCase } from './device.ts';
import type { Knowledge } from './knowledge.ts';

/** Who leads and how many results there are: what the list shows of a case. */
export type Standing = NonNullable<KeptCase['standing']>;

/** The cases kept on the device, the latest changed first. Everything here rejects where the browser keeps nothing. */
export interface Shelf {
  readonly all: readonly KeptCase[];
  /** The one deleted last, while it can still be put back. */
  readonly deleted: KeptCase | null;
  refresh(): Promise<void>;
  /** From now on this is the revision a write of the case is based on. */
  saw(kept: KeptCase): void;
  /** @returns whether this very revision was read or written here last. */
  hasSeen(kept: KeptCase): boolean;
  /** @returns false when another window has written something this one has not seen; nothing is changed then. */
  keep(session: Session, standing?: Standing): Promise<boolean>;
  rename(kept: KeptCase, title: string): Promise<void>;
  duplicate(kept: KeptCase): Promise<void>;
  remove(kept: KeptCase): Promise<void>;
  putBack(): Promise<void>;
}

/** Makes the shelf; it is empty until `refresh`. @param newId a fresh id, for copies and revisions. */
export function createShelf(knowledge: Knowledge, device: Device, newId: () => string): Shelf {
  let all = $state.raw<readonly KeptCase[]>([]);
  let deleted = $state.raw<KeptCase | null>(null);
  const seen: Record<string, string | undefined> = {};

  async function refresh(): Promise<void> {
    all = [...(await device.kept())].sort((a, b) => (b.changed ?? 0) - (a.changed ?? 0));
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
    await refresh();
    return true;
  }

  return {
    get all() {
      return all;
    },
    get deleted() {
      return deleted;
    },
    refresh,
    saw: ({ id, revision }) => void (seen[id] = revision),
    hasSeen: ({ id, revision }) => id in seen && seen[id] === revision,
    keep,
    async rename(kept, title) {
      const session = loadCase(knowledge.compiled, kept.document);
      seen[kept.id] = kept.revision;
      await keep(recordEvent(knowledge.compiled, session, { kind: 'title-set', title }), kept.standing);
    },
    async duplicate(kept) {
      const document = { ...saveCase(knowledge.compiled, loadCase(knowledge.compiled, kept.document)), id: newId() };
      const copy = loadCase(knowledge.compiled, document);
      const title = t.cases.copyOf(kept.title).slice(0, 80);
      await keep(recordEvent(knowledge.compiled, copy, { kind: 'title-set', title }), kept.standing);
    },
    async remove(kept) {
      await device.forget(kept.id);
      delete seen[kept.id];
      deleted = kept;
      await refresh();
    },
    async putBack() {
      if (deleted === null) return;
      await device.putBack(deleted);
      seen[deleted.id] = deleted.revision;
      deleted = null;
      await refresh();
    },
  };
}
