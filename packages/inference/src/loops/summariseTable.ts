/** out[q + r] += sum over the separator's configurations j of table[t + r * block + j] * by[o + j]: what a clique does not share with its
 * parent. Loops as in `LoopNest`: the first `inner` run over the separator, the others over the rest. The caller clears `out`.
 * @param block entries of the separator. Allocates nothing. */
export function summariseTable(
  table: Float64Array,
  t: number,
  by: Float64Array,
  o: number,
  out: Float64Array,
  q: number,
  n: Int32Array,
  a: Int32Array,
  from: number,
  inner: number,
  count: number,
  block: number,
): void {
  // at most two loops are left to be run here: one over the rest around one over the separator
  const outer = count > inner;
  const k = from + (inner > 1 || count > inner + 1 ? count - 1 : inner);
  const step = outer || inner > 1 ? a[k]! : 0;
  // whole numbers throughout: what comes out of a division would be boxed on its way into the call
  const stepOut = outer ? (step / block) | 0 : 0;
  const rounds = outer || inner > 1 ? n[k]! : 1;
  if (inner > 1 || count > inner + 1) {
    const stepBy = outer ? 0 : step;
    for (let r = 0; r < rounds; r += 1, t += step, o += stepBy, q += stepOut)
      summariseTable(table, t, by, o, out, q, n, a, from, outer ? inner : inner - 1, count - 1, block);
    return;
  }
  const n0 = inner > 0 ? n[from]! : 1;
  const a0 = inner > 0 ? a[from]! : 1;
  for (let r = 0; r < rounds; r += 1, t += step, q += stepOut) {
    let even = 0;
    let odd = 0;
    let left = n0;
    let i = t;
    let j = o;
    for (; left > 1; left -= 2, i += 2 * a0, j += 2 * a0) {
      even += table[i]! * by[j]!;
      odd += table[i + a0]! * by[j + a0]!;
    }
    if (left === 1) even += table[i]! * by[j]!;
    out[q]! += even + odd;
  }
}
