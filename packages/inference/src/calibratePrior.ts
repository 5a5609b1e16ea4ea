import { addAlong } from './addAlong.ts';
import type { CompiledNetwork } from './compileNetwork.ts';
import { addLoop, createLoopNest } from './loopNest.ts';
import { multiplyAlong } from './multiplyAlong.ts';

/** Fills a compiled network's tables with P(clique) and P(separator), by one pass to the root and one back.
 * Source: Jensen, Lauritzen & Olesen 1990, Computational Statistics Quarterly 4:269-282 (Hugin propagation). */
export function calibratePrior(compiled: CompiledNetwork): void {
  const { tree, loops, sliced, prior, inverse, tableAt, separatorAt } = compiled;
  const { count, parent } = tree;
  const { n, a, b } = sliced;
  const speaks = multiplyFamilies(compiled);
  for (let c = count - 1; c > 0; c -= 1) {
    if (speaks[c] === 0) continue;
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
      ratio[k - shift] = speaks[c] === 0 ? 1 : prior[k]!;
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

/** Multiplies every family into the smallest clique that covers it. Returns 1 for cliques whose message to the root is not all ones:
 * those below the home of some variable whose family went further down. */
function multiplyFamilies(compiled: CompiledNetwork): Uint8Array {
  const { network, tree, cardinalities, prior, tableAt, separatorAt } = compiled;
  const { count, parent, start, members, sizes, home, cliqueStart, cliquesOf } = tree;
  const speaks = new Uint8Array(count);
  const step = new Int32Array(cardinalities.length);
  const inClique = new Int32Array(cardinalities.length).fill(-1);
  const nest = createLoopNest(cardinalities.length);
  prior.fill(1, 0, separatorAt[0]!);
  for (const { index, parents, table } of network.variables) {
    let best = -1;
    for (let k = cliqueStart[index]!; k < cliqueStart[index + 1]!; k += 1) {
      const c = cliquesOf[k]!;
      if (best >= 0 && sizes[c]! >= sizes[best]!) continue;
      for (let j = start[c]!; j < start[c + 1]!; j += 1) inClique[members[j]!] = c;
      let covers = true;
      for (const p of parents) if (inClique[p] !== c) covers = false;
      if (covers) best = c;
    }
    for (let c = best; c !== home[index] && c > 0; c = parent[c]!) speaks[c] = 1;
    let stride = cardinalities[index]!;
    step[index] = 1;
    for (let k = parents.length - 1; k >= 0; k -= 1) {
      step[parents[k]!] = stride;
      stride *= cardinalities[parents[k]!]!;
    }
    nest.count = 0;
    let own = 1;
    for (let j = start[best + 1]! - 1; j >= start[best]!; j -= 1) {
      const v = members[j]!;
      addLoop(nest, cardinalities[v]!, own, step[v]!);
      own *= cardinalities[v]!;
    }
    multiplyAlong(prior, tableAt[best]!, prior, tableAt[best]!, table, 0, nest.n, nest.a, nest.b, 0, nest.count);
    step[index] = 0;
    for (const p of parents) step[p] = 0;
  }
  return speaks;
}
