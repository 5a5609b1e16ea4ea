import { addAlong } from '../loops/addAlong.ts';
import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import type { Finding } from '../network/evidence.ts';

/** For every clique: log of the largest probability that any completion below it reaches, given each configuration of the clique.
 * Laid out like the prior. Impossible configurations are -Infinity.
 * Source: Dawid 1992, Statistics and Computing 2:25-36 (max-propagation). */
export function maxTables(compiled: CompiledNetwork, findings: readonly Finding[]): Float64Array {
  const { tree, loops, sliced, prior, tableAt, separatorAt, cardinalities } = compiled;
  const { n, a, b } = sliced;
  const tables = new Float64Array(separatorAt[0]!);
  const logWeights: (Float64Array | null)[] = Array.from(cardinalities, () => null);
  for (const { variable, state, weights, logScale } of findings) {
    logWeights[variable] = Float64Array.from({ length: cardinalities[variable]! }, (_, s) =>
      weights === null ? (s === state ? 0 : -Infinity) : Math.log(weights[s]!) + logScale,
    );
  }
  for (let c = tree.count - 1; c >= 0; c -= 1) {
    const table = tableAt[c]!;
    const size = tree.sizes[c]!;
    const block = tree.separatorSizes[c]!;
    // log P(what is not shared | separator): the clique's families, whichever clique they were entered in
    for (let k = 0; k < size; k += 1) {
      const p = prior[table + k]!;
      tables[table + k]! += p === 0 ? -Infinity : Math.log(p / prior[separatorAt[c]! + (k % block)]!);
    }
    let stride = size;
    for (let k = tree.start[c]!; k < tree.start[c]! + tree.residuals[c]!; k += 1) {
      const v = tree.members[k]!;
      stride /= cardinalities[v]!;
      const weights = logWeights[v]!;
      if (weights === null) continue;
      for (let i = 0; i < size; i += 1) tables[table + i]! += weights[Math.floor(i / stride) % weights.length]!;
    }
    if (c === 0) break;
    const message = new Float64Array(block).fill(-Infinity);
    for (let i = 0; i < size; i += 1)
      if (tables[table + i]! > message[i % block]!) message[i % block] = tables[table + i]!;
    const nest = tree.count + c;
    addAlong(message, 0, tables, tableAt[tree.parent[c]!]!, n, b, a, loops.start[nest]!, sliced.count[nest]!);
  }
  return tables;
}
