import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Facts } from '../evidence/facts.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import type { Advice } from '../advice/advice.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { advise } from '../advice/advise.ts';
import { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
import { changeNumber } from '../compiled/changeNumber.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { isProbabilityAt } from '../model/isProbabilityAt.ts';
import type { Cancel } from '../turns/cancel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';
import { untilAborted } from '../turns/untilAborted.ts';
import { sameStep } from './sameStep.ts';
import { leaderSensitivity } from './leaderSensitivity.ts';

// a row's range may round to 0 or 1, which no probability of a model is
const NEVER_CERTAIN = 1e-6;

/** A number of the model that would change the advice within its range. */
export interface AdviceFlip {
  /** JSON Pointer of the number in the model. */
  readonly path: string;
  readonly value: number;
  /** 5-95 % range of the number. */
  readonly low: number;
  readonly high: number;
  /** The value nearest to the present one, to a hundredth of the range, at which the advice is another. */
  readonly at: number;
  /** The advice there. */
  readonly best: Advice['best'];
}

/** Which numbers are tried, and when to stop. */
export interface AdviceFlipOptions {
  /** How many of the most influential numbers of the ranking are tried, besides those of the step that is advised. Default 12. */
  readonly numbers?: number;
  /** Looked at after every advice: ends with the flips found so far, without one that is being narrowed. */
  readonly signal?: Cancel;
}

const optionsSchema = z.strictObject({
  numbers: z.optional(optionSchemas.budget(0)),
  signal: z.optional(optionSchemas.signal),
});

/** The few numbers that would flip the advice within their own 5-95 % range, and at what value: the most influential numbers of the
 * ranking, and the rows of the test that is advised. Each end of a range is one full update; a flip is then narrowed by halving.
 * Nearest first, as a share of the range.
 * @throws EvidenceError as `beliefOf` and `advise` do @throws OptionError
 * @example
 * ```ts
 * const [flip] = adviceFlips(pump, { context: {}, observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }] });
 * flip?.path; // '/tests/2/rows/1/p/blown'
 * [flip?.value, flip?.at]; // [0.02, 0.0537]
 * flip?.best.kind; // 'test'
 * ``` */
export function adviceFlips(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances = {},
  options: AdviceFlipOptions = {},
): readonly AdviceFlip[] {
  return runToEnd(adviceFlipsInTurns(compiled, facts, circumstances, options));
}

/** The same, giving way after every advice. @throws EvidenceError with the first turn @throws OptionError at once
 * @example
 * ```ts
 * const turns = adviceFlipsInTurns(pump, { context: {}, observations: [{ kind: 'result', id: 'one', test: 'fuse-look', outcome: 'blown' }] });
 * (await runInTurns(turns, { pause: () => Promise.resolve() })).length; // 1
 * ``` */
export function adviceFlipsInTurns(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances = {},
  options: AdviceFlipOptions = {},
): Turns<readonly AdviceFlip[]> {
  checkOptions(optionsSchema, options);
  return flipTurns(compiled, facts, circumstances, options);
}

function* flipTurns(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances,
  options: AdviceFlipOptions,
): Turns<readonly AdviceFlip[]> {
  const { numbers = 12, signal } = options;
  const bestOf = (model: CompiledModel): Advice['best'] => advise(model, beliefOf(model, facts), circumstances).best;
  const now = bestOf(compiled);
  const flips: AdviceFlip[] = [];
  for (const candidate of [
    ...leaderSensitivity(compiled, facts).functions.slice(0, numbers),
    ...rowsOf(compiled, now),
  ]) {
    if (signal?.aborted === true) break;
    const { path, value, low, high } = candidate;
    const there = function* (x: number): Turns<Advice['best']> {
      const best = bestOf(changeNumber(compiled, path, x));
      yield;
      return best;
    };
    const search = function* (last: number): Turns<AdviceFlip | undefined> {
      if (sameStep(yield* there(last), now)) return undefined;
      const at = yield* narrow(value, last, (high - low) / 100, function* (x) {
        return !sameStep(yield* there(x), now);
      });
      return { path, value, low, high, at, best: yield* there(at) };
    };
    for (const end of [low, high]) {
      const last = isProbabilityAt(path) ? Math.min(Math.max(end, NEVER_CERTAIN), 1 - NEVER_CERTAIN) : end;
      if (!(last > 0) || last === value) continue;
      const flip = yield* untilAborted(search(last), signal);
      if (flip !== undefined) flips.push(flip);
    }
  }
  const share = ({ at, value, low, high }: AdviceFlip): number => Math.abs(at - value) / (high - low);
  return flips.sort((a, b) => share(a) - share(b));
}

interface Candidate {
  readonly path: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** The probabilities in the rows of the test that is advised; none for a repair. */
function rowsOf({ model, tests }: CompiledModel, best: Advice['best']): Candidate[] {
  const compiledTest = best.kind === 'test' ? tests.get(best.test) : undefined;
  if (compiledTest === undefined) return [];
  return (model.tests[compiledTest.index]?.rows ?? []).flatMap((row, r) =>
    Object.entries(row.p).map(([outcome, value]): Candidate => {
      const [low, high] = rangeOfProbability(value, row.ess);
      return { path: `/tests/${compiledTest.index}/rows/${r}/p/${outcome}`, value, low, high };
    }),
  );
}

/** The point between `inside` and `outside` nearest to `inside` at which `isOutside` holds, to `step`: halving, one crossing assumed. */
function* narrow(
  inside: number,
  outside: number,
  step: number,
  isOutside: (x: number) => Turns<boolean>,
): Turns<number> {
  let [near, far] = [inside, outside];
  while (Math.abs(far - near) > step) {
    const middle = (near + far) / 2;
    if (yield* isOutside(middle)) far = middle;
    else near = middle;
  }
  return far;
}
