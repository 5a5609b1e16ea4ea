import type { FaultActive } from './observation.ts';
import type { Run } from './likelihoodOfRuns.ts';
import type { CompiledTest } from '../compiled/compiledModel.ts';
import type { MeasuredReading } from '../model/readingModel.ts';
import { bandOf, outcomeBeyond } from '../reading/bandOf.ts';
import { comparedValue } from '../reading/comparedValue.ts';
import { logSupportOfReading } from '../reading/logSupportOfReading.ts';
import type { CountsOfCylinders, CountsOfPart, MeasuredValues, Reading } from '../reading/reading.ts';
import { supportOfCounts } from '../reading/supportOfCounts.ts';
import { supportOfPartCounts } from '../reading/supportOfPartCounts.ts';

/** One run of a test that was entered as numbers: either it supports outcomes (counts, values beyond the range), or distributions. */
export type ReadingRun = OutcomeRun | MeasuredRun;

/** A run that says how strongly each outcome is supported. */
interface OutcomeRun {
  readonly kind: 'outcome';
  readonly run: Run;
}

/** A run that says how strongly each distribution of a reading is supported. */
export interface MeasuredRun {
  readonly kind: 'measured';
  readonly model: MeasuredReading;
  /** Natural logs; length = number of distributions. */
  readonly logSupport: Float64Array;
  readonly faultActive: FaultActive;
  /** Outcomes the number can be called. */
  readonly named: readonly string[];
  /** What was noted beside the number and the number leaves open: which of the outcomes it can be called. */
  readonly noted?: { readonly outcome: Run; readonly band: Run };
}

/** Turns a reading (with the outcome noted beside it, if any) into a run of its test. Both must have passed `findResultProblems`.
 * `undefined` when the test has no such reading. */
export function runOfReading(
  compiledTest: CompiledTest,
  reading: Reading,
  faultActive: FaultActive,
  outcome?: string,
): ReadingRun | undefined {
  const { test, outcomes } = compiledTest;
  const model = test.readings?.find(({ id }) => id === reading.measure);
  const supporting = (weights: Readonly<Record<string, number>>): Run => ({
    support: Float64Array.from(outcomes, (id) => weights[id] ?? 0),
    faultActive,
  });
  switch (model?.kind) {
    case undefined:
      return undefined;
    case 'counts':
      return { kind: 'outcome', run: supporting(supportOfCounts(model, reading as CountsOfCylinders).byOutcome) };
    case 'part-counts':
      return { kind: 'outcome', run: supporting(supportOfPartCounts(model, reading as CountsOfPart).byOutcome) };
    case 'measured': {
      const only = (named: readonly string[]): Run => supporting(Object.fromEntries(named.map((id) => [id, 1])));
      const { value } = comparedValue(model, reading as MeasuredValues);
      const beyond = outcomeBeyond(model, value);
      if (beyond !== undefined) return { kind: 'outcome', run: only([beyond]) };
      const measured: MeasuredRun = {
        kind: 'measured',
        model,
        logSupport: logSupportOfReading(model, value),
        faultActive,
        named: bandOf(model, value),
      };
      return outcome === undefined
        ? measured
        : { ...measured, noted: { outcome: only([outcome]), band: only(measured.named) } };
    }
  }
}
