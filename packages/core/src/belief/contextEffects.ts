import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Quantity } from '../model/quantity.ts';
import { appliesHere } from '../evidence/appliesHere.ts';
import { contextPrior } from './contextPrior.ts';
import type { Context } from '../evidence/facts.ts';

/** What one intake answer changed, everything else as stated. */
export interface ContextEffect {
  readonly feature: string;
  readonly value: string;
  /** Multipliers on prior odds with their provenance, and the prior without and with this answer. Largest move first. */
  readonly causes: readonly {
    readonly cause: string;
    readonly multiplier: Quantity;
    readonly priorWithout: number;
    readonly priorWith: number;
  }[];
  /** Causes that are possible only because of it, and causes that it excludes. */
  readonly causesIn: readonly string[];
  readonly causesOut: readonly string[];
  /** Tests that apply only because of it. */
  readonly testsIn: readonly string[];
  /** Multipliers on minutes and parts of tests, repairs and access, by id. */
  readonly costs: Readonly<Record<string, Quantity>>;
}

/** What every intake answer did to priors, to what is possible, to which tests apply and to prices, in the order stated.
 * Unknown features and values are left out; `beliefOf` reports them.
 * @example
 * ```ts
 * const [hose, filter] = contextEffects(pump, { 'suction-hose': 'none', filter: 'fitted' });
 * hose?.causesOut; // ['hose-leak']
 * filter?.testsIn; // ['filter-look']
 * ``` */
export function contextEffects(compiled: CompiledModel, context: Context): readonly ContextEffect[] {
  const { model, causes } = compiled;
  const withAll = contextPrior(compiled, context);
  return Object.entries(context).flatMap(([feature, value]): ContextEffect[] => {
    const stated = model.context.find(({ id }) => id === feature)?.values.find(({ id }) => id === value);
    if (stated === undefined) return [];
    const { [feature]: _left, ...others } = context;
    const without = contextPrior(compiled, others);
    const moved = Object.entries(stated.multipliers).map(([cause, multiplier]) => {
      const at = compiled.causeIndex.get(cause)!;
      return { cause, multiplier, priorWithout: without[at]!, priorWith: withAll[at]! };
    });
    return [
      {
        feature,
        value,
        causes: moved.sort((a, b) => Math.abs(b.priorWith - b.priorWithout) - Math.abs(a.priorWith - a.priorWithout)),
        causesIn: causes.filter((_, at) => without[at] === 0 && withAll[at]! > 0),
        causesOut: causes.filter((_, at) => without[at]! > 0 && withAll[at] === 0),
        testsIn: model.tests
          .filter((test) => appliesHere(test, context) && !appliesHere(test, others))
          .map(({ id }) => id),
        costs: stated.costs ?? {},
      },
    ];
  });
}
