import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import { checkReading } from './checkReading.ts';

// Temperature coefficient of annealed copper at 20 degrees C, per kelvin: the international standard of resistance for copper
// (IEC 60028:1925; NBS Handbook 100, Copper Wire Tables, 1966). From memory; IEC 60228 uses the same figure as 234.5 + t.
const COPPER = 0.00393;

// of a workshop; far above the temperature at which the straight line comes to nothing
const argumentsSchema = z.strictObject({
  resistance: optionSchemas.number(0, LARGEST_NUMBER),
  temperatureC: optionSchemas.number(-60, 250),
});

/** Resistance a copper winding would have at 20 degrees C, from its resistance at `temperatureC`; in the unit given.
 * @param temperatureC from -60 to 250. @throws ReadingError
 * @example resistanceAt20(0.8, 70) // 0.6686 */
export function resistanceAt20(resistance: number, temperatureC: number): number {
  checkReading(argumentsSchema, { resistance, temperatureC });
  return resistance / (1 + COPPER * (temperatureC - 20));
}
