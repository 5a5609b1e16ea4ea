import { pricesSchema } from '../cost/pricesSchema.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import * as z from 'zod/mini';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { checkOptions } from '../validation/checkOptions.ts';
import type { Prices } from '../cost/circumstances.ts';
import { defaultPrices } from '../cost/defaultPrices.ts';
import { makeTariff } from '../cost/tariff.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { SEPARATES } from '../compiled/lintModel.ts';
import { compileSeparation } from '../compiled/separation.ts';
import { provenanceOf, type WeakJudgement, type ProvenanceClass } from './provenance.ts';

/** Two causes that no affordable test tells apart well. */
export interface InseparablePair {
  readonly a: string;
  readonly b: string;
  /** The best affordable test, if any says something, and how far its outcomes lie apart (total variation, 0 to 1). */
  readonly bestTest?: string;
  readonly separation: number;
  /** A dearer test that would do. */
  readonly dearerTest?: string;
}

/** A test that another makes superfluous: at most as dear, needing no other equipment, at least as good for every pair of causes. */
export interface DominatedTest {
  readonly test: string;
  readonly by: string;
}

/** Which causes a model can tell apart at what price, and what its numbers are based on. */
export interface Diagnosability {
  readonly hardPairs: readonly InseparablePair[];
  readonly dominated: readonly DominatedTest[];
  readonly provenance: readonly ProvenanceClass[];
  readonly bareJudgement: readonly WeakJudgement[];
}

/** What counts as affordable, and as few cases. */
export interface DiagnosabilityOptions {
  /** Default: the model's own prices. */
  readonly prices?: Prices;
  /** Highest price of a single test from a closed engine, in the prices' currency. Default 500. */
  readonly affordable?: number;
  /** A judgement worth fewer cases than this is called bare. Default 6. */
  readonly fewCases?: number;
}

const optionsSchema = z.strictObject({
  prices: z.optional(pricesSchema),
  affordable: z.optional(z.union([optionSchemas.number(0, Number.MAX_VALUE), z.literal(Infinity)])),
  fewCases: z.optional(optionSchemas.number(0, LARGEST_NUMBER)),
});

/** Which pairs of causes no affordable test separates, which tests another dominates, which numbers are bare judgement. Every cause is
 * taken as possible and the engine as closed. O(tests^2 x causes^2).
 * @throws OptionError
 * @example diagnosability(pump).hardPairs // [{ a: 'hose-leak', b: 'not-listed', separation: 0.2925, bestTest: 'vacuum' }] */
export function diagnosability(compiled: CompiledModel, options: DiagnosabilityOptions = {}): Diagnosability {
  checkOptions(optionsSchema, options);
  const { model, testList } = compiled;
  const { prices = defaultPrices(model), affordable = 500, fewCases = 6 } = options;
  const tariff = makeTariff(compiled, prices, {});
  const price = testList.map(({ index }) => tariff.test(index, 0).total);
  const within = testList.map(({ index }) => index).filter((index) => price[index]! <= affordable);
  const { best, between } = compileSeparation(compiled);
  const pairs = model.causes.flatMap((_, a) =>
    model.causes.slice(a + 1).map((__, offset) => ({ a, b: a + 1 + offset })),
  );

  const hardPairs = pairs.flatMap(({ a, b }): InseparablePair[] => {
    const cheap = best(a, b, within);
    if (cheap.distance >= SEPARATES) return [];
    const any = best(a, b);
    return [
      {
        a: model.causes[a]!.id,
        b: model.causes[b]!.id,
        separation: cheap.distance,
        ...(cheap.test < 0 ? {} : { bestTest: testList[cheap.test]!.test.id }),
        ...(any.distance < SEPARATES ? {} : { dearerTest: testList[any.test]!.test.id }),
      },
    ];
  });

  const dominates = (u: number, t: number): boolean =>
    price[u]! <= price[t]! &&
    testList[u]!.test.equipment.every((tool) => testList[t]!.test.equipment.includes(tool)) &&
    pairs.every(({ a, b }) => between(u, a, b) >= between(t, a, b)) &&
    // of two that are alike in everything, the first stays
    (u < t || price[u]! < price[t]! || pairs.some(({ a, b }) => between(u, a, b) > between(t, a, b)));
  const dominated = testList.flatMap(({ test, index: t }): DominatedTest[] => {
    const by = testList.find(({ index: u }) => u !== t && dominates(u, t));
    return by === undefined ? [] : [{ test: test.id, by: by.test.id }];
  });

  const { classes, bare } = provenanceOf(model, fewCases);
  return {
    hardPairs: hardPairs.sort((x, y) => x.separation - y.separation),
    dominated,
    provenance: classes,
    bareJudgement: bare,
  };
}
