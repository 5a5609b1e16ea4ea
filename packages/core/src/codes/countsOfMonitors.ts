import type { MonitorCount } from './decodeMonitorResponse.ts';

/** Misfires per cylinder out of decoded monitors, as a `counts` reading takes them: cylinder -> misfires.
 * @param covers which of the two counts. Default: the last or current driving cycle. */
export function countsOfMonitors(
  monitors: readonly MonitorCount[],
  covers: MonitorCount['covers'] = 'last-cycle',
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    monitors.flatMap(({ cylinder, covers: of, misfires }) =>
      of === covers && cylinder !== 'all' ? [[cylinder, misfires]] : [],
    ),
  );
}
