import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import type { Turns } from './turns.ts';

/** How a computation in turns gives way. */
export interface RunOptions<Meanwhile> {
  /** Called after every turn: a promise to wait for, or `undefined` when it is not time for a pause yet. What it rejects with or throws
   * gives the computation up. */
  readonly pause: () => PromiseLike<unknown> | undefined;
  /** Called with every better answer before the last. */
  readonly onMeanwhile?: (answer: Meanwhile) => void;
}

const optionsSchema = z.strictObject({
  pause: optionSchemas.callback,
  onMeanwhile: z.optional(optionSchemas.callback),
});

/** Runs a computation turn by turn and lets others have their turn between, so that it can be stopped: a question whose `signal` is aborted
 * during a pause answers from what it has then; one that is no longer wanted at all is given up by a pause that rejects.
 * @throws OptionError at once; what the computation or the pause throws
 * @example runInTurns(credibleRankingInTurns(compiled, { context: {}, observations: [] }, { draws: 3 }), { pause: () => Promise.resolve() }) */
export async function runInTurns<Answer, Meanwhile = never>(
  turns: Turns<Answer, Meanwhile>,
  options: RunOptions<Meanwhile>,
): Promise<Answer> {
  checkOptions(optionsSchema, options);
  const { pause, onMeanwhile } = options;
  for (;;) {
    const turn = turns.next();
    if (turn.done === true) return turn.value;
    if (turn.value !== undefined) onMeanwhile?.(turn.value);
    await pause();
  }
}
