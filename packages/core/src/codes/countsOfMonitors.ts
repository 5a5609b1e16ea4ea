import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import type { MonitorCount } from './decodeMonitorResponse.ts';

const argumentsSchema = z.strictObject({ covers: z.enum(['last-cycle', 'average']) });

/** Misfires per cylinder out of decoded monitors, as a `counts` reading takes them: cylinder -> misfires.
 * @param covers which of the two counts. Default: the last or current driving cycle.
 * @throws OptionError
 * @example countsOfMonitors(decodeMonitorResponse('46 A2 0C 24 00 05 00 00 FF FF').counts) // { 1: 5 } */
export function countsOfMonitors(
  monitors: readonly MonitorCount[],
  covers: MonitorCount['covers'] = 'last-cycle',
): Readonly<Record<string, number>> {
  checkOptions(argumentsSchema, { covers });
  return Object.fromEntries(
    monitors.flatMap(({ cylinder, covers: of, misfires }) =>
      of === covers && cylinder !== 'all' ? [[cylinder, misfires]] : [],
    ),
  );
}
