/** dst[d + k stepD] += sum over r of a[i + k stepA + r rowA] * b[j + k stepB + r rowB], k below `length`, r below `rows`: up to four rows of
 * one pass, so that `dst` is read and written less often. Allocates nothing. */
export function contractRows(
  dst: Float64Array,
  d: number,
  a: Float64Array,
  i: number,
  b: Float64Array,
  j: number,
  length: number,
  stepD: number,
  stepA: number,
  stepB: number,
  rows: number,
  rowA: number,
  rowB: number,
): void {
  let r = 0;
  let x = i;
  let y = j;
  for (; r + 3 < rows; r += 4, x += 4 * rowA, y += 4 * rowB) {
    if (stepA === 0) {
      const [w0, w1, w2, w3] = [a[x]!, a[x + rowA]!, a[x + 2 * rowA]!, a[x + 3 * rowA]!];
      for (let k = 0, z = d, v = y; k < length; k += 1, z += stepD, v += stepB)
        dst[z]! += w0 * b[v]! + w1 * b[v + rowB]! + (w2 * b[v + 2 * rowB]! + w3 * b[v + 3 * rowB]!);
    } else {
      for (let k = 0, z = d, u = x, v = y; k < length; k += 1, z += stepD, u += stepA, v += stepB)
        dst[z]! +=
          a[u]! * b[v]! +
          a[u + rowA]! * b[v + rowB]! +
          (a[u + 2 * rowA]! * b[v + 2 * rowB]! + a[u + 3 * rowA]! * b[v + 3 * rowB]!);
    }
  }
  for (; r + 1 < rows; r += 2, x += 2 * rowA, y += 2 * rowB) {
    if (stepA === 0) {
      const [w0, w1] = [a[x]!, a[x + rowA]!];
      for (let k = 0, z = d, v = y; k < length; k += 1, z += stepD, v += stepB)
        dst[z]! += w0 * b[v]! + w1 * b[v + rowB]!;
    } else {
      for (let k = 0, z = d, u = x, v = y; k < length; k += 1, z += stepD, u += stepA, v += stepB)
        dst[z]! += a[u]! * b[v]! + a[u + rowA]! * b[v + rowB]!;
    }
  }
  if (r === rows) return;
  if (stepA === 0) {
    const weight = a[x]!;
    for (let k = 0, z = d, v = y; k < length; k += 1, z += stepD, v += stepB) dst[z]! += weight * b[v]!;
  } else {
    for (let k = 0, z = d, u = x, v = y; k < length; k += 1, z += stepD, u += stepA, v += stepB)
      dst[z]! += a[u]! * b[v]!;
  }
}
