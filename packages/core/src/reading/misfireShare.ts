import { checkReading } from './checkReading.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';

/** Misfires over revolutions, as regulations judge them. */
export interface MisfireShare {
  /** Misfires in per cent of all firing events of the engine. */
  readonly percent: number;
  /** Misfires per 200 revolutions, the interval of catalyst damage, and per 1000, the interval of emissions. */
  readonly per200Revolutions: number;
  readonly per1000Revolutions: number;
  /** Firing events of the whole engine in those intervals. */
  readonly eventsIn200Revolutions: number;
  readonly eventsIn1000Revolutions: number;
}

const argumentsSchema = z.strictObject({
  misfires: optionSchemas.number(0, LARGEST_NUMBER),
  revolutions: optionSchemas.number(1, LARGEST_NUMBER),
  cylinders: optionSchemas.whole(1, 16),
});

/** Per cent misfire = 100 misfires / (revolutions cylinders / 2), and misfires in the intervals of 200 and 1000 revolutions over which
 * 13 CCR 1968.2 (e)(3) judges catalyst damage and emissions (intervals from memory and makers' summaries). One dead cylinder of four is 25 %.
 * @param misfires of all cylinders counted together. @param revolutions at least 1. @param cylinders 1 to 16.
 * @throws ReadingError
 * @example misfireShare(500, 1000, 4).percent // 25 */
export function misfireShare(misfires: number, revolutions: number, cylinders: number): MisfireShare {
  checkReading(argumentsSchema, { misfires, revolutions, cylinders });
  const perRevolution = misfires / revolutions;
  return {
    percent: (100 * perRevolution) / (cylinders / 2),
    per200Revolutions: 200 * perRevolution,
    per1000Revolutions: 1000 * perRevolution,
    eventsIn200Revolutions: 100 * cylinders,
    eventsIn1000Revolutions: 500 * cylinders,
  };
}
