import { FaultoddsError, type Session, caseState, loadCase, recordEvent, saveCase } from '@faultodds/core';
import { sentencesForNotices } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';
import { beginCase } from './beginCase.ts';
import { type CaseStore, createCaseStore, troubleOf } from './caseStore.svelte.ts';
import type { CaseSummary, Device, StoredCase, LastOpen } from '../device/device.ts';
import { createWriteQueue, type WriteQueue } from './writeQueue.svelte.ts';
import type { Demo, Knowledge } from '../knowledge/knowledge.ts';
import type { PreferenceStore } from './preferences.svelte.ts';
import { type Replay, replayAt } from './replay.ts';
import { type CaseLibrary, type CaseLead, createCaseLibrary } from './caseLibrary.svelte.ts';
import { within } from '../device/within.ts';

/** The open case, the replay it may be, and the cases kept on the device. */
export interface Workbench {
  readonly store: CaseStore;
  readonly replay: Replay | null;
  readonly library: CaseLibrary;
  /** Whether what was recorded lies on the device, and why not. */
  readonly writes: WriteQueue;
  /** Whether the device has been heard about what was open last, and it stands here. */
  readonly isRestored: boolean;
  /** Something that happened to the case without the reader's doing; '' when there is nothing. */
  readonly notice: string;
  dismissNotice(): void;
  /** Opens what was open last time, if it is still readable and nothing was begun here meanwhile. Never rejects.
   * @param lastOpen what the device was asked when the page began; it may answer late, or never. */
  restore(lastOpen: Promise<LastOpen>): Promise<void>;
  /** Reads the list of the kept cases. */
  list(): Promise<void>;
  newCase(): void;
  openKept(kept: CaseSummary): Promise<void>;
  rename(kept: CaseSummary, title: string): Promise<void>;
  duplicate(kept: CaseSummary): Promise<void>;
  /** The open one may be deleted too: a new case takes its place. */
  remove(kept: CaseSummary): Promise<void>;
  undelete(): Promise<void>;
  replayTo(demo: Demo, step: number): void;
  /** The replayed case becomes an ordinary one, from the step shown. */
  leaveReplay(): void;
  importFile(name: string, text: string): Promise<boolean>;
  exportFile(): { readonly name: string; readonly text: string };
  /** Opens the case an address holds in its fragment, as a case of its own. */
  openLink(fragment: string): Promise<boolean>;
  /** @param address of the page */
  makeLink(address: string): Promise<string>;
}

/** Key of the note which case is open. */
const OPEN = 'open case';
/** How long a case from outside waits to hear whether one of its id is kept. Milliseconds. */
const ANSWER = 2_000;

/** Makes the workbench with an empty case. @param newId a fresh id for a case. */
export function createWorkbench(
  knowledge: Knowledge,
  device: Device,
  preferences: PreferenceStore,
  newId: () => string,
): Workbench {
  let replay = $state.raw<Replay | null>(null);
  let notice = $state('');
  let isRestored = $state(false);
  /** How the session that becomes the open one came about. */
  let cause: 'hand' | 'replay' | 'device' = 'hand';

  const { compiled } = knowledge;
  const writes = createWriteQueue();
  /** As they were recorded, until the device has them. */
  // eslint-disable-next-line svelte/prefer-svelte-reactivity -- nothing on the screen follows it
  const unsaved = new Map<string, Session>();
  const library = createCaseLibrary(knowledge, device, newId);
  const store = createCaseStore(knowledge, emptyCase(), (session) => {
    // whatever is done by hand to a replayed case makes it the reader's own
    if (cause !== 'replay') replay = null;
    if (cause === 'hand') notice = '';
    const isCase = session.content.events.some(({ kind }) => !isChoice(kind));
    const { id } = session.start;
    if (cause === 'hand' && (isCase || library.has(id))) {
      unsaved.set(id, session);
      writes.put(id, () => save(session));
    }
    const open = replay === null ? { id } : { id, replayStep: replay.step };
    writes.put(OPEN, () => device.rememberOpen(open));
  });
  const first = store.now.session;

  function become(session: Session, by: typeof cause): void {
    cause = by;
    store.open(session);
    cause = 'hand';
  }

  function emptyCase(): Session {
    const about = { id: newId(), title: t.cases.untitled };
    return beginCase(compiled, about, preferences.firstEvents(compiled.model));
  }

  async function save(session: Session): Promise<void> {
    const { id, title } = caseState(session);
    const isFree = await library.save(session, leadOf(session));
    // what was recorded while this was being written goes into the copy as well
    const latest = unsaved.get(id) ?? session;
    if (isFree && latest !== session) return;
    unsaved.delete(id);
    if (isFree) return;
    writes.drop(id);
    await saveAsCopy(latest, t.cases.besides(title).slice(0, 80));
  }

  /** Another window wrote to this case first: what was made here goes on as a case of its own. */
  async function saveAsCopy(session: Session, title: string): Promise<void> {
    const copy = loadCase(compiled, { ...saveCase(compiled, session), id: newId() });
    const named = recordEvent(compiled, copy, { kind: 'title-set', title });
    if (session.start.id === store.now.state.id) store.open(named);
    else await library.save(named);
    notice = t.cases.clash(title);
  }

  function leadOf(session: Session): CaseLead | undefined {
    const leader = store.now.session === session ? store.now.belief.ranking[0] : undefined;
    return leader && { results: caseState(session).observations.length, ...leader };
  }

  async function reload(id: string): Promise<void> {
    await writes.settled();
    const there = await library.reload(id);
    // something recorded here in this very moment is on its way: its write finds the other one and keeps both
    if (writes.isWaiting(id) || id !== store.now.state.id || replay !== null) return;
    if (there === undefined || library.hasSeen(there)) return;
    openDocument(there);
    notice = t.cases.elsewhere;
  }
  device.listen((id) => void reload(id).catch(() => undefined));

  function replayTo(demo: Demo, step: number): void {
    const made = replayAt(knowledge, demo, step);
    replay = made.replay;
    become(made.session, 'replay');
  }

  function openDocument(kept: StoredCase): void {
    try {
      const session = loadCase(compiled, kept.document);
      library.noteSeen(kept);
      become(session, 'device');
      notice = noticesOf(session);
    } catch (error) {
      store.report(troubleOf(error, t.problem.kept));
    }
  }

  /** Opens a case from outside. One that is kept here just so is opened again; another of the same id goes beside it, not over it.
   * @throws CaseError when it is damaged; nothing is changed then. */
  async function openFromOutside(document: unknown): Promise<void> {
    const session = loadCase(compiled, document);
    // a device that does not answer hinders nothing: should one of this id lie there, the write finds it
    const kept = await within(ANSWER, library.find(session.start.id)).catch(() => undefined);
    if (kept === undefined) store.open(session);
    else if (isSame(kept, session)) return openDocument(kept);
    else
      store.open({ ...loadCase(compiled, { ...saveCase(compiled, session), id: newId() }), notices: session.notices });
    if (store.trouble === null) notice = noticesOf(session);
  }

  /** Whether a kept case, of whatever version of its format, is this very one. */
  function isSame(kept: StoredCase, session: Session): boolean {
    try {
      const there = saveCase(compiled, loadCase(compiled, kept.document));
      return JSON.stringify(there) === JSON.stringify(saveCase(compiled, session));
    } catch {
      return false; // what lies there is damaged: the other goes beside it
    }
  }

  /** What opening a case has to tell: a model that differs, entries without a place. */
  function noticesOf({ notices }: Session): string {
    return sentencesForNotices(knowledge.model, notices, coreLanguage).join(' ');
  }

  /** Does something with the device; whatever goes wrong is said. */
  async function guarded(change: () => Promise<void>): Promise<void> {
    try {
      await writes.settled();
      await writes.ask(change());
    } catch (error) {
      if (error instanceof FaultoddsError) store.report(troubleOf(error, t.problem.kept));
      else if (!(error instanceof DOMException)) throw error;
    }
  }

  return {
    store,
    library,
    writes,
    get replay() {
      return replay;
    },
    get isRestored() {
      return isRestored;
    },
    get notice() {
      return notice;
    },
    dismissNotice() {
      notice = '';
    },
    async restore(lastOpen) {
      await guarded(async () => {
        const { last, kept } = await lastOpen;
        const demo = knowledge.demos.find(({ id }) => id === last?.id);
        const isReplay = demo !== undefined && last?.replayStep !== undefined;
        if (store.now.session !== first) {
          if (kept !== undefined && kept.id !== store.now.state.id) notice = t.cases.late;
        } else if (isReplay) replayTo(demo, last.replayStep ?? 0);
        else if (kept !== undefined) openDocument(kept);
      });
      isRestored = true;
    },
    async list() {
      const showUnsaved = (): void => {
        for (const session of unsaved.values()) library.show(session, leadOf(session));
      };
      // a device that keeps silent does not hide what was recorded here
      await within(ANSWER, guarded(library.read).then(showUnsaved)).catch(showUnsaved);
    },
    newCase: () => become(emptyCase(), 'device'),
    openKept: ({ id }) =>
      guarded(async () => {
        const newer = unsaved.get(id);
        const kept = newer === undefined ? await library.find(id) : undefined;
        if (newer !== undefined) become(newer, 'device');
        else if (kept !== undefined) openDocument(kept);
      }),
    rename: (kept, title) =>
      guarded(async () => {
        if (kept.id === store.now.state.id) store.record({ kind: 'title-set', title }, title);
        else await library.rename(kept.id, title);
      }),
    duplicate: (kept) => guarded(() => library.duplicate(kept.id)),
    remove: (kept) =>
      guarded(async () => {
        if (kept.id === store.now.state.id) become(emptyCase(), 'device');
        writes.drop(kept.id);
        unsaved.delete(kept.id);
        await library.remove(kept.id);
      }),
    undelete: () => guarded(library.restore),
    replayTo,
    leaveReplay() {
      const document = { ...saveCase(compiled, store.now.session), id: newId() };
      store.open(loadCase(compiled, document));
    },
    async importFile(name, text) {
      let document: unknown;
      try {
        document = JSON.parse(text);
      } catch {
        const problem = { code: 'not-json', path: '', message: t.problem.notJson, hint: '' };
        store.report({ title: t.problem.import(name), problems: [problem] });
        return false;
      }
      try {
        await openFromOutside(document);
        return true;
      } catch (error) {
        store.report(troubleOf(error, t.problem.import(name)));
        return false;
      }
    },
    exportFile() {
      const document = saveCase(compiled, store.now.session);
      return { name: t.cases.fileName(document.id), text: `${JSON.stringify(document, null, 2)}\n` };
    },
    async openLink(fragment) {
      try {
        const { documentOfLink } = await import('../device/shareLink.ts');
        await openFromOutside(documentOfLink(fragment));
        notice = [t.link.opened, notice].filter((part) => part !== '').join(' ');
        return true;
      } catch (error) {
        store.report(troubleOf(error, t.link.broken));
        return false;
      }
    },
    async makeLink(address) {
      const { shareLink } = await import('../device/shareLink.ts');
      return shareLink(saveCase(compiled, store.now.session), address);
    },
  };
}

/** Prices and equipment alone make no case worth writes. */
function isChoice(kind: string): boolean {
  return kind === 'prices-set' || kind === 'equipment-set';
}
