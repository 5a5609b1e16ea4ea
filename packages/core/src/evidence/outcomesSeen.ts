import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Test } from '../model/model.ts';
import { evidencePartOf } from './evidencePart.ts';
import type { Facts } from './facts.ts';
import type { ReadingRun } from './runOfReading.ts';

/** Results on record: by test, the outcomes its runs showed. */
export type OutcomesSeen = ReadonlyMap<string, ReadonlySet<string>>;

/** The results on record: of weights and counts the outcome they speak for most, of a number all that it can be called. */
export function outcomesSeen(compiled: CompiledModel, { observations }: Facts): OutcomesSeen {
  const seen = new Map<string, Set<string>>();
  for (const observation of observations) {
    const part = evidencePartOf(compiled, observation);
    if (part?.kind !== 'run') continue;
    const { id } = part.of.test;
    seen.set(id, new Set([...(seen.get(id) ?? []), ...shownBy(part.run, part.of.outcomes)]));
  }
  return seen;
}

/** Whether a test may be done after these results: it follows none, or one of them. */
export function isCalledFor({ follows }: Pick<Test, 'follows'>, seen: OutcomesSeen): boolean {
  return (
    follows === undefined ||
    follows.some(({ test, outcomes }) => outcomes.some((outcome) => seen.get(test)?.has(outcome) === true))
  );
}

function shownBy(run: ReadingRun, outcomes: readonly string[]): readonly string[] {
  if (run.kind === 'measured' && run.noted === undefined) return run.named;
  const { support } = run.kind === 'outcome' ? run.run : run.noted!.outcome;
  const most = Math.max(...support);
  return outcomes.filter((_, o) => support[o] === most);
}
