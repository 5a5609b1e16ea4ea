import type { MoralGraph } from './moralGraph.ts';

/** What a greedy elimination order minimises at each step: the table of the clique it makes (`weight`), the edges it adds (`fill`), or
 * those edges weighted by the product of their ends' numbers of states (`weighted-fill`). */
export type EliminationRule = 'weight' | 'fill' | 'weighted-fill';

/** An elimination order and the cliques it makes. */
export interface EliminationOrder {
  /** Positions, first eliminated first. */
  readonly order: Int32Array;
  /** [step]: bit set of the variable and its neighbours when eliminated, `words` words each. */
  readonly cliques: Int32Array;
  /** [step]: entries of that clique's table. */
  readonly tables: Float64Array;
  /** [step]: the step at which the first of the clique's other variables is eliminated; the number of variables when there is none. */
  readonly next: Int32Array;
  /** [step]: itself when its clique is maximal, else the step of the maximal one it is part of. */
  readonly within: Int32Array;
  /** Table entries of all maximal cliques. */
  readonly entries: number;
  /** Graph operations spent, for budgeting. */
  readonly effort: number;
}

/** Eliminates greedily by a rule. @param random breaks ties, and blurs scores by `blur`; null breaks ties by position.
 * @param limit of table entries: gives up (returns null) when the tables of all steps so far, contained cliques
 * included, exceed twice that. @param last 1 for variables that are not eliminated; the order then ends before them.
 * Source: Kjaerulff 1990 (triangulation by minimum fill, size and weight). */
export function eliminationOrder(
  graph: Omit<MoralGraph, 'least'>,
  rule: EliminationRule,
  random: (() => number) | null,
  blur: number,
  limit: number,
  last: Uint8Array | null = null,
): EliminationOrder | null {
  const { words, cardinalities } = graph;
  const count = cardinalities.length;
  const rows = graph.rows.slice();
  // variables that are not eliminated come after all steps
  const steps = last === null ? count : last.filter((stays) => stays === 0).length;
  const order = new Int32Array(steps);
  const cliques = new Int32Array(count * words);
  const sizes = new Int32Array(count);
  const tables = new Float64Array(count);
  const stepOf = new Int32Array(count).fill(-1);
  const scores = new Float64Array(count);
  const stale = new Uint8Array(count).fill(1);
  const members = new Int32Array(count);
  const weights = rule === 'fill' ? new Int32Array(count).fill(1) : cardinalities;
  let entries = 0;
  let effort = 0;

  const score = (v: number): number => {
    const base = v * words;
    let result = rule === 'weight' ? cardinalities[v]! : 0;
    for (let w = 0; w < words; w += 1) {
      for (let bits = rows[base + w]!; bits !== 0; bits &= bits - 1) {
        const u = (w << 5) + 31 - Math.clz32(bits & -bits);
        effort += words;
        if (rule === 'weight') {
          result *= cardinalities[u]!;
          continue;
        }
        for (let k = w; k < words; k += 1) {
          let missing = rows[base + k]! & ~rows[u * words + k]!;
          if (k === w) missing &= -2 << (u & 31);
          for (; missing !== 0; missing &= missing - 1)
            result += weights[u]! * weights[(k << 5) + 31 - Math.clz32(missing & -missing)]!;
        }
      }
    }
    return random === null ? result : result * (1 + blur * random());
  };

  for (let step = 0; step < steps; step += 1) {
    let best = -1;
    let bestScore = Infinity;
    let ties = 0;
    for (let v = 0; v < count; v += 1) {
      if (stepOf[v]! >= 0 || (last !== null && last[v] === 1)) continue;
      if (stale[v] === 1) {
        scores[v] = score(v);
        stale[v] = 0;
      }
      const s = scores[v]!;
      if (s < bestScore) {
        best = v;
        bestScore = s;
        ties = 1;
      } else if (s === bestScore && random !== null) {
        ties += 1;
        if (random() * ties < 1) best = v;
      }
    }
    effort += count - step;
    order[step] = best;
    stepOf[best] = step;
    const base = best * words;
    let size = 1;
    let table = cardinalities[best]!;
    for (let w = 0; w < words; w += 1) {
      cliques[step * words + w] = rows[base + w]!;
      for (let bits = rows[base + w]!; bits !== 0; bits &= bits - 1) {
        const u = (w << 5) + 31 - Math.clz32(bits & -bits);
        members[size - 1] = u;
        size += 1;
        table *= cardinalities[u]!;
      }
    }
    cliques[step * words + (best >>> 5)]! |= 1 << (best & 31);
    sizes[step] = size;
    tables[step] = table;
    entries += table;
    // the neighbours become a clique, without the variable
    for (let k = 0; k < size - 1; k += 1) {
      const u = members[k]! * words;
      stale[members[k]!] = 1;
      rows[u + (best >>> 5)]! &= ~(1 << (best & 31));
      for (let w = 0; w < words; w += 1) {
        let added = rows[base + w]! & ~rows[u + w]!;
        if (w === members[k]! >>> 5) added &= ~(1 << (members[k]! & 31));
        if (added === 0) continue;
        rows[u + w]! |= added;
        if (rule === 'weight') continue;
        // common neighbours of the ends of a new edge now miss one edge less
        for (let bits = added; bits !== 0; bits &= bits - 1) {
          const x = ((w << 5) + 31 - Math.clz32(bits & -bits)) * words;
          for (let j = 0; j < words; j += 1) {
            for (let common = rows[x + j]! & rows[u + j]!; common !== 0; common &= common - 1)
              stale[(j << 5) + 31 - Math.clz32(common & -common)] = 1;
          }
        }
      }
    }
    effort += size * words;
    if (entries > 2 * limit) return null;
  }
  entries = 0;
  const next = new Int32Array(steps).fill(count);
  const within = new Int32Array(count).fill(-1);
  for (let step = 0; step < steps; step += 1) {
    for (let w = 0; w < words; w += 1) {
      for (let bits = cliques[step * words + w]!; bits !== 0; bits &= bits - 1) {
        const at = stepOf[(w << 5) + 31 - Math.clz32(bits & -bits)]!;
        if (at > step && at < next[step]!) next[step] = at;
      }
    }
    if (within[step] === -1) {
      within[step] = step;
      entries += tables[step]!;
    }
    // a clique is not maximal when it is what is left of an earlier one
    const after = next[step]!;
    if (after < count && within[after] === -1 && sizes[after] === sizes[step]! - 1) within[after] = within[step]!;
  }
  return { order, cliques, tables, next, within, entries, effort };
}
