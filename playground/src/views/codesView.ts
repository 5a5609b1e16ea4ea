import type { ResultEvidence } from '@faultodds/core';
import { observationsFromCodes, parseTroubleCodes } from '@faultodds/core/codes';
import { describeCodeRemark, describeProblem, describeUnusedCode } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';
import type { EngineStore } from '../state/engineStore.svelte.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** A result that codes make, to be recorded. */
export interface CodeResult extends ResultEvidence {
  readonly test: string;
}

/** A pasted list of trouble codes, read. */
export interface CodesView {
  readonly results: readonly CodeResult[];
  /** What will be recorded, in words. */
  readonly lines: readonly { readonly text: string; readonly note: string; readonly already: boolean }[];
  readonly malformed: readonly string[];
  readonly kept: readonly string[];
  readonly remarks: readonly string[];
}

/** Reads a list of codes for the suspect cylinder. @param onRecord tests with a result already: their codes are not recorded again. */
export function codesView(
  knowledge: Knowledge,
  text: string,
  engine: EngineStore,
  complete: boolean,
  onRecord: ReadonlySet<string>,
): CodesView {
  const list = parseTroubleCodes(text);
  const { suspect, cylinders, bank } = engine;
  const { observations, kept, remarks } = observationsFromCodes(knowledge.compiled, list.codes, {
    suspectCylinder: suspect,
    cylinders,
    listIsComplete: complete,
    ...(bank === 0 ? {} : { bank }),
  });
  return {
    results: observations
      .filter(({ test }) => !onRecord.has(test))
      .map(({ test, outcome, likelihood, note }) => ({
        test,
        ...(outcome === undefined ? {} : { outcome }),
        ...(likelihood === undefined ? {} : { likelihood }),
        ...(note === undefined ? {} : { note }),
      })),
    lines: observations.map((observation) => {
      const { what, outcome } = knowledge.observed(observation);
      return {
        text: t.entry.becomesLine(what, outcome),
        note: observation.note ?? '',
        already: onRecord.has(observation.test),
      };
    }),
    malformed: list.malformed.map((piece) =>
      t.entry.malformedAt(piece.text, piece.at + 1, describeProblem(piece, coreLanguage).hint),
    ),
    kept: kept.map((code) => describeUnusedCode(code, coreLanguage)),
    remarks: remarks.map((remark) => describeCodeRemark(remark, coreLanguage)),
  };
}
