import type { IntervalRow } from '../figures/intervalRow.ts';
import type { RankShiftColumn, RankShiftLine } from '../figures/rankShift.ts';
import type { WeightRow } from '../figures/weightRow.ts';

// A garden pump that stopped, invented for these examples: the numbers are made up and stand for nothing.

/** A chance in words, as the figures want it. */
export const inWords = (probability: number): string => `${Math.round(probability * 100)}%`;

/** The causes that have a line. */
export const pumpLines: readonly RankShiftLine[] = [
  { cause: 'wheel', letter: 'A', label: 'Wheel blocked by leaves' },
  { cause: 'fuse', letter: 'B', label: 'Fuse blown' },
  { cause: 'hose', letter: 'C', label: 'Hose kinked or frozen' },
  { cause: 'coil', letter: 'D', label: 'Winding burnt out' },
];

const seen: readonly (readonly [
  mark: string,
  label: string,
  wheel: number,
  fuse: number,
  hose: number,
  coil: number,
])[] = [
  ['start', 'any such pump', 0.3, 0.4, 0.2, 0.06],
  ['1', 'The lamp on the same fuse is lit', 0.48, 0.06, 0.32, 0.1],
  ['2', 'It hums', 0.62, 0.02, 0.3, 0.04],
  ['3', 'The hose is straight and warm', 0.85, 0.02, 0.05, 0.06],
];

/** What was seen, one column each. */
export const pumpColumns: readonly RankShiftColumn[] = seen.map(([mark, label, wheel, fuse, hose, coil]) => ({
  id: mark,
  mark,
  label,
  spoken: `${label}. Blocked wheel ${inWords(wheel)}`,
  chances: { wheel, fuse, hose, coil },
  ceilingOfOthers: 0.03,
}));

/** What each thing seen weighs for the blocked wheel. */
export const pumpWeights: readonly WeightRow[] = [
  { id: '1', mark: '1', label: 'The lamp on the same fuse is lit', decibans: 3.3, words: '3.3 for' },
  { id: '2', mark: '2', label: 'It hums', decibans: 2.5, words: '2.5 for' },
  { id: '3', mark: '3', label: 'The hose is straight and warm', decibans: 5.4, words: '5.4 for' },
];

/** How sure two of the chances are. */
export const pumpIntervals: readonly IntervalRow[] = [
  {
    id: 'wheel',
    label: 'Wheel blocked by leaves',
    chance: '85%',
    range: '70% to 93%',
    at: 0.85,
    low: 0.7,
    high: 0.93,
    judged: true,
  },
  {
    id: 'coil',
    label: 'Winding burnt out',
    chance: '6%',
    range: '2% to 14%',
    at: 0.06,
    low: 0.02,
    high: 0.14,
    judged: false,
  },
];
