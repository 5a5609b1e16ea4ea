import type { TestResult } from '../evidence/observation.ts';
import type { CodeMeaning } from './describeTroubleCode.ts';
import type { TroubleCode } from './troubleCode.ts';

/** What must be known about the engine to read codes for one cylinder. */
export interface CodeOptions {
  readonly suspectCylinder: number;
  /** Number of cylinders; a code of a cylinder beyond it is not used, with its reason. */
  readonly cylinders: number;
  /** Bank of the suspect, as the maker counts. Default: unknown, and codes of either bank count. */
  readonly bank?: 1 | 2;
  /** coil letter -> cylinder it fires. Default: A fires cylinder 1 and so on, with a remark, since the order depends on the maker. */
  readonly cylinderOfCoil?: Readonly<Record<string, number>>;
  /** The list is complete: a missing code counts as well. Default false. */
  readonly listIsComplete?: boolean;
  /** Observation ids are this, a hyphen and the test id. Default `codes`. */
  readonly idPrefix?: string;
}

/** Codes turned into observations. */
export interface CodeObservations {
  readonly observations: readonly TestResult[];
  /** Codes that are not used, with their meaning and the reason. */
  readonly kept: readonly UnusedCode[];
  readonly remarks: readonly CodeRemark[];
}

/** A code that made no observation. */
export interface UnusedCode extends DecodedCode {
  readonly reason:
    | 'says-nothing-here'
    | 'circumstance'
    | 'other-cylinder'
    | 'other-bank'
    | 'cylinder-not-told'
    | 'beyond-the-engine'
    /** The list holds another code that says the opposite. */
    | 'contradictory';
}

/** A code and what it means. */
export interface DecodedCode {
  readonly code: TroubleCode;
  readonly meaning: CodeMeaning;
}

/** Something about the list that a reader should know. */
export type CodeRemark =
  /** Coil letters were taken in the order of the cylinders. */
  | { readonly kind: 'coil-order-assumed'; readonly codes: readonly string[] }
  /** Codes of other cylinders and none of the suspect: is it the right suspect? */
  | { readonly kind: 'suspect-not-named'; readonly codes: readonly string[] }
  /** The module has not learned the crank pattern: misfire counts are doubtful until it has. */
  | { readonly kind: 'counts-doubtful'; readonly codes: readonly string[] };
