import {
  compileModel,
  parseModel,
  rankCauses,
  beliefOf,
  type Belief,
  type CauseRanking,
  type CompiledModel,
  type Facts,
  type Model,
} from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import fc from 'fast-check';
import { deepFreeze } from '../fixtures/deepFreeze.ts';
import { randomFacts, randomModel } from '../oracle/core/randomModel.ts';
import { createRandom } from '../oracle/randomNetwork.ts';

// Tolerances of this folder: 1e-12 relative for probabilities, 1e-9 relative for money.
/** Relative tolerance of probabilities and of money. */
export const tolerance: { readonly probability: number; readonly money: number } = { probability: 1e-12, money: 1e-9 };

/** Seed of every property in this folder; printed with a failure, with the counterexample's name. Another one: FAULTODDS_SEED. */
export const seed = Number(process.env['FAULTODDS_SEED'] ?? 20261125);
/** Share of the cases of every law that is tried: three in ten before a commit, all and more by `npm run test:long` (FAULTODDS_RUNS). */
const share = Number(process.env['FAULTODDS_RUNS'] ?? 0.3);

/** A model with facts about it, and a number to draw further chance from. `name` makes it again. */
export interface AnyCase {
  readonly name: string;
  readonly model: Model;
  readonly compiled: CompiledModel;
  readonly facts: Facts;
  readonly chance: number;
}

const misfireModel = parseModel(misfire);
const misfireCompiled = compileModel(misfireModel);

/** Cases over generated small models and, one in three, over the misfire model. Frozen all the way down.
 * @param most observations. */
export function anyCase(most = 6): fc.Arbitrary<AnyCase> {
  return fc.noShrink(fc.tuple(fc.nat(), fc.nat(), fc.nat(2))).map(([modelSeed, factsSeed, kind]) => {
    const isMisfire = kind === 0;
    const model = isMisfire ? misfireModel : parseModel(deepFreeze(randomModel(modelSeed)));
    const compiled = isMisfire ? misfireCompiled : compileModel(model);
    const facts = deepFreeze(randomFacts(model, factsSeed, most));
    const name = `${isMisfire ? 'misfire' : `randomModel(${modelSeed})`}, randomFacts(model, ${factsSeed}, ${most})`;
    return { name, model, compiled, facts, chance: factsSeed, [fc.toStringMethod]: () => name };
  });
}

/** Asserts a law over many cases, with the folder's seed. @param cases how many a full run tries */
export function law(arbitrary: fc.Arbitrary<AnyCase>, cases: number, holds: (one: AnyCase) => void): void {
  fc.assert(fc.property(arbitrary, holds), { seed, numRuns: Math.ceil(cases * share) });
}

/** Belief with other observations in the same context. */
export function believe(compiled: CompiledModel, facts: Facts, observations: Facts['observations']): Belief {
  return beliefOf(compiled, { context: facts.context, observations });
}

/** The ranking alone, with other observations in the same context: cheaper where the tests to come do not matter. */
export function rank(compiled: CompiledModel, facts: Facts, observations: Facts['observations']): CauseRanking {
  return rankCauses(compiled, { context: facts.context, observations });
}

/** The list in an order of its own. */
export function shuffled<T>(list: readonly T[], shuffleSeed: number): T[] {
  const random = createRandom(shuffleSeed);
  return list
    .map((item) => ({ item, at: random() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

/** Largest relative difference between two records of numbers with the same keys. */
export function difference(a: Readonly<Record<string, number>>, b: Readonly<Record<string, number>>): number {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return Math.max(...[...keys].map((key) => apart(a[key] ?? NaN, b[key] ?? NaN)));
}

/** Relative difference of two numbers, 0 when they are equal. */
export function apart(a: number, b: number): number {
  return a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b));
}
