import type { CompiledModel } from '../compiled/compiledModel.ts';
import { appliesHere } from '../evidence/appliesHere.ts';
import type { Facts } from '../evidence/facts.ts';
import { testAsked } from '../evidence/testAsked.ts';
import { sweepFacts } from './sweepFacts.ts';

/** An intake question that is still open, and what answering it could do. */
export interface IntakeQuestion {
  readonly feature: string;
  /** The largest share of probability that one of its answers would move between causes, 0 to 1. */
  readonly couldMove: number;
  /** Causes that cannot be considered until it is answered. */
  readonly bringsIn: readonly string[];
  /** Tests that cannot be proposed until it is answered. */
  readonly enables: readonly string[];
}

/** Intake questions not answered yet, by the customer or by a test that asks the same: first those that causes or tests wait for, then by how far an answer could move the ranking
 * (total variation distance of the posterior).
 * @throws EvidenceError as `rankCauses` does.
 * @example
 * ```ts
 * const questions = questionsToAsk(pump, { context: {}, observations: [] });
 * questions.map(({ feature, couldMove }) => [feature, couldMove]); // [['filter', 0.1251], ['suction-hose', 0.25]]
 * ``` */
export function questionsToAsk(compiled: CompiledModel, facts: Facts): readonly IntakeQuestion[] {
  const { model, causes, structure } = compiled;
  const done = new Set(facts.observations.map((observation) => testAsked(compiled, observation)));
  const isAnswered = (feature: string): boolean =>
    (structure.questions.get(feature) ?? []).some((name) => done.has(name));
  const now = sweepFacts(compiled, facts, { posteriorOnly: true });
  return model.context
    .filter(({ id }) => !Object.hasOwn(facts.context, id) && !isAnswered(id))
    .map(({ id, values }): IntakeQuestion => {
      const answered = values.map((value) => {
        const context = { ...facts.context, [id]: value.id };
        return { context, swept: sweepFacts(compiled, { ...facts, context }, { posteriorOnly: true }) };
      });
      const couldMove = answered.map(
        ({ swept }) => swept.posterior.reduce((sum, p, at) => sum + Math.abs(p - now.posterior[at]!), 0) / 2,
      );
      return {
        feature: id,
        couldMove: Math.max(0, ...couldMove),
        bringsIn: causes.filter((_, at) => now.prior[at] === 0 && answered.some(({ swept }) => swept.prior[at]! > 0)),
        enables: model.tests
          .filter(
            (test) => !appliesHere(test, facts.context) && answered.some(({ context }) => appliesHere(test, context)),
          )
          .map((test) => test.id),
      };
    })
    .sort((a, b) => waiting(b) - waiting(a) || b.couldMove - a.couldMove);
}

function waiting({ bringsIn, enables }: IntakeQuestion): number {
  return Math.min(1, bringsIn.length + enables.length);
}
