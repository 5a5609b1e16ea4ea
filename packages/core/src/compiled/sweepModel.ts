import { InferenceError, TreeWidthError } from '@faultodds/inference';
import { sweepRoot, type SweepQuestion, type SweepResult } from '@faultodds/inference/sweeps';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemFor } from '../validation/problemFor.ts';
import { ModelError } from '../errors/modelError.ts';
import type { CompiledModel } from './compiledModel.ts';

/** Asks the kernel for everything given each cause (see `sweepRoot`). What the kernel refuses is told in the words of this package.
 * @throws EvidenceError at `/observations`: `tree-too-wide`, `not-computable` @throws ModelError the same where nothing recorded has to do with
 * it: at the test whose table is none, or at `/mechanisms` */
export function sweepModel(compiled: CompiledModel, question: SweepQuestion): SweepResult {
  const { model } = compiled;
  try {
    return sweepRoot(compiled.sweep, question);
  } catch (error) {
    if (!(error instanceof InferenceError)) throw error;
    const [, at] = /^\/targets\/(\d+)/.exec(error.path) ?? [];
    if (at === undefined && question.likelihoods.length > 0)
      throw new EvidenceError([problemOf(error, '/observations')]);
    const test = at === undefined ? -1 : model.tests.findIndex(({ id }) => id === question.targets[Number(at)]!.id);
    throw new ModelError([problemOf(error, test < 0 ? '/mechanisms' : `/tests/${test}`)]);
  }
}

/** Makes something of a model by the kernel's means. @throws ModelError at `/mechanisms`: `not-computable` */
export function withModelErrors<Made>(make: () => Made): Made {
  try {
    return make();
  } catch (error) {
    if (!(error instanceof InferenceError)) throw error;
    throw new ModelError([problemOf(error, '/mechanisms')]);
  }
}

function problemOf(error: InferenceError, path: string): Problem {
  if (error instanceof TreeWidthError) return problemFor('tree-too-wide', path, { entries: error.largestTable });
  const { code, message } = error.problems[0]!;
  return problemFor('not-computable', path, { code, at: error.path, found: message });
}
