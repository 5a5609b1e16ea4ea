import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import { atLeastOne } from '../errors/atLeastOne.ts';
import { EvidenceError } from '../errors/evidenceError.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { findUnknownId } from '../validation/findUnknownId.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { evidencePartOf, groupParts } from './evidencePart.ts';
import { factorsOfGroup } from './factorsOfGroup.ts';
import type { Facts } from './facts.ts';
import { findResultProblems } from './findResultProblems.ts';

/** Everything recorded as factors over mechanisms and the cause: those of each test (all its runs together), one per repair. What says
 * nothing (the fault was asleep) is left out.
 * @throws EvidenceError with all problems: unknown feature, value, test, outcome, repair; a test that does not apply here. */
export function evidenceOf(compiled: CompiledModel, facts: Facts): readonly LikelihoodFactor[] {
  const problems = [...contextProblems(compiled, facts), ...observationProblems(compiled, facts)];
  if (atLeastOne(problems)) throw new EvidenceError(problems);

  const parts = facts.observations.flatMap((observation) => evidencePartOf(compiled, observation) ?? []);
  // repairs first: the kernel knows the same factors in the same order again
  const [attempts, runs] = [parts.filter(({ kind }) => kind === 'repair'), parts.filter(({ kind }) => kind === 'run')];
  return [
    ...attempts.flatMap((part) => factorsOfGroup(compiled, [part], facts.context)),
    ...[...groupParts(runs).values()].flatMap((group) => factorsOfGroup(compiled, group, facts.context)),
  ];
}

function contextProblems({ model }: CompiledModel, { context }: Facts): Problem[] {
  return Object.entries(context).flatMap(([feature, value]) => {
    const path = `/context/${feature}`;
    const known = model.context.find(({ id }) => id === feature);
    if (known === undefined) return findUnknownId('feature', feature, model.context, path);
    return findUnknownId('value', value, known.values, path, feature);
  });
}

function observationProblems({ model }: CompiledModel, { context, observations }: Facts): Problem[] {
  return observations.flatMap((observation, at) => {
    const path = `/observations/${at}`;
    return observation.kind === 'result'
      ? findResultProblems(model, context, observation, path)
      : findUnknownId('repair', observation.repair, model.repairs, `${path}/repair`);
  });
}
