/** dst[o + j] += src[s + i] for all i, j of a loop nest (see `LoopNest`; `src` steps by `a`, `dst` by `b`). The caller clears `dst`
 * first. Allocates nothing. @param from first loop in `n`, `a`, `b`. @param count number of loops. */
export function addAlong(
  src: Float64Array,
  s: number,
  dst: Float64Array,
  o: number,
  n: Int32Array,
  a: Int32Array,
  b: Int32Array,
  from: number,
  count: number,
): void {
  if (count > 2) {
    const k = from + count - 1;
    const rounds = n[k]!;
    const stepA = a[k]!;
    const stepB = b[k]!;
    for (let r = 0, at = 0, bt = 0; r < rounds; r += 1, at += stepA, bt += stepB) {
      addAlong(src, s + at, dst, o + bt, n, a, b, from, count - 1);
    }
    return;
  }
  if (count === 0) {
    dst[o]! += src[s]!;
    return;
  }
  const n0 = n[from]!;
  const a0 = a[from]!;
  const b0 = b[from]!;
  const n1 = count > 1 ? n[from + 1]! : 1;
  const a1 = count > 1 ? a[from + 1]! : 0;
  const b1 = count > 1 ? b[from + 1]! : 0;
  if (b0 === 0) {
    for (let r = 0, p = s, q = o; r < n1; r += 1, p += a1, q += b1) {
      let sum = 0;
      for (let k = 0, i = p; k < n0; k += 1, i += a0) sum += src[i]!;
      dst[q]! += sum;
    }
  } else if (b0 === 1 && a0 === 1) {
    for (let r = 0, p = s, q = o; r < n1; r += 1, p += a1, q += b1) {
      for (let i = p, j = q, end = p + n0; i < end; i += 1, j += 1) dst[j]! += src[i]!;
    }
  } else {
    for (let r = 0, p = s, q = o; r < n1; r += 1, p += a1, q += b1) {
      for (let k = 0, i = p, j = q; k < n0; k += 1, i += a0, j += b0) dst[j]! += src[i]!;
    }
  }
}
