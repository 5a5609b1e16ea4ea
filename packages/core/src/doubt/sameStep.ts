import type { Advice } from '../decision/advice/advice.ts';

/** Whether two pieces of advice propose the same step. */
export function sameStep(a: Advice['best'], b: Advice['best']): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
