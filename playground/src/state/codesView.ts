import {
  countsOfMonitors,
  decodeMonitorResponse,
  type MonitorCount,
  observationsFromCodes,
  parseReading,
  parseTroubleCodes,
  type Problem,
  ReadingError,
} from '@faultodds/core';
import { t } from '../words/t.ts';
import type { Engine } from './engine.svelte.ts';
import type { Knowledge } from './knowledge.ts';
import type { Seen } from './seen.ts';

/** A result to record: which test, and what was seen. */
export interface TestSeen {
  readonly test: string;
  readonly seen: Seen;
}

/** A pasted list of trouble codes, read. */
export interface CodesView {
  readonly results: readonly TestSeen[];
  /** What will be recorded, in words. */
  readonly lines: readonly { readonly text: string; readonly note: string; readonly already: boolean }[];
  readonly malformed: readonly string[];
  readonly kept: readonly string[];
  readonly remarks: readonly string[];
}

/** Reads a list of codes for the suspect cylinder. @param onRecord tests with a result already: their codes are not recorded again. */
export function codesView(
  knowledge: Knowledge,
  text: string,
  engine: Engine,
  complete: boolean,
  onRecord: ReadonlySet<string>,
): CodesView {
  const list = parseTroubleCodes(text);
  const { suspect, cylinders, bank } = engine;
  const { observations, kept, remarks } = observationsFromCodes(knowledge.compiled, list.codes, {
    suspectCylinder: suspect,
    cylinders,
    listIsComplete: complete,
    ...(bank === 0 ? {} : { bank }),
  });
  return {
    results: observations
      .filter(({ test }) => !onRecord.has(test))
      .map(({ test, outcome, likelihood, note }) => ({
        test,
        seen: {
          ...(outcome === undefined ? {} : { outcome }),
          ...(likelihood === undefined ? {} : { likelihood }),
          ...(note === undefined ? {} : { note }),
        },
      })),
    lines: observations.map((observation) => {
      const { what, outcome } = knowledge.observed(observation);
      return {
        text: t.entry.becomesLine(what, outcome),
        note: observation.note ?? '',
        already: onRecord.has(observation.test),
      };
    }),
    malformed: list.malformed.map(({ text: piece, at, hint }) => t.entry.malformedAt(piece, at + 1, hint)),
    kept: kept.map((code) => t.entry.keptLine(code.code.code, t.entry.meaning(code), t.entry.reason[code.reason])),
    remarks: remarks.map(t.entry.codeRemark),
  };
}

/** Raw misfire counts of the control module, decoded. */
export interface MonitorView {
  /** As a reading of the test, when it can be recorded. */
  readonly seen: Seen | null;
  readonly counts: readonly { readonly cylinder: string; readonly misfires: number }[];
  /** What could not be read, byte by byte, and what a reading of it lacks. */
  readonly problems: readonly string[];
}

/** Decodes a response for the suspect cylinder. @param test id of the test that takes counts of all cylinders. */
export function monitorView(
  knowledge: Knowledge,
  test: string,
  hex: string,
  engine: Engine,
  covers: MonitorCount['covers'],
): MonitorView {
  const { counts: monitors, problems } = decodeMonitorResponse(hex);
  const counts = Object.entries(countsOfMonitors(monitors, covers)).filter(
    ([cylinder]) => Number(cylinder) <= engine.cylinders,
  );
  const lines = problems.map(({ path, message, hint }) => t.entry.byte(path.slice(1), message, hint));
  const found = { counts: counts.map(([cylinder, misfires]) => ({ cylinder, misfires })) };
  if (counts.length === 0) return { ...found, seen: null, problems: lines };
  try {
    const reading = parseReading(knowledge.compiled, test, {
      kind: 'counts',
      suspect: engine.suspect,
      counts: Object.fromEntries(counts),
    });
    return { ...found, seen: { reading }, problems: lines };
  } catch (error) {
    if (!(error instanceof ReadingError)) throw error;
    return { ...found, seen: null, problems: [...lines, ...error.problems.map(inWords)] };
  }
}

function inWords({ message, hint }: Problem): string {
  return [message, hint].filter(Boolean).join('. ');
}
