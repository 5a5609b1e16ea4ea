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
  if (count > 3) {
    const k = from + count - 1;
    const rounds = n[k]!;
    const stepA = a[k]!;
    const stepB = b[k]!;
    for (let r = 0, at = s, to = o; r < rounds; r += 1, at += stepA, to += stepB)
      addAlong(src, at, dst, to, n, a, b, from, count - 1);
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
  // short sums are spelled out: a loop of two or three rounds costs more than its additions
  for (let t = 0, ps = s, qs = o; t < n2; t += 1, ps += a2, qs += b2) {
    if (b0 === 0) {
      if (n0 === 2) {
        for (let r = 0, p = ps, q = qs; r < n1; r += 1, p += a1, q += b1) dst[q]! += src[p]! + src[p + a0]!;
      } else if (n0 === 3) {
        for (let r = 0, p = ps, q = qs; r < n1; r += 1, p += a1, q += b1)
          dst[q]! += src[p]! + src[p + a0]! + src[p + 2 * a0]!;
      } else {
        for (let r = 0, p = ps, q = qs; r < n1; r += 1, p += a1, q += b1) {
          // two sums at once: additions that wait for each other take most of the time
          let even = 0;
          let odd = 0;
          let i = p;
          let k = n0;
          for (; k > 3; k -= 4, i += 4 * a0) {
            even += src[i]! + src[i + 2 * a0]!;
            odd += src[i + a0]! + src[i + 3 * a0]!;
          }
          for (; k > 0; k -= 1, i += a0) even += src[i]!;
          dst[q]! += even + odd;
        }
      }
    } else {
      // rows that add to the same numbers four at a time
      let r = n1;
      let p = ps;
      let q = qs;
      if (b1 === 0) {
        for (; r > 3; r -= 4, p += 4 * a1) {
          for (let k = 0, i = p, j = q; k < n0; k += 1, i += a0, j += b0)
            dst[j]! += src[i]! + src[i + a1]! + (src[i + 2 * a1]! + src[i + 3 * a1]!);
        }
        if (r > 1) {
          for (let k = 0, i = p, j = q; k < n0; k += 1, i += a0, j += b0) dst[j]! += src[i]! + src[i + a1]!;
          p += 2 * a1;
          r -= 2;
        }
      }
      for (; r > 0; r -= 1, p += a1, q += b1) {
        let k = n0;
        let i = p;
        let j = q;
        for (; k > 3; k -= 4, i += 4 * a0, j += 4 * b0) {
          dst[j]! += src[i]!;
          dst[j + b0]! += src[i + a0]!;
          dst[j + 2 * b0]! += src[i + 2 * a0]!;
          dst[j + 3 * b0]! += src[i + 3 * a0]!;
        }
        for (; k > 0; k -= 1, i += a0, j += b0) dst[j]! += src[i]!;
      }
    }
  }
}
