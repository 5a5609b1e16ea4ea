import type { Facts } from '../evidence/facts.ts';
import { sweepFacts } from '../belief/sweepFacts.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { jointLines } from './jointLines.ts';
import type { LinearFunction } from './linearFunction.ts';

/** The posterior of the leading cause as an exact function of one number of the model, all others unchanged (the rest of its row shrinking
 * or growing in proportion): (constant + slope x) of `numerator` over that of `denominator`. */
export interface NumberSensitivity {
  /** JSON Pointer of the number in the model. */
  readonly path: string;
  readonly value: number;
  /** 5-95 % range of the number. */
  readonly low: number;
  readonly high: number;
  readonly numerator: LinearFunction;
  readonly denominator: LinearFunction;
  /** Posterior of the leading cause at `low` and at `high`. */
  readonly posteriorAtLow: number;
  readonly posteriorAtHigh: number;
  /** Where another cause takes the lead, and which: the nearest such value, if there is one between 0 and 1 (any positive weight). */
  readonly flip?: { readonly at: number; readonly cause: string; readonly withinRange: boolean };
}

/** How the leading cause depends on single numbers, the most influential first (by how far its posterior changes over the number's range). */
export interface LeaderSensitivity {
  readonly leading: string;
  readonly functions: readonly NumberSensitivity[];
}

/** All one-way sensitivity functions of the leading cause, exactly: P(evidence, cause) is linear in every weight, row entry and state
 * probability, in the chance that a repair cures and in that of a fault that goes without a cure; the slopes come from one sweep per test or
 * repair on record and one for the mechanisms, not from repeated inference. Left out is what is not linear: rows of tests that were run
 * more than once, chances of a repair tried twice, and the fault that goes without a cure after several repairs.
 * @throws EvidenceError as `rankCauses` does.
 * @example
 * ```ts
 * const { leading, functions } = leaderSensitivity(pump, { context: {}, observations: [] });
 * leading; // 'fuse-blown'
 * functions[0]?.path; // '/causes/0/weight/best'
 * functions[0]?.flip; // { at: 250, cause: 'hose-leak', withinRange: true }
 * ```
 * Source: Laskey 1995; Castillo, Gutierrez & Hadi 1997; Coupe & van der Gaag 2002 (form); Kjaerulff & van der Gaag 2000 (computation). */
export function leaderSensitivity(compiled: CompiledModel, facts: Facts): LeaderSensitivity {
  // looks at the facts first
  const { posterior } = sweepFacts(compiled, facts, { posteriorOnly: true });
  const lines = jointLines(compiled, facts);
  const leader = posterior.indexOf(posterior.reduce((a, b) => Math.max(a, b)));
  const functions = lines
    .map(({ path, value, low, high, unbounded, constants, slopes }): NumberSensitivity => {
      const denominator = sumLines(constants, slopes);
      const numerator = { constant: constants[leader]!, slope: slopes[leader]! };
      const at = (x: number): number => evaluateAt(numerator, x) / evaluateAt(denominator, x);
      const flip = nearestFlip(compiled.causes, leader, value, constants, slopes, unbounded ? Infinity : 1);
      return {
        path,
        value,
        low,
        high,
        numerator,
        denominator,
        posteriorAtLow: at(low),
        posteriorAtHigh: at(high),
        ...(flip === undefined ? {} : { flip: { ...flip, withinRange: flip.at >= low && flip.at <= high } }),
      };
    })
    .sort((a, b) => swing(b) - swing(a));
  return { leading: compiled.causes[leader]!, functions };
}

function swing({ posteriorAtLow, posteriorAtHigh }: NumberSensitivity): number {
  return Math.abs(posteriorAtHigh - posteriorAtLow);
}

function evaluateAt({ constant, slope }: LinearFunction, x: number): number {
  return constant + slope * x;
}

function sumLines(constants: Float64Array, slopes: Float64Array): LinearFunction {
  return { constant: constants.reduce((a, b) => a + b, 0), slope: slopes.reduce((a, b) => a + b, 0) };
}

/** Where another cause's line crosses the leader's, nearest to the present value. */
function nearestFlip(
  causes: readonly string[],
  leader: number,
  value: number,
  constants: Float64Array,
  slopes: Float64Array,
  limit: number,
): { at: number; cause: string } | undefined {
  let nearest: { at: number; cause: string } | undefined;
  for (let c = 0; c < causes.length; c += 1) {
    const slope = slopes[leader]! - slopes[c]!;
    if (c === leader || slope === 0) continue;
    const at = (constants[c]! - constants[leader]!) / slope;
    if (!(at > 0 && at < limit)) continue;
    if (nearest === undefined || Math.abs(at - value) < Math.abs(nearest.at - value))
      nearest = { at, cause: causes[c]! };
  }
  return nearest;
}
