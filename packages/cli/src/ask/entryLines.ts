import type { ReadingModel } from '@faultodds/core';
import {
  readingFields,
  unitsOfEntry,
  type Engine,
  type Reading,
  type ReadingField,
  type ReadingFieldGroup,
} from '@faultodds/core/readings';
import { readNumbers, type NumberRead } from './readNumbers.ts';

/** What one line gives: JSON Pointer into the reading -> number or unit, see `readingOfEntries`. */
export type Entries = Readonly<Record<string, number | string>>;

/** One line to type, for fields of a reading that are read together. */
export interface EntryLine {
  readonly id: string;
  readonly question: string;
  /** JSON Pointer of the part of the reading that it gives: problems of that part are reported at this line. */
  readonly part: string;
  /** @returns its entries; in words what is wrong with the line. */
  readonly read: (text: string) => Entries | string;
}

/** The lines in which a reading is entered, in order. @param engine where a number of every cylinder is read. */
export function entryLines(
  model: ReadingModel,
  kind: Reading['kind'],
  engine: Engine | undefined,
): readonly EntryLine[] {
  return readingFields(model, kind, engine?.cylinders).flatMap((group) => {
    const exposure = group.fields.filter(({ role }) => role === 'exposure');
    const temperatures = group.fields.filter(({ role }) => role === 'temperature');
    const numbers = group.fields.filter(({ role }) => role !== 'exposure' && role !== 'temperature');
    return [
      ...exposure.map((field) => exposureLine(field, group)),
      numbersLine(model, kind, numbers, group),
      ...(temperatures.length === 0 ? [] : [temperatureLine(temperatures)]),
    ];
  });
}

function numbersLine(
  model: ReadingModel,
  kind: Reading['kind'],
  fields: readonly ReadingField[],
  { when }: ReadingFieldGroup,
): EntryLine {
  const units = unitsOfEntry(model, kind);
  const withUnit = `with the unit (${units.slice(0, 4).join(', ')})`;
  const allCylinders = `cylinder 1 to ${fields.filter(({ cylinder }) => cylinder !== undefined).length}`;
  const line = (question: string, read: EntryLine['read']): EntryLine => ({
    id: `${when ?? ''}numbers`,
    question,
    part: when === undefined ? '' : `/${when}`,
    read,
  });
  switch (kind) {
    case 'single':
      return line(`${model.label}: one number ${withUnit}`, (text) => inOrder(text, fields, units));
    case 'pair': {
      const isLoss = model.kind === 'measured' && model.compare === 'loss-from-reference';
      const order = isLoss
        ? 'the pressure that is held, then the supply pressure'
        : 'the reading, then the one it is compared with';
      return line(`${model.label}: ${order}, ${withUnit}`, (text) => inOrder(text, fields, units));
    }
    case 'trim':
      return line(`${model.label}: short-term, then long-term, in %`, (text) =>
        inOrder(text, fields, ['%'], (unit) =>
          /^(%|per ?cent)$/i.test(unit) ? undefined : `trims are in %, not ${unit}`,
        ),
      );
    case 'per-cylinder':
      return line(`${model.label}: ${allCylinders}, - for one not read, ${withUnit}`, (text) =>
        byCylinder(text, fields, units),
      );
    case 'counts':
      return line(`${model.label}: ${allCylinders}, - for one not counted`, (text) =>
        byCylinder(text, fields, ['count'], countsOnly),
      );
    case 'part-counts': {
      const which = fields.length > 1 ? 'of this cylinder, then of the one it was swapped with' : 'of this cylinder';
      return line(`${when === 'before' ? 'Before' : 'After'}: misfires ${which}`, (text) =>
        inOrder(text, fields, ['count'], countsOnly),
      );
    }
  }
}

function exposureLine({ path, isOptional }: ReadingField, { when }: ReadingFieldGroup): EntryLine {
  const part = path.replace(/\/amount$/, '');
  const question = when === undefined ? 'How' : when === 'before' ? 'Before: how' : 'After: how';
  return {
    id: `${when ?? ''}exposure`,
    question: `${question} long did the engine run while counting? (3000 revolutions, 1500 firings${isOptional ? '; empty: not known' : ''})`,
    part,
    read: (text) => {
      if (isOptional && text.trim() === '') return {};
      const read = numbersIn(text, 1, ['revolutions', 'firings']);
      if (typeof read === 'string') return read;
      const start = read.unit.toLowerCase().slice(0, 3);
      const unit = (['revolutions', 'firings'] as const).find((one) => one.startsWith(start));
      return unit === undefined
        ? 'add the unit: 3000 revolutions, or 1500 firings of each cylinder'
        : { [path]: read.values[0]!, [`${part}/unit`]: unit };
    },
  };
}

function temperatureLine(fields: readonly ReadingField[]): EntryLine {
  const part = '/temperatures';
  return {
    id: 'temperatures',
    question: 'Temperature of each winding (degC, degF); empty: all at 20 degC',
    part,
    read: (text) => {
      if (text.trim() === '') return {};
      const entries = byCylinder(text, fields, ['degC', 'degF']);
      if (typeof entries === 'string') return entries;
      const { '/unit': unit, ...values } = entries;
      return Object.keys(values).length === 0 ? {} : { ...values, [`${part}/unit`]: unit! };
    },
  };
}

type UnitCheck = (unit: string) => string | undefined;

const countsOnly: UnitCheck = (unit) =>
  /^(counts?|misfires?)$/i.test(unit) ? undefined : `misfires are counted, not measured in ${unit}`;

/** Entries have no unit where only one is possible. */
function entriesOf(
  values: readonly (readonly [path: string, value: number])[],
  unit: string,
  check: UnitCheck | undefined,
): Entries | string {
  const problem = check?.(unit);
  if (problem !== undefined) return problem;
  return Object.fromEntries<number | string>(check === undefined ? [...values, ['/unit', unit]] : values);
}

/** A number for every field, in order. */
function inOrder(
  text: string,
  fields: readonly ReadingField[],
  units: readonly string[],
  check?: UnitCheck,
): Entries | string {
  const read = numbersIn(text, fields.length, units);
  if (typeof read === 'string') return read;
  return entriesOf(
    fields.map(({ path }, at) => [path, read.values[at]!] as const),
    read.unit,
    check,
  );
}

/** Numbers of cylinders: all in order, or each with its number before it; "maker" names the maker's figure. */
function byCylinder(
  text: string,
  fields: readonly ReadingField[],
  units: readonly string[],
  check?: UnitCheck,
): Entries | string {
  const read = readNumbers(text);
  if (read.kind === 'problem') return read.message;
  const pathOf = new Map(
    fields.map(({ path, role, cylinder }) => [role === 'nominal' ? 'maker' : String(cylinder), path]),
  );
  const count = fields.filter(({ cylinder }) => cylinder !== undefined).length;
  const [plain, named] = [read.numbers.filter(isPlain), read.numbers.filter((one) => !isPlain(one))];
  const nameCylinders = named.some(({ name }) => name !== 'maker');
  if (plain.length > 0 && (nameCylinders || plain.length !== count)) {
    return nameCylinders
      ? 'name every cylinder, as in 3: 9.2 4: 12.5, or none'
      : `${plain.length} numbers for ${count} cylinders: - stands for one that is missing`;
  }
  const unknown = named.find(({ name = '' }) => !pathOf.has(name));
  if (unknown !== undefined) return `there is no cylinder ${unknown.name} among ${count}`;
  const unit = unitOf(read.unit, units);
  if (unit === undefined) return unitMissing(units);
  const all = [...plain.map(({ value }, at) => ({ name: `${at + 1}`, value })), ...named];
  return entriesOf(
    all.flatMap(({ name = '', value }) => (value === undefined ? [] : [[pathOf.get(name)!, value] as const])),
    unit,
    check,
  );
}

const isPlain = ({ name }: NumberRead): boolean => name === undefined;

/** So many numbers, in order. Where there is one unit, or the first is none at all (a ratio, a count), it need not be written. */
function numbersIn(
  text: string,
  count: number,
  units: readonly string[],
): { readonly values: readonly number[]; readonly unit: string } | string {
  const read = readNumbers(text);
  if (read.kind === 'problem') return read.message;
  const values = read.numbers.flatMap(({ value, name }) => (value === undefined || name !== undefined ? [] : [value]));
  if (values.length !== count || read.numbers.length !== count) {
    return `${count === 1 ? 'one number is' : `${count} numbers are`} expected here, ${read.numbers.length} found`;
  }
  const unit = unitOf(read.unit, units);
  return unit === undefined ? unitMissing(units) : { values, unit };
}

function unitOf(written: string | undefined, units: readonly string[]): string | undefined {
  const goesWithout = units.length === 1 || units[0] === 'ratio';
  return written ?? (goesWithout ? units[0] : undefined);
}

function unitMissing(units: readonly string[]): string {
  return `the unit is missing: ${units.join(', ')}`;
}
