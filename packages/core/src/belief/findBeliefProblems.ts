import * as z from 'zod/mini';
import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { appliesHere } from '../evidence/appliesHere.ts';
import type { Belief } from './belief.ts';

const probability = z.number().check(z.gte(0), z.lte(1));
const schema = z.looseObject({
  facts: z.looseObject({ context: z.record(z.string(), z.string()) }),
  ranking: z.array(z.looseObject({ cause: z.string(), probability })),
  predictive: z.record(z.string(), z.record(z.string(), z.number())),
});

/** What is wrong with a belief that was not made here: numbers that are no probabilities, causes or tests of another model, tests of this
 * one it does not know. */
export function findBeliefProblems({ causeIndex, tests }: CompiledModel, belief: Belief): Problem[] {
  const checked = schema.safeParse(belief);
  if (!checked.success)
    return problemsOfSchema(checked.error, belief).map((one) => ({ ...one, path: `/belief${one.path}` }));
  const { facts, ranking, predictive } = belief;
  const elsewhere = (id: string | undefined, path: string): Problem[] =>
    id === undefined ? [] : [problemFor('belief-of-another-model', `/belief${path}`, { id })];
  const cause = ranking.findIndex((ranked) => !causeIndex.has(ranked.cause));
  const missing = [...tests.values()].find(
    ({ test }) => appliesHere(test, facts.context) && !Object.hasOwn(predictive, test.id),
  );
  return [
    ...elsewhere(ranking[cause]?.cause, `/ranking/${cause}/cause`),
    ...elsewhere(
      Object.keys(predictive).find((id) => !tests.has(id)),
      '/predictive',
    ),
    ...elsewhere(missing?.test.id, '/predictive'),
  ];
}
