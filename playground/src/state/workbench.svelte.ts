import { type Session, caseState, loadCase, saveCase, startCase } from '@faultodds/core';
import { t } from '../words/t.ts';
import { type CaseStore, createCaseStore, troubleOf } from './caseStore.svelte.ts';
import type { Device, KeptCase } from './device.ts';
import type { Demo, Knowledge } from './knowledge.ts';
import { type Replay, replayAt } from './replay.ts';

/** The open case, the replay it may be, and the cases kept on the device. */
export interface Workbench {
  readonly store: CaseStore;
  readonly replay: Replay | null;
  readonly kept: readonly KeptCase[];
  /** Opens what was open last time, if it is still readable. */
  restore(): Promise<void>;
  newCase(): void;
  openKept(kept: KeptCase): void;
  forget(id: string): Promise<void>;
  replayTo(demo: Demo, step: number): void;
  /** The replayed case becomes an ordinary one, from the step shown. */
  leaveReplay(): void;
  importFile(name: string, text: string): boolean;
  exportFile(): { readonly name: string; readonly text: string };
}

/** Makes the workbench with an empty case. @param newId a fresh id for a case. */
export function createWorkbench(knowledge: Knowledge, device: Device, newId: () => string): Workbench {
  let replay = $state.raw<Replay | null>(null);
  let kept = $state.raw<readonly KeptCase[]>([]);
  let stepping = false;

  const store = createCaseStore(knowledge, emptyCase(), (session) => {
    // whatever is done by hand to a replayed case makes it the reader's own
    if (!stepping) replay = null;
    void keep(session);
  });

  function emptyCase(): Session {
    return startCase({ id: newId(), title: t.cases.untitled });
  }

  async function keep(session: Session): Promise<void> {
    const { id, title } = caseState(session);
    const step = replay?.step;
    try {
      if (step === undefined && session.content.events.length > 0) await device.keep(saveCase(session), title);
      await device.rememberOpen(step === undefined ? { id } : { id, replayStep: step });
      kept = await device.kept();
    } catch {
      if (store.trouble === null) store.report({ title: t.problem.store, problems: [] });
    }
  }

  function replayTo(demo: Demo, step: number): void {
    const made = replayAt(knowledge, demo, step);
    replay = made.replay;
    stepping = true;
    store.open(made.session);
    stepping = false;
  }

  function openKept({ document }: KeptCase): void {
    try {
      store.open(loadCase(knowledge.compiled, document));
    } catch (error) {
      store.report(troubleOf(error, t.problem.kept));
    }
  }

  return {
    store,
    get replay() {
      return replay;
    },
    get kept() {
      return kept;
    },
    async restore() {
      try {
        kept = await device.kept();
        const last = await device.lastOpen();
        const demo = knowledge.demos.find((one) => one.id === last?.id);
        const found = last && (await device.find(last.id));
        if (demo && last?.replayStep !== undefined) replayTo(demo, last.replayStep);
        else if (found) openKept(found);
      } catch {
        store.report({ title: t.problem.store, problems: [] });
      }
    },
    newCase: () => store.open(emptyCase()),
    openKept,
    async forget(id) {
      await device.forget(id);
      kept = await device.kept();
    },
    replayTo,
    leaveReplay() {
      const document = { ...saveCase(store.now.session), id: newId() };
      store.open(loadCase(knowledge.compiled, document));
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
        let session = loadCase(knowledge.compiled, document);
        // a case of this id is kept already: the one from the file goes beside it, not over it
        if (kept.some(({ id }) => id === session.start.id))
          session = loadCase(knowledge.compiled, { ...saveCase(session), id: newId() });
        store.open(session);
        return true;
      } catch (error) {
        store.report(troubleOf(error, t.problem.import(name)));
        return false;
      }
    },
    exportFile() {
      const document = saveCase(store.now.session);
      return { name: t.cases.fileName(document.id), text: `${JSON.stringify(document, null, 2)}\n` };
    },
  };
}
