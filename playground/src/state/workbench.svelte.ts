import { type Session, caseState, loadCase, recordEvent, saveCase, startCase } from '@faultodds/core';
import { say } from '../words/say.ts';
import { t } from '../words/t.ts';
import { type CaseStore, createCaseStore, troubleOf } from './caseStore.svelte.ts';
import type { Device, KeptCase } from './device.ts';
import type { Demo, Knowledge } from './knowledge.ts';
import type { PreferenceStore } from './preferences.svelte.ts';
import { type Replay, replayAt } from './replay.ts';
import { type Shelf, createShelf } from './shelf.svelte.ts';

/** The open case, the replay it may be, and the cases kept on the device. */
export interface Workbench {
  readonly store: CaseStore;
  readonly replay: Replay | null;
  readonly shelf: Shelf;
  /** Something that happened to the case without the reader's doing; '' when there is nothing. */
  readonly notice: string;
  dismissNotice(): void;
  /** Opens what was open last time, if it is still readable. */
  restore(): Promise<void>;
  newCase(): void;
  openKept(kept: KeptCase): void;
  rename(kept: KeptCase, title: string): Promise<void>;
  duplicate(kept: KeptCase): Promise<void>;
  /** The open one may be deleted too: a new case takes its place. */
  remove(kept: KeptCase): Promise<void>;
  putBack(): Promise<void>;
  replayTo(demo: Demo, step: number): void;
  /** The replayed case becomes an ordinary one, from the step shown. */
  leaveReplay(): void;
  importFile(name: string, text: string): boolean;
  exportFile(): { readonly name: string; readonly text: string };
  /** Opens the case an address holds in its fragment, as a case of its own. */
  openLink(fragment: string): Promise<boolean>;
  /** @param address of the page */
  makeLink(address: string): Promise<string>;
}

/** Makes the workbench with an empty case. @param newId a fresh id for a case. */
export function createWorkbench(
  knowledge: Knowledge,
  device: Device,
  preferences: PreferenceStore,
  newId: () => string,
): Workbench {
  let replay = $state.raw<Replay | null>(null);
  let notice = $state('');
  /** How the session that becomes the open one came about. */
  let cause: 'hand' | 'replay' | 'device' = 'hand';
  let writing: Promise<void> = Promise.resolve();

  const { compiled } = knowledge;
  const shelf = createShelf(knowledge, device, newId);
  const store = createCaseStore(knowledge, emptyCase(), (session) => {
    // whatever is done by hand to a replayed case makes it the reader's own
    if (cause !== 'replay') replay = null;
    if (cause === 'hand') notice = '';
    const isCase = session.content.events.some(({ kind }) => !isChoice(kind));
    const write = cause === 'hand' && (isCase || shelf.all.some(({ id }) => id === session.start.id));
    // one after the other, or an older state could overtake a newer one
    writing = writing.then(() => keep(session, write, replay?.step));
  });

  function become(session: Session, by: typeof cause): void {
    cause = by;
    store.open(session);
    cause = 'hand';
  }

  function emptyCase(): Session {
    const started = startCase({ id: newId(), title: t.cases.untitled });
    try {
      const session = preferences.firstEvents().reduce((one, event) => recordEvent(compiled, one, event), started);
      return { ...session, past: [] }; // what was chosen once is no step of this case
    } catch {
      return started; // the model no longer knows a piece of equipment
    }
  }

  async function keep(session: Session, write: boolean, step: number | undefined): Promise<void> {
    const { id, title, observations } = caseState(session);
    const leader = store.now.belief.ranking[0];
    const standing = leader && { results: observations.length, ...leader };
    try {
      if (write && !(await shelf.keep(session, standing))) return besides(session, t.cases.besides(title).slice(0, 80));
      await device.rememberOpen(step === undefined ? { id } : { id, replayStep: step });
      if (!write) await shelf.refresh();
    } catch {
      if (store.trouble === null) store.report({ title: t.problem.store, problems: [] });
    }
  }

  /** Another window wrote to this case first: what was made here goes on as a case of its own. */
  function besides(session: Session, title: string): void {
    const copy = loadCase(compiled, { ...saveCase(compiled, session), id: newId() });
    store.open(recordEvent(compiled, copy, { kind: 'title-set', title }));
    notice = t.cases.clash(title);
  }

  async function follow(id: string): Promise<void> {
    await writing;
    await shelf.refresh();
    const there = shelf.all.find((one) => one.id === id);
    if (id !== store.now.state.id || replay !== null || there === undefined || shelf.hasSeen(there)) return;
    openKept(there);
    notice = t.cases.elsewhere;
  }
  device.listen((id) => void follow(id).catch(() => undefined));

  function replayTo(demo: Demo, step: number): void {
    const made = replayAt(knowledge, demo, step);
    replay = made.replay;
    become(made.session, 'replay');
  }

  function openKept(kept: KeptCase): void {
    try {
      const session = loadCase(compiled, kept.document);
      shelf.saw(kept);
      become(session, 'device');
      notice = toldOf(session);
    } catch (error) {
      store.report(troubleOf(error, t.problem.kept));
    }
  }

  /** Opens a case from outside. One that is kept here just so is opened again; another of the same id goes beside it, not over it.
   * @throws CaseError when it is damaged; nothing is changed then. */
  function takeIn(document: unknown): void {
    const session = loadCase(compiled, document);
    const kept = shelf.all.find(({ id }) => id === session.start.id);
    if (kept === undefined) store.open(session);
    else if (isSame(kept, session)) return openKept(kept);
    else
      store.open({ ...loadCase(compiled, { ...saveCase(compiled, session), id: newId() }), notices: session.notices });
    if (store.trouble === null) notice = toldOf(session);
  }

  /** Whether a kept case, of whatever version of its format, is this very one. */
  function isSame(kept: KeptCase, session: Session): boolean {
    try {
      const there = saveCase(compiled, loadCase(compiled, kept.document));
      return JSON.stringify(there) === JSON.stringify(saveCase(compiled, session));
    } catch {
      return false; // what lies there is damaged: the other goes beside it
    }
  }

  /** What opening a case has to tell: a model that differs, entries without a place. */
  function toldOf({ notices }: Session): string {
    return say.sentencesForNotices(knowledge.model, notices).join(' ');
  }

  async function guarded(change: () => Promise<void>): Promise<void> {
    try {
      await writing;
      await change();
    } catch (error) {
      store.report(
        error instanceof DOMException ? { title: t.problem.store, problems: [] } : troubleOf(error, t.problem.kept),
      );
    }
  }

  return {
    store,
    shelf,
    get replay() {
      return replay;
    },
    get notice() {
      return notice;
    },
    dismissNotice() {
      notice = '';
    },
    async restore() {
      try {
        await shelf.refresh();
        const last = await device.lastOpen();
        const demo = knowledge.demos.find((one) => one.id === last?.id);
        const found = last && (await device.find(last.id));
        if (demo && last?.replayStep !== undefined) replayTo(demo, last.replayStep);
        else if (found) openKept(found);
      } catch {
        store.report({ title: t.problem.store, problems: [] });
      }
    },
    newCase: () => become(emptyCase(), 'device'),
    openKept,
    rename: (kept, title) =>
      guarded(async () => {
        if (kept.id === store.now.state.id) store.record({ kind: 'title-set', title }, title);
        else await shelf.rename(kept, title);
      }),
    duplicate: (kept) => guarded(() => shelf.duplicate(kept)),
    remove: (kept) =>
      guarded(async () => {
        if (kept.id === store.now.state.id) become(emptyCase(), 'device');
        await shelf.remove(kept);
      }),
    putBack: () => guarded(shelf.putBack),
    replayTo,
    leaveReplay() {
      const document = { ...saveCase(compiled, store.now.session), id: newId() };
      store.open(loadCase(compiled, document));
    },
    importFile(name, text) {
      let document: unknown;
      try {
        document = JSON.parse(text);
      } catch {
        const problem = { code: 'not-json', path: '', message: t.problem.notJson, hint: '' };
        store.report({ title: t.problem.import(name), problems: [problem] });
        return false;
      }
      try {
        takeIn(document);
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
        const { documentOfLink } = await import('./shareLink.ts');
        takeIn(documentOfLink(fragment));
        notice = [t.link.opened, notice].filter((part) => part !== '').join(' ');
        return true;
      } catch (error) {
        store.report(troubleOf(error, t.link.broken));
        return false;
      }
    },
    async makeLink(address) {
      const { shareLink } = await import('./shareLink.ts');
      return shareLink(saveCase(compiled, store.now.session), address);
    },
  };
}

/** Prices and equipment alone make no case worth keeping. */
function isChoice(kind: string): boolean {
  return kind === 'prices-set' || kind === 'equipment-set';
}
