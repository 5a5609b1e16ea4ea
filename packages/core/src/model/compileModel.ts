import { compileSweep, defineNetwork, type VariableDefinition } from '@faultodds/inference';
import type { CompiledModel, CompiledTest } from './compiledModel.ts';
import { denseTable } from './denseTable.ts';
import type { Mechanism, Model } from './model.ts';

/** Makes a model ready for questions: a Bayesian network whose root is the cause, a table per test, prices' look-ups. Costs
 * milliseconds, once; share the result. */
export function compileModel(model: Model): CompiledModel {
  const causes = model.causes.map((cause) => cause.id);
  const causeIndex = new Map(causes.map((id, at) => [id, at]));
  const statesOf = new Map(model.mechanisms.map((m) => [m.id, m.states.map((state) => state.id)]));
  statesOf.set('cause', causes);

  const network = defineNetwork({
    variables: [
      { name: 'cause', states: causes, table: causes.map(() => 1 / causes.length) },
      ...model.mechanisms.map((mechanism) => mechanismVariable(model, mechanism, statesOf)),
    ],
  });

  const testList = model.tests.map((test, index): CompiledTest => {
    const named = new Set(test.rows.flatMap((row) => Object.keys(row.when)));
    // the cause last: the kernel's answers run over the root fastest
    const parents = [...statesOf.keys()].filter((id) => named.has(id));
    const outcomes = test.outcomes.map((outcome) => outcome.id);
    const table = denseTable(
      parents.map((id) => ({ id, states: statesOf.get(id) ?? [] })),
      outcomes,
      test.rows,
    );
    const asleep = Float64Array.from(outcomes, (outcome) => test.rows.at(-1)?.p[outcome] ?? 0);
    return {
      test,
      index,
      outcomes,
      table: { id: test.id, parents, states: outcomes.length, table },
      sizes: parents.map((id) => statesOf.get(id)?.length ?? 0),
      asleep,
      factors: new Map(),
    };
  });

  const accessBit = new Map(model.access.map((access, at) => [access.id, 1 << at]));
  const closureOf = (id: string): number => {
    const access = model.access.find((a) => a.id === id);
    return (access?.requires ?? []).reduce((bits, required) => bits | closureOf(required), accessBit.get(id) ?? 0);
  };

  return {
    model,
    causes,
    causeIndex,
    weights: Float64Array.from(model.causes, (cause) => cause.weight.best),
    activeFractions: Float64Array.from(model.causes, (cause) => cause.activeFraction.best),
    tests: new Map(testList.map((test) => [test.test.id, test])),
    testList,
    sweep: compileSweep(network, { root: 'cause' }),
    accessBit,
    accessClosure: model.access.map((access) => closureOf(access.id)),
    cures: model.repairs.map((repair) =>
      Object.entries(repair.cures).map(([cause, success]) => ({
        cause: causeIndex.get(cause) ?? -1,
        success: success.best,
      })),
    ),
  };
}

function mechanismVariable(
  model: Model,
  mechanism: Mechanism,
  statesOf: ReadonlyMap<string, readonly string[]>,
): VariableDefinition {
  const states = mechanism.states.map((state) => state.id);
  if (mechanism.rows !== undefined) {
    const parents = mechanism.parents ?? [];
    const table = denseTable(
      parents.map((id) => ({ id, states: statesOf.get(id) ?? [] })),
      states,
      mechanism.rows,
    );
    return { name: mechanism.id, states, parents, table };
  }
  const table = model.causes.flatMap((cause) => {
    const row = cause.states[mechanism.id] ?? mechanism.background;
    return states.map((state) => row?.p[state] ?? 0);
  });
  return { name: mechanism.id, states, parents: ['cause'], table };
}
