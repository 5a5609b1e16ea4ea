import type { ThresholdQuestion } from './thresholdQuestion.ts';

/** Makes a quick estimate of the chance that a sequence of tests brings the group to the threshold if the cause is in it, on the
 * configurations alone: each stands for its cause in proportion. Causes of which no configuration is known do not count. */
export function makeSequenceScreen({
  problem,
  group,
  threshold,
  configurations,
}: ThresholdQuestion): (sequence: readonly number[]) => number {
  const { cause, weight, outcomeGiven } = configurations;
  const { posterior } = problem.start;
  const covered = new Float64Array(posterior.length);
  cause.forEach((c, h) => (covered[c]! += weight[h]!));
  const whole = weight.map((w, h) => (w * posterior[cause[h]!]!) / covered[cause[h]!]!);
  const isIn = Uint8Array.from(cause, (c) => group[c]!);
  const count = whole.length;
  let now = 0;
  for (let h = 0; h < count; h += 1) now += whole[h]! * isIn[h]!;

  const walk = (w: Float64Array, sequence: readonly number[], at: number): number => {
    const rows = outcomeGiven(sequence[at]!);
    const outcomes = problem.tests[sequence[at]!]!.outcomes.length;
    const isLast = at + 1 === sequence.length;
    let reached = 0;
    for (let o = 0; o < outcomes; o += 1) {
      if (!isLast) {
        const then = new Float64Array(count);
        for (let h = 0; h < count; h += 1) then[h] = w[h]! * rows[h * outcomes + o]!;
        reached += walk(then, sequence, at + 1);
        continue;
      }
      let inside = 0;
      let all = 0;
      for (let h = 0; h < count; h += 1) {
        const x = w[h]! * rows[h * outcomes + o]!;
        all += x;
        inside += x * isIn[h]!;
      }
      if (inside >= threshold * all) reached += inside;
    }
    return reached;
  };
  return (sequence) => (now > 0 && sequence.length > 0 ? walk(whole, sequence, 0) / now : 0);
}
