import type { ConditionalRow, Row } from '@faultodds/core';
import { correctionsOfMechanisms } from './correctionsOfMechanisms.ts';
import { correctionsOfTests } from './correctionsOfTests.ts';

/** Why numbers of the data differ from the dossier's (priors/README.md, "Second reading"). */
export const reasons = {
  gross: 'a gross state would itself cause the misfire: beside another cause it is rare',
  mild: 'a harmless finding has a state and a row of its own',
  'not-listed': 'what no listed cause explains is diffuse, independently in every test',
  contradiction: 'a leak large enough for low compression does not test tight',
  hub: 'the same share by cause instead of by filling: this table tied too many mechanisms together',
  module: 'a failed module output is no damaged wiring',
  seat: 'a damaged seat shows as often as a damaged valve edge',
  caps: 'a valvetrain that hammers loosens its caps',
} as const;

/** One row that is not the dossier's. Without `dossier` it was added, without `ours` it was taken out, with both it was changed. */
export interface Correction {
  readonly kind: 'mechanisms' | 'causes' | 'tests';
  /** Mechanism, cause or test. */
  readonly id: string;
  /** `background`, the mechanism of a cause's row, or the row's condition. */
  readonly place: string;
  /** Where an added row stands among ours. */
  readonly at?: number;
  /** Probabilities in the dossier's order of states. */
  readonly dossier?: readonly number[];
  /** Probabilities in our order of states. */
  readonly ours?: readonly number[];
  /** Equivalent sample size of ours. */
  readonly ess: number;
  readonly reason: keyof typeof reasons;
}

/** Every row of the data that departs from the dossier, with both sets of numbers. One line each in the tables:
 * `id | place | dossier | ours | equivalent sample size | reason`, `-` where there is none, `row n:` before the place of an added row. */
export const corrections: readonly Correction[] = `${correctionsOfMechanisms}${correctionsOfTests}`
  .split(/^# (?=mechanisms|causes|tests)/m)
  .slice(1)
  .flatMap((section) => {
    const [kind = '', ...lines] = section.trim().split('\n');
    return lines.map((line) => parse(kind as Correction['kind'], line));
  });

function parse(kind: Correction['kind'], line: string): Correction {
  const [id = '', where = '', dossier = '', ours = '', ess = '', reason = ''] = line.split(' | ');
  const [, at, place = where] = /^row (\d+): (.*)$/.exec(where) ?? [];
  const numbers = (list: string): number[] => list.split(' ').map(Number);
  return {
    kind,
    id,
    place,
    ...(at === undefined ? {} : { at: Number(at) }),
    ...(dossier === '-' ? {} : { dossier: numbers(dossier) }),
    ...(ours === '-' ? {} : { ours: numbers(ours) }),
    ess: Number(ess),
    reason: reason as keyof typeof reasons,
  };
}

/** Source of every corrected row. */
export const CORRECTED = 'second-reading';

/** The one row after its correction, if it has one. `states` are ours, in order. */
export function correctedRow(
  row: Row,
  states: readonly string[],
  kind: Correction['kind'],
  id: string,
  place: string,
): Row {
  const correction = corrections.find((one) => one.kind === kind && one.id === id && one.place === place);
  return correction?.ours === undefined ? row : rowOf(states, correction);
}

/** The dossier's rows after their corrections, in our order. */
export function correctedRows(
  rows: readonly ConditionalRow[],
  states: readonly string[],
  kind: Correction['kind'],
  id: string,
): readonly ConditionalRow[] {
  const own = corrections.filter((one) => one.kind === kind && one.id === id);
  const kept = rows.flatMap((row): ConditionalRow[] => {
    const correction = own.find((one) => one.dossier !== undefined && one.place === conditionOf(row));
    if (correction === undefined) return [row];
    return correction.ours === undefined ? [] : [{ when: row.when, ...rowOf(states, correction) }];
  });
  return own
    .filter(({ at }) => at !== undefined)
    .reduce((list, one) => list.toSpliced(one.at!, 0, { when: whenOf(one.place), ...rowOf(states, one) }), kept);
}

/** `sealing=leak_intake/leak_exhaust & …`, the condition of a row as it is written in the tables. */
export function conditionOf({ when }: Pick<ConditionalRow, 'when'>): string {
  const parts = Object.entries(when).map(([parent, states]) => `${parent}=${states.join('/')}`);
  return parts.join(' & ') || 'otherwise';
}

function whenOf(condition: string): ConditionalRow['when'] {
  return Object.fromEntries(
    condition.split(' & ').map((part) => {
      const [parent = '', states = ''] = part.split('=');
      return [parent, states.split('/')];
    }),
  );
}

function rowOf(states: readonly string[], { ours = [], ess }: Correction): Row {
  return { p: Object.fromEntries(states.map((state, at) => [state, ours[at]!])), ess, source: CORRECTED };
}
