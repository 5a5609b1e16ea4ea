import { logGamma } from './logGamma.ts';

/** The regularised incomplete gamma functions P (`lower`) and Q (`upper`), each computed without subtraction where it is the small
 * one; `shape` > 0, `x` >= 0. Series (DLMF 8.11.4) below shape + 1, continued fraction (DLMF 8.9.2, modified Lentz) above.
 * P is the distribution function of a Gamma with that shape and rate 1; Q(k + 1, m) is the Poisson P(count <= k) at mean m. */
export function regularizedGamma(shape: number, x: number): { readonly lower: number; readonly upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const front = Math.exp(shape * Math.log(x) - x - logGamma(shape));
  if (x < shape + 1) {
    const lower = front * series(shape, x);
    return { lower, upper: 1 - lower };
  }
  const upper = front * fraction(shape, x);
  return { lower: 1 - upper, upper };
}

function series(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; term > sum * 1e-17; n += 1) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

// b0 + a1/(b1 + a2/(b2 + …)) from the front, with the usual guard against a vanishing denominator
function fraction(shape: number, x: number): number {
  const tiny = 1e-300;
  let b = x + 1 - shape;
  let c = 1 / tiny;
  let d = 1 / (b === 0 ? tiny : b);
  let value = d;
  for (let n = 1; n < 100_000; n += 1) {
    const a = -n * (n - shape);
    b += 2;
    d = a * d + b;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = b + a / c;
    if (Math.abs(c) < tiny) c = tiny;
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return value;
}
