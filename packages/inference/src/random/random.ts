import { checkNumbers } from '../errors/checkNumbers.ts';

/** A source of chance: every call gives the next number in [0, 1). Always passed in; nothing here draws by itself. */
export type Random = () => number;

/** A seeded source of chance (mulberry32: a 32-bit counter, mixed; period 2^32). The same seed gives the same numbers everywhere.
 * @throws InferenceOptionError when the seed is no finite number
 * @example createRandom(1)() // 0.6271 */
export function createRandom(seed: number): Random {
  checkNumbers(['/seed', seed ?? NaN, -Number.MAX_VALUE, Number.MAX_VALUE]);
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
