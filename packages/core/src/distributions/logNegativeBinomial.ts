import { logGamma } from './logGamma.ts';

/** Natural log of the negative binomial probability of `count` failures before `size` successes of probability `p`; `size` > 0 need not be
 * whole, where jstat's `negbin` is NaN. Gelman et al., Bayesian Data Analysis (3rd ed. 2013), appendix A. */
export function logNegativeBinomial(count: number, size: number, p: number): number {
  const choose = logGamma(count + size) - logGamma(size) - logGamma(count + 1);
  return choose + size * Math.log(p) + (count === 0 ? 0 : count * Math.log1p(-p));
}
