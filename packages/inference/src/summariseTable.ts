/** out[q + r] += sum over the separator's configurations j of table[t + r * block + j] (* by[o + j]): what a clique does not share with
 * its parent. Loops as in `LoopNest`: the first `inner` run over the separator, the others over the rest. The caller clears `out`.
 * @param block entries of the separator. @param weigh whether to multiply by `by`. Allocates nothing. */
export function summariseTable(
  table: Float64Array,
  t: number,
  by: Float64Array,
  o: number,
  weigh: boolean,
  out: Float64Array,
  q: number,
  n: Int32Array,
  a: Int32Array,
  from: number,
  inner: number,
  count: number,
  block: number,
): void {
  if (count > inner + 1 || (count === inner && inner > 1)) {
    const k = from + count - 1;
    const rounds = n[k]!;
    const step = a[k]!;
    const outStep = count > inner ? step / block : 0;
    const byStep = count > inner ? 0 : step;
    const left = count > inner ? inner : inner - 1;
    for (let r = 0, at = t, to = q, bt = o; r < rounds; r += 1, at += step, to += outStep, bt += byStep) {
      summariseTable(table, at, by, bt, weigh, out, to, n, a, from, left, count - 1, block);
    }
    return;
  }
  // at most one loop over the rest around the separator's
  const rounds = count > inner ? n[from + count - 1]! : 1;
  const step = count > inner ? a[from + count - 1]! : 0;
  const outStep = step / block;
  if (inner > 1) {
    for (let r = 0, at = t, to = q; r < rounds; r += 1, at += step, to += outStep) {
      summariseTable(table, at, by, o, weigh, out, to, n, a, from, inner, inner, block);
    }
    return;
  }
  const n0 = inner > 0 ? n[from]! : 1;
  const a0 = inner > 0 ? a[from]! : 1;
  for (let r = 0, at = t, to = q; r < rounds; r += 1, at += step, to += outStep) {
    let even = 0;
    let odd = 0;
    let i = at;
    let k = n0;
    if (weigh) {
      let j = o;
      for (; k > 1; k -= 2, i += 2 * a0, j += 2 * a0) {
        even += table[i]! * by[j]!;
        odd += table[i + a0]! * by[j + a0]!;
      }
      if (k === 1) even += table[i]! * by[j]!;
    } else {
      for (; k > 1; k -= 2, i += 2 * a0) {
        even += table[i]!;
        odd += table[i + a0]!;
      }
      if (k === 1) even += table[i]!;
    }
    out[to]! += even + odd;
  }
}
