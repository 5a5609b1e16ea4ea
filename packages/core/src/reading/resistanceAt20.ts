// Temperature coefficient of annealed copper at 20 degrees C, per kelvin: the international standard of resistance for copper
// (IEC 60028:1925; NBS Handbook 100, Copper Wire Tables, 1966). From memory; IEC 60228 uses the same figure as 234.5 + t.
const COPPER = 0.00393;

/** Resistance a copper winding would have at 20 degrees C, from its resistance at `temperatureC`; in the unit given. */
export function resistanceAt20(resistance: number, temperatureC: number): number {
  return resistance / (1 + COPPER * (temperatureC - 20));
}
