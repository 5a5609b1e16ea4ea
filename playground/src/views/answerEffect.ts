import { type Context, type ContextEffect, contextEffects, type Quantity } from '@faultodds/core';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What one intake answer changed, in words. */
export interface AnswerEffect {
  readonly changes: readonly { readonly label: string; readonly before: string; readonly after: string }[];
  /** Causes in and out, tests, prices: a sentence each. */
  readonly sentences: readonly string[];
  /** The numbers behind it with their ranges, and each source once. */
  readonly numbers: readonly string[];
  readonly sources: readonly string[];
}

const SHOWN = 5;

/** What every answer given changed, by feature. */
export function answerEffects(knowledge: Knowledge, context: Context): ReadonlyMap<string, AnswerEffect> {
  return new Map(
    contextEffects(knowledge.compiled, context).map((effect) => [effect.feature, inWords(knowledge, effect)]),
  );
}

function inWords(knowledge: Knowledge, { causes, causesIn, causesOut, testsIn, costs }: ContextEffect): AnswerEffect {
  const { causeLabel, testLabel, repairLabel, accessLabel } = knowledge;
  const priced = Object.entries(costs);
  const nameOf = (id: string): string => {
    if (knowledge.test(id)) return testLabel(id);
    return knowledge.repair(id) ? repairLabel(id) : accessLabel(id);
  };
  const used = [...causes.map(({ multiplier }) => multiplier), ...priced.map(([, quantity]) => quantity)];
  return {
    changes: causes
      .filter(({ priorWithout, priorWith }) => priorWithout > 0 && priorWith > 0 && priorWithout !== priorWith)
      .slice(0, SHOWN)
      .map(({ cause, priorWithout, priorWith }) => ({
        label: causeLabel(cause),
        before: shortChance(priorWithout),
        after: shortChance(priorWith),
      })),
    sentences: [
      ...(causesIn.length > 0 ? [t.car.causesIn(listOf(causesIn.map(causeLabel)))] : []),
      ...(causesOut.length > 0 ? [t.car.causesOut(listOf(causesOut.map(causeLabel)))] : []),
      ...(testsIn.length > 0 ? [t.car.testsIn(listOf(testsIn.map(testLabel)))] : []),
      ...priced.map(([id, { best }]) => t.car.cost(nameOf(id), factor(best))),
    ],
    numbers: causes.map(({ cause, multiplier }) => numberInWords(causeLabel(cause), multiplier)),
    sources: [...new Set(used.map(({ source }) => source))].map((id) =>
      t.car.source(t.car.kinds[knowledge.sourceKind(id)], knowledge.sourceText(id)),
    ),
  };
}

function numberInWords(label: string, { best, low, high, definitional }: Quantity): string {
  if (definitional === true && best === 0) return t.car.byDefinition(label);
  return t.car.multiplier(label, factor(best), figure(low), figure(high));
}

function listOf(labels: readonly string[]): string {
  return t.car.andMore(labels.slice(0, SHOWN).join('; '), Math.max(0, labels.length - SHOWN));
}

function factor(value: number): string {
  return t.car.factor(figure(value));
}

function figure(value: number): string {
  return String(Number(value.toPrecision(2)));
}
