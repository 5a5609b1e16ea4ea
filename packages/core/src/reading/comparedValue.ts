import type { Dimension } from '../units/dimension.ts';
import type { MeasuredReading } from '../model/readingModel.ts';
import { dimensionOfEntry } from './dimensionOfEntry.ts';
import type { MeasuredValues, PerCylinderReading } from './reading.ts';
import { resistanceAt20 } from './resistanceAt20.ts';
import { findUnit, toCanonical } from '../units/toCanonical.ts';

/** The one number a measured reading is judged by, and how it came about. */
export interface ComparedValue {
  /** In the unit of the reading model. */
  readonly value: number;
  /** Cylinders that were not compared with: their reading stands far above all others, or is 0 where a ratio is asked. */
  readonly setAside: readonly string[];
  /** Readings in the canonical unit of their dimension, where several cylinders were read. */
  readonly byCylinder?: Readonly<Record<string, number>>;
}

/** Compares the suspect as the model says: with its neighbours, with a reference, or alone. The reading must have passed `findReadingProblems`. */
export function comparedValue(model: MeasuredReading, reading: MeasuredValues): ComparedValue {
  const { value, ...rest } = compare(model, reading);
  return { value: model.absolute === true ? Math.abs(value) : value, ...rest };
}

function compare(model: MeasuredReading, reading: MeasuredValues): ComparedValue {
  switch (reading.kind) {
    case 'single':
      return { value: canonical(dimensionOfEntry(model, 'single'), reading.value, reading.unit), setAside: [] };
    case 'trim':
      return { value: reading.short + reading.long, setAside: [] };
    case 'pair': {
      const dimension = dimensionOfEntry(model, 'pair');
      const value = canonical(dimension, reading.value, reading.unit);
      const reference = canonical(dimension, reading.reference, reading.unit);
      if (model.compare === 'minus-reference') return { value: value - reference, setAside: [] };
      const ratio = value / reference;
      return { value: model.compare === 'loss-from-reference' ? 100 * (1 - ratio) : ratio, setAside: [] };
    }
    case 'per-cylinder':
      return compareCylinders(model, reading);
  }
}

function compareCylinders(model: MeasuredReading, reading: PerCylinderReading): ComparedValue {
  const byCylinder = canonicalValues(model.measures, reading);
  const suspect = byCylinder[reading.suspect]!;
  const others = Object.entries(byCylinder).filter(([cylinder]) => Number(cylinder) !== reading.suspect);
  // of a difference 0 and below are numbers like others, and the middle stands fast without help
  const apart = model.compare === 'suspect-minus-neighbours' ? [] : standApart(others, model.setAsideAbove?.best);
  const kept = others.filter((one) => !apart.includes(one)).map(([, value]) => value);
  const nominal = reading.nominal === undefined ? undefined : canonical(model.measures, reading.nominal, reading.unit);
  const against = kept.length > 0 ? kept : [nominal ?? suspect];
  const value = (): number => {
    switch (model.compare) {
      case 'suspect-to-highest':
        return suspect / Math.max(...against);
      case 'suspect-to-neighbours':
        return suspect / median(against);
      case 'suspect-off-neighbours':
        return 100 * (suspect / median(against) - 1);
      case 'suspect-minus-neighbours':
        return suspect - median(against);
      default:
        return suspect;
    }
  };
  return { value: value(), setAside: apart.map(([cylinder]) => cylinder), byCylinder };
}

type Neighbour = readonly [cylinder: string, value: number];

/** Neighbours that are no measure for the suspect in a ratio: those that read nothing, which would pull the middle down, and those far
 * above it. */
function standApart(others: readonly Neighbour[], times = Infinity): readonly Neighbour[] {
  const speaking = others.filter(([, value]) => value > 0);
  const middle = median(speaking.map(([, value]) => value));
  return others.filter(([, value]) => !(value > 0) || (speaking.length > 2 && value > times * middle));
}

function canonicalValues(
  dimension: Dimension,
  { values, unit, temperatures }: PerCylinderReading,
): Record<string, number> {
  return Object.fromEntries(
    Object.entries(values).map(([cylinder, value]) => {
      const found = canonical(dimension, value, unit);
      const warm = temperatures?.values[cylinder];
      if (dimension !== 'resistance' || temperatures === undefined || warm === undefined) return [cylinder, found];
      return [cylinder, resistanceAt20(found, canonical('temperature', warm, temperatures.unit))];
    }),
  );
}

function canonical(dimension: Dimension, value: number, symbol: string): number {
  const unit = findUnit(dimension, symbol);
  return unit === undefined ? value : toCanonical(value, unit);
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
