import { type CaseDocument, type DemoFacts, type Session, loadCase } from '@faultodds/core';
import type { Demo, Knowledge } from '../knowledge/knowledge.ts';

/** An invented case shown one result at a time: a prefix of its events is the open case. */
export interface Replay {
  readonly demo: Demo;
  readonly facts: DemoFacts | undefined;
  /** Observations shown, 0 = intake only. */
  readonly step: number;
  readonly steps: number;
  /** Test or repair that comes next, in words; '' at the end. */
  readonly next: string;
}

/** Makes the replay of a demo at a step, with the session that shows it.
 * @throws CaseError when the shipped case is damaged. */
export function replayAt(knowledge: Knowledge, demo: Demo, step: number): { replay: Replay; session: Session } {
  const whole = loadCase(knowledge.compiled, demo.document);
  const events = whole.content.events;
  const observed = events.flatMap((event, at) =>
    event.kind === 'result-recorded' || event.kind === 'repair-tried' ? [at] : [],
  );
  const shown = Math.max(0, Math.min(observed.length, step));
  const upTo = observed[shown] ?? events.length;
  const document = { ...(demo.document as CaseDocument), events: events.slice(0, upTo) };
  const upcoming = events[upTo];
  const next =
    upcoming?.kind === 'result-recorded'
      ? knowledge.testLabel(upcoming.test)
      : upcoming?.kind === 'repair-tried'
        ? knowledge.repairLabel(upcoming.repair)
        : '';
  return {
    replay: { demo, facts: whole.demo, step: shown, steps: observed.length, next },
    session: loadCase(knowledge.compiled, document),
  };
}
