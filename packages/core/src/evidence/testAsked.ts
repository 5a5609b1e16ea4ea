import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Observation } from './observation.ts';

/** The test whose question an observation answers; `''` for a repair that asks no test's question. */
export function testAsked({ model }: CompiledModel, observation: Observation): string {
  if (observation.kind === 'result') return observation.test;
  return model.repairs.find((repair) => repair.id === observation.repair)?.sameAs?.test ?? '';
}
