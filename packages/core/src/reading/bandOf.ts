import type { MeasuredReading } from '../model/readingModel.ts';

/** The outcomes of the test that a compared value can be called: one where the number decides, several where it leaves open which
 * (a leak of 40 % does not say where the air escapes), none where the model names no bands. */
export function bandOf({ bands = [] }: MeasuredReading, compared: number): readonly string[] {
  const fitting = bands.filter(({ from = -Infinity, to = Infinity }) => compared >= from && compared < to);
  return [...new Set(fitting.flatMap(({ outcomes }) => outcomes))];
}

/** The outcome that a compared value beyond the range of the distributions means; `undefined` within it, or when it then says nothing. */
export function outcomeBeyond({ beyond = {}, wild }: MeasuredReading, compared: number): string | undefined {
  if (compared < wild.low) return beyond.below;
  return compared > wild.high ? beyond.above : undefined;
}
