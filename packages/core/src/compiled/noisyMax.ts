/** Distribution of the worse of two independent draws over states that are ordered from sound to worst: noisy-MAX of two rows.
 * Length of both and of the result = number of states.
 * Source: Diez 1993, UAI 9:99-105 (generalised noisy gates); Henrion 1989 for the binary case. */
export function noisyMax(a: readonly number[], b: readonly number[]): number[] {
  let [upToA, upToB, before] = [0, 0, 0];
  return a.map((p, s) => {
    upToA += p;
    upToB += b[s]!;
    const upTo = upToA * upToB;
    const here = upTo - before;
    before = upTo;
    return Math.max(0, here);
  });
}
