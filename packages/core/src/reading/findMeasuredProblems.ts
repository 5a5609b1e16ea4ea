import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Dimension } from '../units/dimension.ts';
import type { MeasuredReading } from '../model/readingModel.ts';
import { dimensionOfEntry } from './dimensionOfEntry.ts';
import type { MeasuredValues, PerCylinderReading } from './reading.ts';
import { findUnit, toCanonical } from '../units/toCanonical.ts';
import { unitProblem } from './unitProblem.ts';
import { unitsOf, type Unit } from '../units/unitsOf.ts';

type Limits = MeasuredReading['limits'];

// A share of nothing, or of less, is none.
const ANY_REFERENCE: Pick<Limits, 'low' | 'high'> = { low: 0, high: LARGEST_NUMBER };
// Of a winding whose resistance was read: outside these degrees Celsius a unit was mistaken.
const TEMPERATURES: Pick<Limits, 'low' | 'high'> = { low: -60, high: 250 };

/** What is wrong with what an instrument showed, each at its field. */
export function findMeasuredProblems(model: MeasuredReading, reading: MeasuredValues, path: string): Problem[] {
  switch (reading.kind) {
    case 'single': {
      const dimension = dimensionOfEntry(model, 'single');
      return fieldProblems(dimension, reading.unit, limitsOfSingle(model), [[`${path}/value`, reading.value]], path);
    }
    case 'trim':
      return fieldProblems('percent', '%', model.limits, trims(reading, path), path);
    case 'pair':
      return pairProblems(model, reading, path);
    case 'per-cylinder':
      return cylinderProblems(model, reading, path);
  }
}

function trims({ short, long }: { short: number; long: number }, path: string): Field[] {
  return [
    [`${path}/short`, short],
    [`${path}/long`, long],
  ];
}

type Field = readonly [path: string, value: number];

/** Unknown unit, or values that cannot be. */
function fieldProblems(
  dimension: Dimension,
  symbol: string,
  { low, high }: Pick<Limits, 'low' | 'high'>,
  fields: readonly Field[],
  path: string,
): Problem[] {
  const unit = findUnit(dimension, symbol);
  if (unit === undefined) return [unitProblem(dimension, symbol, `${path}/unit`)];
  const canonicalUnit = unitsOf(dimension)[0].symbol;
  return fields.flatMap(([at, value]) => {
    const found = toCanonical(value, unit);
    if (found >= low && found <= high) return [];
    const other = otherUnit(dimension, unit, value, { low, high });
    const parts = { value, unit: unit.symbol, low, high, canonical: canonicalUnit };
    return [
      other === undefined
        ? problemFor('reading-implausible', at, parts)
        : problemFor('reading-implausible/unit', at, { ...parts, other: other.symbol }),
    ];
  });
}

// of the units of a dimension, the first few are those a workshop uses
const USUAL = 3;

/** The usual unit that makes the number possible; of several the largest, since what was read is seldom next to nothing. */
function otherUnit(
  dimension: Dimension,
  used: Unit,
  value: number,
  { low, high }: Pick<Limits, 'low' | 'high'>,
): Unit | undefined {
  if (value < 0) return undefined;
  return unitsOf(dimension)
    .slice(0, USUAL)
    .filter((unit) => unit.symbol !== used.symbol && toCanonical(value, unit) > low && toCanonical(value, unit) <= high)
    .sort((a, b) => b.factor - a.factor)[0];
}

/** A compared value noted as such: the sign must be possible, size is judged by the distributions. */
function limitsOfSingle(model: MeasuredReading): Pick<Limits, 'low' | 'high'> {
  if (dimensionOfEntry(model, 'single') === model.measures) return model.limits;
  return { low: model.wild.low < 0 || model.absolute === true ? -1000 : 0, high: 1000 };
}

function pairProblems(
  model: MeasuredReading,
  reading: Extract<MeasuredValues, { kind: 'pair' }>,
  path: string,
): Problem[] {
  const { value, reference, unit } = reading;
  const isLoss = model.compare === 'loss-from-reference';
  const fields: Field[] = [
    [`${path}/value`, value],
    [`${path}/reference`, reference],
  ];
  const limits = isLoss ? (model.referenceLimits ?? ANY_REFERENCE) : model.limits;
  const found = fieldProblems(dimensionOfEntry(model, 'pair'), unit, limits, fields, path);
  if (found.length > 0 || model.compare === 'minus-reference') return found;
  if (reference <= 0) {
    return [problemFor('reference-zero', `${path}/reference`, {})];
  }
  if (isLoss && value > reference) {
    return [problemFor('reading-implausible/gauges', `${path}/value`, { pressure: value, supply: reference, unit })];
  }
  return [];
}

function cylinderProblems(model: MeasuredReading, reading: PerCylinderReading, path: string): Problem[] {
  const { values, suspect, unit, nominal, temperatures } = reading;
  const fields = Object.entries(values).map(([cylinder, value]): Field => [`${path}/values/${cylinder}`, value]);
  if (nominal !== undefined) fields.push([`${path}/nominal`, nominal]);
  const found = fieldProblems(model.measures, unit, model.limits, fields, path);
  if (temperatures !== undefined) {
    const warm = Object.entries(temperatures.values).map(([cylinder, value]): Field => [
      `${path}/temperatures/values/${cylinder}`,
      value,
    ]);
    found.push(...fieldProblems('temperature', temperatures.unit, TEMPERATURES, warm, `${path}/temperatures`));
  }
  if (!Object.hasOwn(values, suspect)) {
    found.push(problemFor('suspect-missing', `${path}/values/${suspect}`, { suspect, read: Object.keys(values) }));
  }
  if (found.length > 0) return found;
  const others = Object.entries(values).filter(([cylinder]) => Number(cylinder) !== suspect);
  if (others.length === 0 && nominal === undefined) {
    return [problemFor('neighbour-missing', `${path}/values`, {})];
  }
  return model.compare === 'suspect-minus-neighbours' ? [] : neighbourProblems(others, nominal, path);
}

/** A ratio needs neighbours that read something. Where half of them or more read nothing, the middle one stands for no healthy cylinder:
 * either they have a fault of their own, or the gauge has. */
function neighbourProblems(
  others: readonly (readonly [cylinder: string, value: number])[],
  nominal: number | undefined,
  path: string,
): Problem[] {
  if (others.length === 0) return nominal! > 0 ? [] : [problemFor('nominal-zero', `${path}/nominal`, {})];
  const silent = others.filter(([, value]) => !(value > 0)).map(([cylinder]) => cylinder);
  if (silent.length === others.length) return [problemFor('neighbour-zero', `${path}/values`, {})];
  if (2 * silent.length < others.length) return [];
  return [problemFor('neighbour-zero/half', `${path}/values/${silent[0]}`, { cylinders: silent })];
}
