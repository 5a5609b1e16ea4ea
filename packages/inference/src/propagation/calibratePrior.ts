import { addAlong } from '../loops/addAlong.ts';
import type { CalibratedTree } from './calibratedTree.ts';
import { nestOf } from '../loops/loopNest.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';

/** Fills a compiled network's tables with P(clique) and P(separator), by one pass to the root and one back.
 * Source: Jensen, Lauritzen & Olesen 1990, Computational Statistics Quarterly 4:269-282 (Hugin propagation). */
export function calibratePrior(compiled: CalibratedTree): void {
  const { tree, loops, sliced, prior, inverse, tableAt, separatorAt } = compiled;
  const { count, parent } = tree;
  const { n, a, b } = sliced;
  multiplyFamilies(compiled);
  for (let c = count - 1; c > 0; c -= 1) {
    const up = separatorAt[c]!;
    const p = count + c;
    const table = tableAt[parent[c]!]!;
    addAlong(prior, tableAt[c]!, prior, up, n, a, b, loops.start[c]!, sliced.count[c]!);
    multiplyAlong(prior, table, prior, table, prior, up, n, a, b, loops.start[p]!, sliced.count[p]!);
  }
  const shift = separatorAt[0]!;
  prior[shift] = 1;
  for (let c = 1; c < count; c += 1) {
    const at = separatorAt[c]!;
    const end = separatorAt[c + 1]!;
    // holds the message upwards, then what the downward one adds to it
    const ratio = inverse;
    for (let k = at; k < end; k += 1) {
      ratio[k - shift] = prior[k]!;
      prior[k] = 0;
    }
    const p = count + c;
    addAlong(prior, tableAt[parent[c]!]!, prior, at, n, a, b, loops.start[p]!, sliced.count[p]!);
    // an upward message of zero means that the whole column is zero
    for (let k = at; k < end; k += 1) ratio[k - shift] = ratio[k - shift] === 0 ? 0 : prior[k]! / ratio[k - shift]!;
    const table = tableAt[c]!;
    multiplyAlong(prior, table, prior, table, ratio, at - shift, n, a, b, loops.start[c]!, sliced.count[c]!);
  }
  for (let k = 0; k < inverse.length; k += 1) inverse[k] = prior[shift + k] === 0 ? 0 : 1 / prior[shift + k]!;
}

/** Multiplies every family into the smallest clique that covers it. */
function multiplyFamilies(compiled: CalibratedTree): void {
  const { families, tree, cardinalities, prior, tableAt, separatorAt } = compiled;
  const { start, members, sizes, cliqueStart, cliquesOf } = tree;
  prior.fill(1, 0, separatorAt[0]!);
  families.forEach(({ variables, values }, v) => {
    let best = -1;
    let scope = members;
    for (let k = cliqueStart[v]!; k < cliqueStart[v + 1]!; k += 1) {
      const c = cliquesOf[k]!;
      if (best >= 0 && sizes[c]! >= sizes[best]!) continue;
      const covering = members.subarray(start[c]!, start[c + 1]!);
      if (!variables.every((u) => covering.includes(u))) continue;
      best = c;
      scope = covering;
    }
    const { n, a, b, count: loops } = nestOf(scope, variables, cardinalities);
    multiplyAlong(prior, tableAt[best]!, prior, tableAt[best]!, values, 0, n, a, b, 0, loops);
  });
}
