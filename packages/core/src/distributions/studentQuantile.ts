/// <reference path="./jstat.d.ts" />
import jStat from 'jstat';

/** Quantile of Student's t distribution with `degreesOfFreedom` at least 1, `p` in (0, 1). For intervals of means. */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  return jStat.studentt.inv(p, degreesOfFreedom);
}
