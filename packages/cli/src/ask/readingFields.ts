import { dimensionOfEntry, unitsOf, type Engine, type Reading, type ReadingModel } from '@faultodds/core';
import { readNumbers, type NumberRead } from './readNumbers.ts';

/** One line to type in, and the part of a reading it gives. */
export interface ReadingField {
  readonly id: string;
  readonly question: string;
  /** Where core reports what is wrong with it: JSON Pointers of the reading. */
  readonly owns: RegExp;
  /** @returns its part of the reading; in words what is wrong with the line. */
  readonly read: (text: string) => Readonly<Record<string, unknown>> | string;
}

/** The lines a reading is entered in, in order. */
export function readingFields(
  model: ReadingModel,
  kind: Reading['kind'],
  engine: Engine | undefined,
): readonly ReadingField[] {
  const swapped = model.kind === 'part-counts' && model.outcomes.follows !== undefined;
  const units = model.kind === 'measured' ? unitsFor(model, kind) : [];
  const withUnit = `with the unit (${units.slice(0, 4).join(', ')})`;
  switch (kind) {
    case 'single':
      return [
        field('value', `${model.label}: one number ${withUnit}`, (text) =>
          several(text, 1, units, ([value], unit) => ({ value, unit })),
        ),
      ];
    case 'pair': {
      const isLoss = model.kind === 'measured' && model.compare === 'loss-from-reference';
      const order = isLoss ? 'what is held, then what is fed' : 'the reading, then the one it is held against';
      return [
        field('pair', `${model.label}: ${order}, ${withUnit}`, (text) =>
          several(text, 2, units, ([value, reference], unit) => ({ value, reference, unit })),
        ),
      ];
    }
    case 'trim':
      return [
        field('trims', `${model.label}: short-term, then long-term, in %`, (text) =>
          several(text, 2, ['%'], ([short, long], unit) =>
            /^(%|per ?cent)$/i.test(unit) ? { short, long } : `trims are in %, not ${unit}`,
          ),
        ),
      ];
    case 'per-cylinder': {
      const values = field(
        'values',
        `${model.label}: cylinder 1 to ${engine?.cylinders}, - for one not read, ${withUnit}`,
        (text) => cylinders(text, engine, units, (byName, unit) => splitNominal(byName, unit)),
      );
      if (model.kind !== 'measured' || model.measures !== 'resistance') return [values];
      const warmth = field(
        'temperatures',
        'Temperature of each winding (degC, degF); empty: all at 20 degC',
        (text) =>
          text.trim() === ''
            ? {}
            : cylinders(text, engine, ['degC', 'degF'], (known, unit) => ({ temperatures: { values: known, unit } })),
        /^\/temperatures/,
      );
      return [{ ...values, owns: /^\/(?!temperatures)/ }, warmth];
    }
    case 'counts':
      return [
        field('exposure', run('How much was run while counting'), (text) => exposure(text, true), /^\/exposure/),
        field(
          'counts',
          `${model.label}: cylinder 1 to ${engine?.cylinders}, - for one not counted`,
          (text) => cylinders(text, engine, ['count'], (counts, unit) => counted(unit) ?? { counts }),
          /^\/(?!exposure)/,
        ),
      ];
    case 'part-counts': {
      const who = swapped ? 'of this cylinder, then of the one it was swapped with' : 'of this cylinder';
      return (['before', 'after'] as const).flatMap((when) => [
        field(
          `${when}-run`,
          `${titled(when)}: how much was run while counting? (3000 revolutions, 1500 firings)`,
          (text) => {
            const found = exposure(text, false);
            return typeof found === 'string' ? found : { [when]: found };
          },
          new RegExp(`^/${when}/exposure`),
        ),
        field(
          `${when}-counts`,
          `${titled(when)}: misfires ${who}`,
          (text) =>
            several(
              text,
              swapped ? 2 : 1,
              ['count'],
              ([own, partner], unit) =>
                counted(unit) ?? { [when]: swapped ? { suspect: own, partner } : { suspect: own } },
            ),
          new RegExp(`^/${when}(?!/exposure)`),
        ),
      ]);
    }
  }
}

const run = (what: string): string => `${what}? (3000 revolutions, 1500 firings; empty: not known)`;
const titled = (when: 'before' | 'after'): string => (when === 'before' ? 'Before' : 'After');

function field(id: string, question: string, read: ReadingField['read'], owns = /^/): ReadingField {
  return { id, question, read, owns };
}

function unitsFor(model: Extract<ReadingModel, { kind: 'measured' }>, kind: Reading['kind']): readonly string[] {
  if (kind === 'counts' || kind === 'part-counts') return [];
  return unitsOf(dimensionOfEntry(model, kind)).map(({ symbol }) => symbol);
}

const counted = (unit: string): string | undefined =>
  /^(counts?|misfires?)$/i.test(unit) ? undefined : `misfires are counted, not measured in ${unit}`;

type Part = ReturnType<ReadingField['read']>;

/** So many numbers, in order. Where there is one unit, or the first is none at all (a ratio, a count), it need not be written. */
function several(
  text: string,
  count: number,
  units: readonly string[],
  part: (values: readonly number[], unit: string) => Part,
): Part {
  const read = readNumbers(text);
  if (read.kind === 'problem') return read.message;
  const values = read.numbers.flatMap(({ value, name }) => (value === undefined || name !== undefined ? [] : [value]));
  if (values.length !== count || read.numbers.length !== count) {
    return `${count === 1 ? 'one number is' : `${count} numbers are`} expected here, ${read.numbers.length} found`;
  }
  const unit = unitOf(read.unit, units);
  return unit === undefined ? unitMissing(units) : part(values, unit);
}

/** Numbers of cylinders: all in order, or each with its number before it. */
function cylinders(
  text: string,
  engine: Engine | undefined,
  units: readonly string[],
  part: (values: Record<string, number>, unit: string) => Part,
): Part {
  const read = readNumbers(text);
  if (read.kind === 'problem') return read.message;
  const [plain, named] = [read.numbers.filter(isPlain), read.numbers.filter((one) => !isPlain(one))];
  const areCylinders = named.filter(({ name }) => name !== 'maker');
  const of = engine?.cylinders ?? plain.length;
  if (plain.length > 0 && (areCylinders.length > 0 || plain.length !== of)) {
    return areCylinders.length > 0
      ? 'name every cylinder, as in 3: 9.2 4: 12.5, or none'
      : `${plain.length} numbers for ${of} cylinders: - stands for one that is missing`;
  }
  const beyond = areCylinders.find(({ name }) => !(Number(name) >= 1 && Number(name) <= of));
  if (beyond !== undefined) return `there is no cylinder ${beyond.name} among ${of}`;
  const unit = unitOf(read.unit, units);
  if (unit === undefined) return unitMissing(units);
  const entries = [...plain.map(({ value }, at) => [`${at + 1}`, value] as const), ...named.map(nameAndValue)];
  return part(
    Object.fromEntries(entries.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]]))),
    unit,
  );
}

const isPlain = ({ name }: NumberRead): boolean => name === undefined;
const nameAndValue = ({ name, value }: NumberRead): readonly [string, number | undefined] => [String(name), value];

function splitNominal({ maker, ...values }: Record<string, number>, unit: string): Part {
  return { values, unit, ...(maker === undefined ? {} : { nominal: maker }) };
}

function unitOf(written: string | undefined, units: readonly string[]): string | undefined {
  const goesWithout = units.length === 1 || units[0] === 'ratio';
  return written ?? (goesWithout ? units[0] : undefined);
}

function unitMissing(units: readonly string[]): string {
  return `the unit is missing: ${units.join(', ')}`;
}

function exposure(text: string, mayBeEmpty: boolean): Part {
  if (mayBeEmpty && text.trim() === '') return {};
  return several(text, 1, ['revolutions', 'firings'], ([amount], written) => {
    const unit = (['revolutions', 'firings'] as const).find((one) => one.startsWith(written.toLowerCase().slice(0, 3)));
    return unit === undefined
      ? 'say which: 3000 revolutions, or 1500 firings of each cylinder'
      : { exposure: { amount, unit } };
  });
}
