import { contractRows } from './contractRows.ts';

/** dst[d + k] += a[i] * b[j] over a nest of loops, innermost first: loop l runs n[l] times and steps stepA[l] in `a`, stepB[l] in `b` and
 * stepD[l] in `dst` (0: summed out). The caller clears `dst` first. Allocates nothing. */
export function contractAlong(
  dst: Float64Array,
  d: number,
  a: Float64Array,
  i: number,
  b: Float64Array,
  j: number,
  n: Int32Array,
  stepD: Int32Array,
  stepA: Int32Array,
  stepB: Int32Array,
  count: number,
): void {
  if (count > 2) {
    const k = count - 1;
    for (let r = 0, dk = d, ik = i, jk = j; r < n[k]!; r += 1, dk += stepD[k]!, ik += stepA[k]!, jk += stepB[k]!) {
      contractAlong(dst, dk, a, ik, b, jk, n, stepD, stepA, stepB, k);
    }
    return;
  }
  const [n0, n1] = [count > 0 ? n[0]! : 1, count > 1 ? n[1]! : 1];
  const [d0, a0, b0] = [stepD[0]!, stepA[0]!, stepB[0]!];
  const [d1, a1, b1] = [stepD[1]!, stepA[1]!, stepB[1]!];
  if (d1 === 0 && d0 !== 0) {
    contractRows(dst, d, a, i, b, j, n0, d0, a0, b0, n1, a1, b1);
    return;
  }
  for (let r = 0, p = d, q = i, s = j; r < n1; r += 1, p += d1, q += a1, s += b1) {
    if (d0 === 0) {
      let sum = 0;
      for (let k = 0, x = q, y = s; k < n0; k += 1, x += a0, y += b0) sum += a[x]! * b[y]!;
      dst[p]! += sum;
    } else if (a0 === 0) {
      const weight = a[q]!;
      for (let k = 0, z = p, y = s; k < n0; k += 1, z += d0, y += b0) dst[z]! += weight * b[y]!;
    } else {
      for (let k = 0, z = p, x = q, y = s; k < n0; k += 1, z += d0, x += a0, y += b0) dst[z]! += a[x]! * b[y]!;
    }
  }
}
