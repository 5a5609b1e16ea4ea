import { evidencePartOf } from '../evidence/evidencePart.ts';
import type { Facts } from '../evidence/facts.ts';
import type { Observation, RepairTried } from '../evidence/observation.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Quantity } from '../model/quantity.ts';
import { jointGivenFacts } from './jointGivenFacts.ts';
import type { JointLines } from './linearFunction.ts';

/** Lines of the chances that a tried repair cures, and of the chance that a fault goes without a cure. A repair tried twice multiplies its
 * chances, several repairs multiply that of the fault that goes by itself: these are left out. A repair that asks the question of a test is
 * on record as a run of that test. */
export function repairLines(compiled: CompiledModel, facts: Facts): JointLines[] {
  const attempts = facts.observations.filter((one): one is RepairTried => isAttempt(compiled, one));
  return attempts.flatMap((attempt) => {
    const isOnlyOne = attempts.filter(({ repair }) => repair === attempt.repair).length === 1;
    return isOnlyOne ? linesOfAttempt(compiled, facts, attempt, attempts.length === 1) : [];
  });
}

function isAttempt(compiled: CompiledModel, observation: Observation): boolean {
  return observation.kind === 'repair-tried' && evidencePartOf(compiled, observation)?.kind === 'repair';
}

function linesOfAttempt(compiled: CompiledModel, facts: Facts, attempt: RepairTried, isAlone: boolean): JointLines[] {
  const { model, causeIndex } = compiled;
  const at = model.repairs.findIndex(({ id }) => id === attempt.repair);
  const cures = new Map(compiled.cures[at]!.map(({ cause, success }) => [cause, success]));
  const likelihood = (goes: number): number => (attempt.cured ? goes : 1 - goes);
  const others = { context: facts.context, observations: facts.observations.filter((other) => other !== attempt) };
  const before = jointGivenFacts(compiled, others);
  const evidence = before.reduce((sum, p, c) => sum + p * likelihood(cures.get(c) ?? model.goneWithoutCure.best), 0);
  /** @param goesPerUnit hypothesis -> P(fault goes) per unit of the number; undefined where it does not depend on it. */
  const line = (
    path: string,
    { best, low, high }: Quantity,
    goesPerUnit: (c: number) => number | undefined,
  ): JointLines => {
    const constants = before.map((p) => p / evidence);
    const slopes = new Float64Array(constants.length);
    constants.forEach((p, c) => {
      const rate = goesPerUnit(c);
      if (rate === undefined) constants[c] = p * likelihood(cures.get(c) ?? model.goneWithoutCure.best);
      else {
        slopes[c] = attempt.cured ? p * rate : -p * rate;
        constants[c] = attempt.cured ? 0 : p;
      }
    });
    return { path, value: best, low, high, unbounded: false, constants, slopes };
  };
  const membersOf = (c: number): readonly number[] => compiled.structure.hypotheses[c]!.members;
  const ofCauses = Object.entries(model.repairs[at]!.cures).flatMap(([id, chance]): JointLines[] => {
    const cause = causeIndex.get(id);
    if (cause === undefined || before[cause] === 0 || chance.best === 0) return [];
    return [
      line(`/repairs/${at}/cures/${id}/best`, chance, (c) =>
        cures.has(c) && membersOf(c).includes(cause) ? cures.get(c)! / chance.best : undefined,
      ),
    ];
  });
  if (!isAlone) return ofCauses;
  return [...ofCauses, line('/goneWithoutCure/best', model.goneWithoutCure, (c) => (cures.has(c) ? undefined : 1))];
}
