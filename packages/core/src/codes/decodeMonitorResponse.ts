import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { joinFrames } from './joinFrames.ts';

/** One test of a misfire monitor, as the control module answered. */
export interface MonitorCount {
  /** Cylinder 1 to 12, or the engine as a whole (monitor $A1). */
  readonly cylinder: number | 'all';
  /** `last-cycle`: counts of the last or the current driving cycle (test $0C). `average`: exponential average over driving cycles (test $0B). */
  readonly covers: 'last-cycle' | 'average';
  readonly misfires: number;
  /** Limits the module holds for this test. */
  readonly atLeast: number;
  readonly atMost: number;
}

/** A decoded response. */
export interface MonitorResponse {
  /** In the order of the response. */
  readonly counts: readonly MonitorCount[];
  /** What could not be read as a misfire count, and where: `path` is the position of the byte, from 0. */
  readonly problems: readonly Problem[];
}

const RESPONSE = 0x46; // service $06 answered
const FIRST_MONITOR = 0xa1; // misfire, general
const LAST_MONITOR = 0xad; // misfire, cylinder 12
const AVERAGE = 0x0b;
const LAST_CYCLE = 0x0c;
const COUNTS = 0x24; // unit and scaling: 1 count per bit, unsigned
const RECORD = 9; // monitor, test, unit, value (2), lowest (2), highest (2)

/** Decodes raw service $06 responses on CAN, in hexadecimal, to misfire counts per cylinder. Spaces and line breaks do not matter; lines
 * that begin with a response address (7E8 to 7EF) are joined as ISO 15765-2 frames first.
 * Layout, monitor ids $A1-$AD, test ids $0B and $0C and unit id $24 after SAE J1979 / ISO 15031-5; ids checked against published monitor
 * lists, the layout from memory.
 * @example
 * ```ts
 * decodeMonitorResponse('46 A2 0C 24 00 05 00 00 FF FF').counts[0]; // { cylinder: 1, covers: 'last-cycle', misfires: 5, atLeast: 0, atMost: 65535 }
 * ``` */
export function decodeMonitorResponse(hex: string): MonitorResponse {
  const counts: MonitorCount[] = [];
  const problems: Problem[] = [];
  const odd = /[^0-9A-Fa-f\s:>]/.exec(hex);
  if (odd !== null) {
    return {
      counts,
      problems: [problemFor('hex-malformed', `/${odd.index}`, { found: odd[0] })],
    };
  }
  for (const bytes of joinFrames(hex)) {
    if (bytes[0] !== RESPONSE) {
      problems.push(
        problemFor('not-a-monitor-response', '/0', { byte: bytes[0] === undefined ? '' : hexOf(bytes[0]) }),
      );
      continue;
    }
    for (let at = 1; at < bytes.length; at += RECORD) decodeRecord(bytes, at, counts, problems);
  }
  return { counts, problems };
}

function decodeRecord(bytes: readonly number[], at: number, counts: MonitorCount[], problems: Problem[]): void {
  const left = bytes.length - at;
  if (left < RECORD) {
    // frames are filled up with 00, 55, AA or CC
    const isFiller = bytes.slice(at).every((byte) => byte === bytes[at] && [0x00, 0x55, 0xaa, 0xcc].includes(byte));
    if (!isFiller) problems.push(problemFor('record-cut-short', `/${at}`, { bytes: left }));
    return;
  }
  const [monitor = 0, test = 0, unit = 0] = bytes.slice(at, at + 3);
  const word = (offset: number): number => bytes[at + offset]! * 256 + bytes[at + offset + 1]!;
  if (monitor < FIRST_MONITOR || monitor > LAST_MONITOR) {
    problems.push(problemFor('other-monitor', `/${at}`, { byte: hexOf(monitor) }));
  } else if (test !== AVERAGE && test !== LAST_CYCLE) {
    problems.push(problemFor('other-test', `/${at + 1}`, { byte: hexOf(test) }));
  } else if (unit !== COUNTS) {
    problems.push(problemFor('other-unit', `/${at + 2}`, { byte: hexOf(unit) }));
  } else {
    counts.push({
      cylinder: monitor === FIRST_MONITOR ? 'all' : monitor - FIRST_MONITOR,
      covers: test === AVERAGE ? 'average' : 'last-cycle',
      misfires: word(3),
      atLeast: word(5),
      atMost: word(7),
    });
  }
}

function hexOf(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}
