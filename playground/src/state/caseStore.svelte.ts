import {
  type CaseEvent,
  type CaseNow,
  FaultoddsError,
  type Problem,
  type Session,
  canRedo,
  canUndo,
  caseNow,
  caseState,
  recordEvent,
  redo,
  undo,
} from '@faultodds/core';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { type RankingHistory, extendHistory } from './rankingHistory.ts';

/** A case as it is now, with how its ranking came about. */
export interface CaseOnPage extends CaseNow {
  /** How the ranking came about; null while that is being worked out. */
  readonly history: RankingHistory | null;
}

/** Something that went wrong, and what is to be done about it. */
export interface Trouble {
  readonly title: string;
  readonly problems: readonly Problem[];
}

/** The open case. Every change goes through it; a change that core refuses leaves everything as it was and is reported. */
export interface CaseStore {
  readonly now: CaseOnPage;
  readonly trouble: Trouble | null;
  /** What a screen reader is told after a change. */
  readonly said: string;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  record(event: CaseEvent, what?: string): boolean;
  undo(): void;
  redo(): void;
  open(session: Session): void;
  /** Takes the history of this case, or of the beginning of it, that was worked out elsewhere. */
  takeHistory(history: RankingHistory): void;
  report(trouble: Trouble | null): void;
}

/** Asks core everything about a case. @param earlier a history it may share a part of.
 * @throws EvidenceError when the evidence contradicts itself. */
function caseOnPage(knowledge: Knowledge, session: Session, earlier: RankingHistory | null = null): CaseOnPage {
  const now = caseNow(knowledge.compiled, session);
  return { ...now, history: extendHistory(knowledge, now.belief, earlier) };
}

/** Makes the store of the open case. @param onchange called with every session that becomes the open one. */
export function createCaseStore(knowledge: Knowledge, first: Session, onchange: (session: Session) => void): CaseStore {
  let now = $state.raw(caseOnPage(knowledge, first));
  let trouble = $state.raw<Trouble | null>(null);
  let said = $state('');

  function become(session: Session, sentence: (leader: string, chance: string) => string): boolean {
    try {
      now = caseOnPage(knowledge, session, now.history);
    } catch (error) {
      trouble = troubleOf(error, t.problem.refused);
      return false;
    }
    trouble = null;
    const [leader] = now.belief.ranking;
    said = leader ? sentence(knowledge.causeLabel(leader.cause), shortChance(leader.probability)) : '';
    onchange(session);
    return true;
  }

  return {
    get now() {
      return now;
    },
    get trouble() {
      return trouble;
    },
    get said() {
      return said;
    },
    get canUndo() {
      return canUndo(now.session);
    },
    get canRedo() {
      return canRedo(now.session);
    },
    record(event, what = '') {
      let next: Session;
      try {
        next = recordEvent(knowledge.compiled, now.session, event);
      } catch (error) {
        trouble = troubleOf(error, t.problem.refused);
        return false;
      }
      return become(next, (leader, chance) => t.said.recorded(what, leader, chance));
    },
    undo() {
      if (canUndo(now.session)) become(undo(now.session), t.said.undone);
    },
    redo() {
      if (canRedo(now.session)) become(redo(now.session), t.said.redone);
    },
    open(session) {
      become(session, () => t.said.opened(caseState(session).title));
    },
    takeHistory(history) {
      const { belief } = now;
      now = { ...now, history: extendHistory(knowledge, belief, history) };
    },
    report(next) {
      trouble = next;
    },
  };
}

/** A thrown error as something to show; anything that is not ours is a defect and goes on. */
export function troubleOf(error: unknown, title: string): Trouble {
  if (error instanceof FaultoddsError) return { title, problems: error.problems };
  throw error;
}
