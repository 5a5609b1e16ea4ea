import { ReadingError } from '@faultodds/core';
import { countsOfMonitors, decodeMonitorResponse, type MonitorCount } from '@faultodds/core/codes';
import { parseReading, type Reading } from '@faultodds/core/readings';
import { describeProblem } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';
import type { EngineStore } from '../state/engineStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';
import { problemInWords } from '../words/problemInWords.ts';

/** Raw misfire counts of the control module, decoded. */
export interface MonitorView {
  /** As a reading of the test, when it can be recorded. */
  readonly reading: Reading | null;
  readonly counts: readonly { readonly cylinder: string; readonly misfires: number }[];
  /** What could not be read, byte by byte, and what a reading of it lacks. */
  readonly problems: readonly string[];
}

/** Decodes a response for the suspect cylinder. @param test id of the test that takes counts of all cylinders. */
export function monitorView(
  knowledge: Knowledge,
  test: string,
  hex: string,
  engine: EngineStore,
  covers: MonitorCount['covers'],
): MonitorView {
  const { counts: monitors, problems } = decodeMonitorResponse(hex);
  const counts = Object.entries(countsOfMonitors(monitors, covers)).filter(
    ([cylinder]) => Number(cylinder) <= engine.cylinders,
  );
  const lines = problems.map((problem) => {
    const { message, hint } = describeProblem(problem, coreLanguage);
    return t.entry.byte(problem.path.slice(1), message, hint);
  });
  const found = { counts: counts.map(([cylinder, misfires]) => ({ cylinder, misfires })) };
  if (counts.length === 0) return { ...found, reading: null, problems: lines };
  try {
    const reading = parseReading(knowledge.compiled, test, {
      kind: 'counts',
      suspect: engine.suspect,
      counts: Object.fromEntries(counts),
    });
    return { ...found, reading, problems: lines };
  } catch (error) {
    if (!(error instanceof ReadingError)) throw error;
    return { ...found, reading: null, problems: [...lines, ...error.problems.map(problemInWords)] };
  }
}
