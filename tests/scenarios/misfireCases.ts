import {
  caseState,
  compileModel,
  loadCase,
  parseModel,
  rankCauses,
  type CauseRanking,
  type CompiledModel,
  type Context,
  type Model,
  type Session,
} from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';
import { results } from '../fixtures/results.ts';

/** The misfire model. */
export const model: Model = parseModel(misfire);
/** It, made ready. */
export const compiled: CompiledModel = compileModel(model);

/** It, with context multipliers practically uncapped: the reference figures were computed so. */
export const uncapped: CompiledModel = compileModel(
  parseModel({ ...model, contextCap: { ...model.contextCap, low: 1e-9, high: 1e9 } }),
);

/** The invented demo cases, by id. */
export const demos: ReadonlyMap<string, Session> = new Map(
  demoCases.map((one) => {
    const session = loadCase(compiled, one);
    return [caseState(session).id, session];
  }),
);

/** The ranking after named results, the fault present in all of them. */
export function after(context: Context, ...named: (readonly [test: string, outcome: string])[]): CauseRanking {
  return rankCauses(compiled, { context, observations: results(...named) });
}

/** Probability of a cause group. */
export function groupIn(ranking: CauseRanking, id: string): number {
  return ranking.groups.find(({ group }) => group === id)!.probability;
}
