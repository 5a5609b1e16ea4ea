/** dst[d + i] += log(by[o + j]) for all i, j of a loop nest (see `LoopNest`; `dst` steps by `a`, `by` by `b`).
 * @param from first loop in `n`, `a`, `b`. @param count number of loops. */
export function addLogsAlong(
  dst: Float64Array,
  d: number,
  by: Float64Array,
  o: number,
  n: Int32Array,
  a: Int32Array,
  b: Int32Array,
  from: number,
  count: number,
): void {
  if (count === 0) {
    dst[d]! += Math.log(by[o]!);
    return;
  }
  const k = from + count - 1;
  for (let r = 0; r < n[k]!; r += 1) addLogsAlong(dst, d + r * a[k]!, by, o + r * b[k]!, n, a, b, from, count - 1);
}
