/** out[q + r] = sum over the separator's configurations j of table[t + r * block + j] (* by[o + j]): what a clique does not share with
 * its parent. Loops as in `LoopNest`: the first `inner` run over the separator, the others over the rest.
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
  if (count === inner) {
    out[q] = weigh ? weighedSum(table, t, by, o, n, a, from, inner) : plainSum(table, t, n, a, from, inner);
    return;
  }
  const k = from + count - 1;
  const rounds = n[k]!;
  const step = a[k]!;
  const outStep = step / block;
  for (let r = 0, at = t, to = q; r < rounds; r += 1, at += step, to += outStep) {
    if (count - 1 === inner)
      out[to] = weigh ? weighedSum(table, at, by, o, n, a, from, inner) : plainSum(table, at, n, a, from, inner);
    else summariseTable(table, at, by, o, weigh, out, to, n, a, from, inner, count - 1, block);
  }
}

function weighedSum(
  table: Float64Array,
  t: number,
  by: Float64Array,
  o: number,
  n: Int32Array,
  a: Int32Array,
  from: number,
  count: number,
): number {
  if (count === 0) return table[t]! * by[o]!;
  let sum = 0;
  const k = from + count - 1;
  const rounds = n[k]!;
  const step = a[k]!;
  if (count > 1) {
    for (let r = 0, at = 0; r < rounds; r += 1, at += step)
      sum += weighedSum(table, t + at, by, o + at, n, a, from, count - 1);
  } else {
    const shift = o - t;
    for (let r = 0, i = t; r < rounds; r += 1, i += step) sum += table[i]! * by[i + shift]!;
  }
  return sum;
}

function plainSum(table: Float64Array, t: number, n: Int32Array, a: Int32Array, from: number, count: number): number {
  if (count === 0) return table[t]!;
  let sum = 0;
  const k = from + count - 1;
  const rounds = n[k]!;
  const step = a[k]!;
  if (count > 1) for (let r = 0, i = t; r < rounds; r += 1, i += step) sum += plainSum(table, i, n, a, from, count - 1);
  else for (let r = 0, i = t; r < rounds; r += 1, i += step) sum += table[i]!;
  return sum;
}
