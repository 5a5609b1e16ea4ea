/** dst[d + i] = src[s + i] * by[o + j] for all i, j of a loop nest (see `LoopNest`; `dst` and `src` step alike, by `a`; `by` steps by `b`).
 * `dst` may be `src`. Allocates nothing. @param from first loop in `n`, `a`, `b`. @param count number of loops. */
export function multiplyAlong(
  dst: Float64Array,
  d: number,
  src: Float64Array,
  s: number,
  by: Float64Array,
  o: number,
  n: Int32Array,
  a: Int32Array,
  b: Int32Array,
  from: number,
  count: number,
): void {
  if (count > 3) {
    const k = from + count - 1;
    const rounds = n[k]!;
    const stepA = a[k]!;
    const stepB = b[k]!;
    for (let r = 0, at = 0, bt = o; r < rounds; r += 1, at += stepA, bt += stepB) {
      multiplyAlong(dst, d + at, src, s + at, by, bt, n, a, b, from, count - 1);
    }
    return;
  }
  const n0 = count > 0 ? n[from]! : 1;
  const a0 = count > 0 ? a[from]! : 1;
  const b0 = count > 0 ? b[from]! : 1;
  const n1 = count > 1 ? n[from + 1]! : 1;
  const a1 = count > 1 ? a[from + 1]! : 0;
  const b1 = count > 1 ? b[from + 1]! : 0;
  const n2 = count > 2 ? n[from + 2]! : 1;
  const a2 = count > 2 ? a[from + 2]! : 0;
  const b2 = count > 2 ? b[from + 2]! : 0;
  const shift = s - d;
  for (let t = 0, ps = d, qs = o; t < n2; t += 1, ps += a2, qs += b2) {
    if (b0 === 0) {
      if (n0 === 2) {
        for (let r = 0, p = ps, q = qs; r < n1; r += 1, p += a1, q += b1) {
          const x = by[q]!;
          dst[p] = src[p + shift]! * x;
          dst[p + a0] = src[p + a0 + shift]! * x;
        }
      } else {
        for (let r = 0, p = ps, q = qs; r < n1; r += 1, p += a1, q += b1) {
          const x = by[q]!;
          let k = n0;
          let i = p;
          for (; k > 3; k -= 4, i += 4 * a0) {
            dst[i] = src[i + shift]! * x;
            dst[i + a0] = src[i + a0 + shift]! * x;
            dst[i + 2 * a0] = src[i + 2 * a0 + shift]! * x;
            dst[i + 3 * a0] = src[i + 3 * a0 + shift]! * x;
          }
          for (; k > 0; k -= 1, i += a0) dst[i] = src[i + shift]! * x;
        }
      }
    } else {
      // the longer loop inside, four rounds at a time: what a loop does around its body costs as much as one product
      const swap = n0 < n1;
      const inner = swap ? n1 : n0;
      const outer = swap ? n0 : n1;
      const ai = swap ? a1 : a0;
      const bi = swap ? b1 : b0;
      const ao = swap ? a0 : a1;
      const bo = swap ? b0 : b1;
      for (let r = 0, p = ps, q = qs; r < outer; r += 1, p += ao, q += bo) {
        let k = inner;
        let i = p;
        let j = q;
        for (; k > 3; k -= 4, i += 4 * ai, j += 4 * bi) {
          dst[i] = src[i + shift]! * by[j]!;
          dst[i + ai] = src[i + ai + shift]! * by[j + bi]!;
          dst[i + 2 * ai] = src[i + 2 * ai + shift]! * by[j + 2 * bi]!;
          dst[i + 3 * ai] = src[i + 3 * ai + shift]! * by[j + 3 * bi]!;
        }
        for (; k > 0; k -= 1, i += ai, j += bi) dst[i] = src[i + shift]! * by[j]!;
      }
    }
  }
}
