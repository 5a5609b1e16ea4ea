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
  if (inner > 1 || count > inner + 1) {
    const k = from + count - 1;
    const step = a[k]!;
    // whole numbers throughout: what comes out of a division would be boxed on its way into the call
    const stepOut = outer ? wholePart(step, block) : 0;
    const stepBy = outer ? 0 : step;
    const innerLeft = outer ? inner : inner - 1;
    for (let r = 0, at = t, bt = o, to = q; r < n[k]!; r += 1, at += step, bt += stepBy, to += stepOut)
      summariseTable(table, at, by, bt, out, to, n, a, from, innerLeft, count - 1, block);
    return;
  }
  const rounds = outer ? n[from + inner]! : 1;
  const step = outer ? a[from + inner]! : 0;
  const n0 = inner > 0 ? n[from]! : 1;
  const a0 = inner > 0 ? a[from]! : 1;
  const stepOut = wholePart(step, block);
  for (let r = 0, at = t, to = q; r < rounds; r += 1, at += step, to += stepOut) {
    let even = 0;
    let odd = 0;
    let k = n0;
    let i = at;
    let j = o;
    for (; k > 1; k -= 2, i += 2 * a0, j += 2 * a0) {
      even += table[i]! * by[j]!;
      odd += table[i + a0]! * by[j + a0]!;
    }
    if (k === 1) even += table[i]! * by[j]!;
    out[to]! += even + odd;
  }
}

function wholePart(value: number, by: number): number {
  return (value / by) | 0;
}
