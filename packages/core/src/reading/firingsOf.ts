import type { Exposure } from './reading.ts';

/** Firings of each cylinder of a four-stroke engine in an exposure: one in two revolutions. */
export function firingsOf({ amount, unit }: Exposure): number {
  return unit === 'firings' ? amount : amount / 2;
}
