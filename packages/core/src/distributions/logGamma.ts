// Coefficients B(2k) / (2k (2k - 1)) of the asymptotic series, k = 1..8 (NIST DLMF 5.11.1, Bernoulli numbers 24.2).
const SERIES = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156, -3617 / 122400] as const;
// From here on the series above is exact to the last digit: its next term is below 1e-19.
const FAR = 15;

/** Natural logarithm of the gamma function, `x` > 0; relative error about 1e-15, absolute near its zeros at 1 and 2.
 * Stirling's series (DLMF 5.11.1) after raising the argument by the recurrence (DLMF 5.5.1). jstat's `gammaln` is off by 2e-13
 * relative at 171 already, which is 1e-10 of a probability: too much for the 1e-12 the published values are held to. */
export function logGamma(x: number): number {
  let product = 1;
  let at = x;
  while (at < FAR) {
    product *= at;
    at += 1;
  }
  const inverse = 1 / at;
  const squared = inverse * inverse;
  let series = 0;
  for (let k = SERIES.length - 1; k >= 0; k -= 1) series = series * squared + SERIES[k]!;
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series * inverse - Math.log(product);
}
