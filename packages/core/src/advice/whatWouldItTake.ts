import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Belief } from '../belief/belief.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import { unknownId } from '../validation/findUnknownId.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { stepFactsOf } from '../steps/stepFactsOf.ts';
import type { StepFacts } from '../steps/stepFacts.ts';
import { accessBits } from '../cost/accessBits.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { evidenceOf } from '../evidence/evidenceOf.ts';
import { decidingTestsInTurns, type DecidingQuestion, type DecidingTests } from './decidingTests.ts';
import { compileConfigurations } from '../problem/compileConfigurations.ts';
import type { DecisionProblem } from '../problem/decisionProblem.ts';
import { makePreference } from './makePreference.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import type { Cancel } from '../turns/cancel.ts';
import { runToEnd } from '../turns/runToEnd.ts';
import type { Turns } from '../turns/turns.ts';

/** Something one hesitates to do: opening an access, or a repair. */
export type CostlyStep =
  { readonly kind: 'access'; readonly access: string } | { readonly kind: 'repair'; readonly repair: string };

/** When a costly step would be the best next one.
 * - `already-open`: the access is open, there is nothing to decide.
 * - `impossible`: none of its causes is possible here (or the repair failed already).
 * - `already-best`: it is the best next step now.
 * - `reachable`: it becomes best at `threshold`.
 * - `never`: not even if its causes were certain; other steps stay better. */
export interface WhatItTakes {
  /** The step that was asked about, with what it costs and can do from here. */
  readonly step: CostlyStep & StepFacts;
  readonly status: 'already-open' | 'impossible' | 'already-best' | 'reachable' | 'never';
  /** Causes that speak for the step: those a repair behind the access cures, or the repair itself. */
  readonly causes: readonly string[];
  /** Their probability now. */
  readonly probability: number;
  /** Their probability at which the step becomes (or became) best, the proportions among them and among the others unchanged. */
  readonly threshold: number | undefined;
  /** The cheapest tests likely to bring them there; `undefined` where there is nothing to reach, or where no sequence
   * that was looked at brings them there. */
  readonly tests: DecidingTests | undefined;
  /** How many sequences of tests were looked at for `tests`, and how many were not because the budget or the signal ended the search; both 0
   * where there is nothing to search. */
  readonly search: { readonly examined: number; readonly unexamined: number };
}

/** How long to search for deciding tests, and what to call with every better answer. Status and threshold take some fifty evaluations of
 * all tests and are always found. */
export interface WhatItTakesOptions {
  /** Sequences of tests looked at, at most. Default 4000. */
  readonly evaluations?: number;
  /** Looked at after every sequence, and after every test of one that is judged: ends the search with the best answer so far. */
  readonly signal?: Cancel;
  /** Called as soon as the threshold is known, and with every better answer. */
  readonly onImprove?: (answer: WhatItTakes) => void;
}

const stepSchema = z.discriminatedUnion('kind', [
  z.looseObject({ kind: z.literal('access'), access: z.string() }),
  z.looseObject({ kind: z.literal('repair'), repair: z.string() }),
]);
const optionsSchema = z.strictObject({
  evaluations: z.optional(optionSchemas.budget(0)),
  signal: z.optional(optionSchemas.signal),
  onImprove: z.optional(optionSchemas.callback),
});

const CERTAIN = 1 - 1e-6;
const GRID = 24;
const BISECTIONS = 24;

/** How probable the causes behind a costly step must be for it to be the best next one, how probable they are, and which tests could decide
 * it. Best means least expected cost one step ahead: each test followed by the best repair sequence, against each repair sequence.
 * @throws EvidenceError `access-unknown`, `repair-unknown`, and as `compileCaseProblem` does @throws OptionError
 * @example
 * ```ts
 * const intake = beliefOf(pump, { context: {}, observations: [] });
 * const answer = whatWouldItTake(pump, intake, {}, { kind: 'repair', repair: 'change-hose' });
 * answer.status; // 'reachable'
 * [answer.probability, answer.threshold]; // [0.25, 0.8762]
 * ``` */
export function whatWouldItTake(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  step: CostlyStep,
  options: WhatItTakesOptions = {},
): WhatItTakes {
  return runToEnd(whatWouldItTakeInTurns(compiled, belief, circumstances, step, options));
}

/** The same, giving way after every look at all tests, after every sequence and after every test of one that is judged.
 * @throws EvidenceError with the first turn @throws OptionError at once
 * @example
 * ```ts
 * const intake = beliefOf(pump, { context: {}, observations: [] });
 * const turns = whatWouldItTakeInTurns(pump, intake, {}, { kind: 'repair', repair: 'change-hose' });
 * (await runInTurns(turns, { pause: () => Promise.resolve() })).status; // 'reachable'
 * ``` */
export function whatWouldItTakeInTurns(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  step: CostlyStep,
  options: WhatItTakesOptions = {},
): Turns<WhatItTakes> {
  checkOptions(stepSchema, step, '/step');
  checkOptions(optionsSchema, options);
  return turnsOf(compiled, belief, circumstances, step, options);
}

function* turnsOf(
  compiled: CompiledModel,
  belief: Belief,
  circumstances: Circumstances,
  step: CostlyStep,
  options: WhatItTakesOptions,
): Turns<WhatItTakes> {
  const problem = compileCaseProblem(compiled, belief, circumstances);
  const { posterior, open } = problem.start;
  const { belongs, cures, bits } = scopeOf(compiled, problem, step);
  const causes = problem.causes.filter((_, c) => cures[c] === 1);
  const probability = posterior.reduce((sum, p, c) => sum + p * cures[c]!, 0);
  const search = { examined: 0, unexamined: 0 };
  const proposed = step.kind === 'access' ? ({ kind: 'open-access', access: step.access } as const) : step;
  const asked = { ...step, ...stepFactsOf(compiled, belief.facts.context, circumstances, proposed) };
  const answer = { step: asked, causes, probability, threshold: undefined, tests: undefined, search };
  if (step.kind === 'access' && (open & bits) === bits) return { status: 'already-open', ...answer };
  if (!(probability > 0)) return { status: 'impossible', ...answer };

  const preference = makePreference(problem, belongs);
  const isBestAt = function* (p: number): Turns<boolean> {
    const isBest = preference(reweigh(posterior, cures, probability, p)) <= 0;
    yield;
    return isBest;
  };
  if (probability >= CERTAIN) return { status: (yield* isBestAt(probability)) ? 'already-best' : 'never', ...answer };
  if (yield* isBestAt(probability)) {
    return { status: 'already-best', ...answer, threshold: (yield* crossing(isBestAt, probability, 0)) ?? 0 };
  }
  const threshold = yield* crossing(isBestAt, probability, CERTAIN);
  if (threshold === undefined) return { status: 'never', ...answer };
  const reachable = { status: 'reachable', ...answer, threshold } as const;
  options.onImprove?.(reachable);
  // both sides at one half: of a rare group the most probable configurations would show nothing
  const half = reweigh(posterior, cures, probability, 0.5);
  const tests = problem.tests.map(({ id }) => compiled.tests.get(id)!);
  const question: DecidingQuestion = {
    problem,
    belongs,
    group: cures,
    threshold,
    configurations: compileConfigurations(compiled, evidenceOf(compiled, belief.facts), half, tests),
    ...(options.evaluations === undefined ? {} : { evaluations: options.evaluations }),
    ...(options.signal === undefined ? {} : { signal: options.signal }),
    onImprove: (found) => options.onImprove?.({ ...reachable, tests: found }),
  };
  const { tests: found, ...searched } = yield* decidingTestsInTurns(question);
  return { ...reachable, tests: found, search: searched };
}

interface Scope {
  /** Whether a test or repair of the problem is part of the step. */
  readonly belongs: (kind: 'test' | 'repair', index: number) => boolean;
  /** cause -> 1 where it speaks for the step. */
  readonly cures: Uint8Array;
  readonly bits: number;
}

function scopeOf(compiled: CompiledModel, problem: DecisionProblem, step: CostlyStep): Scope {
  const { model } = compiled;
  const cures = new Uint8Array(problem.causes.length);
  const repairModel = new Map(model.repairs.map((repair) => [repair.id, repair]));
  if (step.kind === 'repair' && !repairModel.has(step.repair)) {
    throw new EvidenceError([unknownId('repair', step.repair, repairModel.keys(), '/repair')]);
  }
  const bits = step.kind === 'access' ? accessBits(compiled, [step.access]) : 0;
  const bit = step.kind === 'access' ? compiled.accessBit.get(step.access)! : 0;
  const isRepairBehind = problem.repairs.map(({ id }) =>
    step.kind === 'repair' ? id === step.repair : (accessBits(compiled, repairModel.get(id)!.access) & bit) !== 0,
  );
  isRepairBehind.forEach((isBehind, index) => {
    if (isBehind) for (const { cause } of problem.repairFacts.cures[index]!) cures[cause] = 1;
  });
  const belongs = (kind: 'test' | 'repair', index: number): boolean =>
    kind === 'repair' ? isRepairBehind[index]! : (problem.testAccess[index]! & bit) !== 0;
  return { belongs, cures, bits };
}

/** The posterior with the group at probability `to`, proportions inside and outside kept. */
function reweigh(posterior: Float64Array, cures: Uint8Array, now: number, to: number): Float64Array {
  // a certain group leaves no proportions outside to keep: 0/0 would spread
  if (to === now) return posterior;
  return posterior.map((p, c) => (cures[c] === 1 ? (p * to) / now : (p * (1 - to)) / (1 - now)));
}

/** Where the step first becomes, or ceases to be, the best on the way from one probability to another, walked in log odds; `undefined` if it never does. */
function* crossing(isBestAt: (p: number) => Turns<boolean>, from: number, to: number): Turns<number | undefined> {
  const least = 1 - CERTAIN;
  const logit = (p: number): number => Math.log(p / (1 - p));
  const start = logit(Math.min(CERTAIN, Math.max(least, from)));
  const end = logit(Math.min(CERTAIN, Math.max(least, to)));
  const probabilityAt = (x: number): number => 1 / (1 + Math.exp(-x));
  const isBest = yield* isBestAt(from);
  let low = start;
  for (let at = 1; at <= GRID; at += 1) {
    let high = start + ((end - start) * at) / GRID;
    if ((yield* isBestAt(probabilityAt(high))) === isBest) {
      low = high;
      continue;
    }
    for (let turn = 0; turn < BISECTIONS; turn += 1) {
      const middle = (low + high) / 2;
      if ((yield* isBestAt(probabilityAt(middle))) === isBest) low = middle;
      else high = middle;
    }
    return probabilityAt(isBest ? low : high);
  }
  return undefined;
}
