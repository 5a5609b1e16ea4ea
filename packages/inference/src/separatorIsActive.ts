import type { Propagation } from './propagation.ts';

/** Whether the evidence can change anything that clique c shares with its parent: some variable there is active. */
export function separatorIsActive({ compiled, active }: Propagation, c: number): boolean {
  const { start, residuals, members } = compiled.tree;
  for (let k = start[c]! + residuals[c]!, end = start[c + 1]!; k < end; k += 1)
    if (active[members[k]!] === 1) return true;
  return false;
}
