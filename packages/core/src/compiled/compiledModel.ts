import type { CompiledSweep, LikelihoodFactor, TargetTable } from '@faultodds/inference/sweeps';
import type { ClosedForTest } from './closedForTest.ts';
import type { FirstMatches } from './firstMatches.ts';
import type { Hypothesis } from './hypotheses.ts';
import type { Model, Test } from '../model/model.ts';

/** A test made ready: its table over mechanisms (and the cause), and its likelihood factors, made once each. */
export interface CompiledTest {
  readonly test: Test;
  readonly index: number;
  readonly outcomes: readonly string[];
  /** Which of its rows applies where. */
  readonly matches: FirstMatches;
  /** P(outcome | mechanisms, cause); filled when first asked. */
  readonly table: TargetTable;
  /** Factors already made, by what they say. Filled by `likelihoodOfRuns` only. */
  readonly factors: Map<string, LikelihoodFactor>;
}

declare const madeByCompileModel: unique symbol;

/** A model made ready for questions; opaque outside this package. Arrays run over hypotheses: the causes in the model's order and,
 * when compiled for pairs, every pair of them. */
export interface CompiledModel {
  /** Nobody else makes one. */
  readonly [madeByCompileModel]: true;
  readonly model: Model;
  /** Ids of the hypotheses. @internal */
  readonly causes: readonly string[];
  /** @internal */
  readonly causeIndex: ReadonlyMap<string, number>;
  /** @internal */
  readonly activeFractions: Float64Array;
  /** @internal */
  readonly tests: ReadonlyMap<string, CompiledTest>;
  /** @internal */
  readonly testList: readonly CompiledTest[];
  /** @internal */
  readonly sweep: CompiledSweep;
  /** access id -> bit; prerequisites of each access, itself included, as bits. @internal */
  readonly accessBit: ReadonlyMap<string, number>;
  /** @internal */
  readonly accessClosure: readonly number[];
  /** repair -> the causes it cures and how surely. @internal */
  readonly cures: readonly { readonly cause: number; readonly success: number }[][];
  /** What does not change with the numbers. @internal */
  readonly structure: {
    readonly hypotheses: readonly Hypothesis[];
    readonly causes: readonly string[];
    readonly causeIndex: ReadonlyMap<string, number>;
    readonly mechanismMatches: readonly (FirstMatches | undefined)[];
    readonly testMatches: readonly FirstMatches[];
    readonly accessBit: ReadonlyMap<string, number>;
    readonly accessClosure: readonly number[];
    /** Access bits of each test, prerequisites included, and what has to be closed for it. */
    readonly testAccess: readonly number[];
    readonly closedForTest: readonly ClosedForTest[];
    /** Tests and intake features that ask one question, see `questionsOf`. */
    readonly questions: ReadonlyMap<string, readonly string[]>;
  };
}
