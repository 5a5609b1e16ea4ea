import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import type { Cancel } from '../turns/cancel.ts';

/** Shape of `DoubtOptions`. */
export const doubtOptionsSchema: z.ZodMiniType = z.strictObject({
  draws: z.optional(optionSchemas.whole(1, 100_000)),
  seed: z.optional(optionSchemas.seed),
  signal: z.optional(optionSchemas.signal),
});

/** How many draws, from which seed, and when to stop early. */
export interface DoubtOptions {
  /** Default: 2000 for a ranking, 200 for advice. */
  readonly draws?: number;
  /** Default 1. */
  readonly seed?: number;
  /** Looked at after every draw: ends with the draws made so far (at least one). */
  readonly signal?: Cancel;
}
