import { drawDirichlet } from './drawDirichlet.ts';
import type { Random } from './random.ts';

/** A probability drawn from the Beta of mean `p` worth `ess` cases. */
export function drawBeta(p: number, ess: number, random: Random): number {
  if (p <= 0 || p >= 1) return p;
  return drawDirichlet({ yes: p, no: 1 - p }, ess, random)['yes'] ?? p;
}
