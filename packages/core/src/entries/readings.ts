// readings: what was measured, in which unit, and what it says
export type {
  CountOfPart,
  CountsOfCylinders,
  CountsOfPart,
  Exposure,
  MeasuredValues,
  PairReading,
  PerCylinderReading,
  Reading,
  SingleReading,
  TrimReading,
} from '../reading/reading.ts';
export type { Engine } from '../reading/engine.ts';
export { engineLimits } from '../reading/engineLimits.ts';
export { parseReading } from '../reading/parseReading.ts';
export { kindsOf } from '../reading/kindsOf.ts';
export { readingFields, type ReadingField, type ReadingFieldGroup } from '../readingForm/readingFields.ts';
export { readingOfEntries } from '../readingForm/readingOfEntries.ts';
export { unitsOfEntry } from '../readingForm/unitsOfEntry.ts';
export { readingLikelihood, type ReadingLikelihood, type ReadingRemark } from '../reading/readingLikelihood.ts';
export type { RuleResult } from '../reading/applyRuleOfThumb.ts';
export { unitsOf, type Unit } from '../units/unitsOf.ts';
export { convertUnit } from '../reading/convertUnit.ts';
export { resistanceAt20 } from '../reading/resistanceAt20.ts';
export { misfireShare, type MisfireShare } from '../reading/misfireShare.ts';
export { conditionalRateTest } from '../distributions/conditionalRateTest.ts';
