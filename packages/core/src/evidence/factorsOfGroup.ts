import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { likelihoodsOfRuns } from './likelihoodsOfRuns.ts';
import type { EvidencePart } from './evidencePart.ts';
import { factorOfHandling } from './factorOfHandling.ts';

/** The factors of one group: those of its test (all runs together), or one per attempt at its repair. None when its parts say nothing or
 * there are none. */
export function factorsOfGroup(compiled: CompiledModel, group: readonly EvidencePart[]): readonly LikelihoodFactor[] {
  const attempts = group.flatMap((part) => (part.kind === 'repair' ? [part.factor] : []));
  const runs = group.flatMap((part) => (part.kind === 'run' ? [part.run] : []));
  const [first] = group;
  if (first?.kind !== 'run') return attempts;
  const handling = factorOfHandling(compiled, first.of);
  return [...likelihoodsOfRuns(compiled, first.of, runs), ...(handling === undefined ? [] : [handling])];
}
