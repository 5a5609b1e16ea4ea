import type { Propagation } from './propagation.ts';

/** Marks the variables that the findings can change: unobserved descendants of the findings' ancestors. All others are independent of
 * the evidence (d-separated from it), so that their prior stands. Allocates nothing.
 * Source: Geiger, Verma & Pearl 1990, Networks 20:507-534. */
export function markActive(propagation: Propagation): void {
  const { compiled, states, soft, active, now } = propagation;
  if (now.activeIn === now.pattern) return;
  now.activeIn = now.pattern;
  const { order, parents, parentStart } = compiled;
  const count = order.length;
  for (let v = 0; v < count; v += 1) active[v] = states[v]! >= 0 || soft[v] === 1 ? 1 : 0;
  for (let k = count - 1; k >= 0; k -= 1) {
    const v = order[k]!;
    if (active[v] === 0) continue;
    for (let j = parentStart[v]!, end = parentStart[v + 1]!; j < end; j += 1) active[parents[j]!] = 1;
  }
  for (let k = 0; k < count; k += 1) {
    const v = order[k]!;
    if (active[v] === 1) continue;
    for (let j = parentStart[v]!, end = parentStart[v + 1]!; j < end; j += 1)
      if (active[parents[j]!] === 1) active[v] = 1;
  }
  for (let v = 0; v < count; v += 1) if (states[v]! >= 0) active[v] = 0;
}
