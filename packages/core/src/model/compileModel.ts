import { compileSweep, defineNetwork, type CompiledSweep, type VariableDefinition } from '@faultodds/inference';
import type { CompiledModel, CompiledTest } from './compiledModel.ts';
import { fillTable, firstMatches, type FirstMatches } from './firstMatches.ts';
import type { Mechanism, Model, Test } from './model.ts';

/** Makes a model ready for questions: a Bayesian network whose root is the cause, a table per test, look-ups for prices. Costs
 * milliseconds, once; share the result. */
export function compileModel(model: Model): CompiledModel {
  const causes = model.causes.map((cause) => cause.id);
  const statesOf = new Map(model.mechanisms.map((m) => [m.id, m.states.map((state) => state.id)]));
  statesOf.set('cause', causes);
  const matches = (parents: readonly string[], rows: Test['rows']): FirstMatches =>
    firstMatches(
      parents.map((id) => ({ id, states: statesOf.get(id) ?? [] })),
      rows,
    );

  const mechanismMatches = model.mechanisms.map(({ parents, rows }) =>
    rows === undefined ? undefined : matches(parents ?? [], rows),
  );
  const testMatches = model.tests.map((test) => {
    const named = new Set(test.rows.flatMap((row) => Object.keys(row.when)));
    // the cause last: the kernel's answers run over the root fastest
    return matches(
      [...statesOf.keys()].filter((id) => named.has(id)),
      test.rows,
    );
  });

  const accessBit = new Map(model.access.map((access, at) => [access.id, 1 << at]));
  const closureOf = (id: string): number => {
    const access = model.access.find((a) => a.id === id);
    return (access?.requires ?? []).reduce((bits, required) => bits | closureOf(required), accessBit.get(id) ?? 0);
  };
  return compileNumbers(model, {
    causes,
    causeIndex: new Map(causes.map((id, at) => [id, at])),
    mechanismMatches,
    testMatches,
    accessBit,
    accessClosure: model.access.map((access) => closureOf(access.id)),
  });
}

/** The same model with other numbers (a draw, a changed parameter): ids, rows' conditions and their order must be those of the
 * compiled one, which makes this much cheaper than compiling. */
export function recompileModel({ structure }: CompiledModel, model: Model): CompiledModel {
  return compileNumbers(model, structure);
}

function compileNumbers(model: Model, structure: CompiledModel['structure']): CompiledModel {
  const { causes, causeIndex } = structure;
  const testList = model.tests.map((test, index) => compileTest(test, index, structure.testMatches[index]!));
  let sweep: CompiledSweep | undefined;
  return {
    structure,
    model,
    causes,
    causeIndex,
    weights: Float64Array.from(model.causes, (cause) => cause.weight.best),
    activeFractions: Float64Array.from(model.causes, (cause) => cause.activeFraction.best),
    tests: new Map(testList.map((test) => [test.test.id, test])),
    testList,
    get sweep(): CompiledSweep {
      sweep ??= compileSweep(networkOf(model, structure), { root: 'cause' });
      return sweep;
    },
    accessBit: structure.accessBit,
    accessClosure: structure.accessClosure,
    cures: model.repairs.map((repair) =>
      Object.entries(repair.cures).map(([cause, success]) => ({
        cause: causeIndex.get(cause) ?? -1,
        success: success.best,
      })),
    ),
  };
}

function compileTest(test: Test, index: number, matches: FirstMatches): CompiledTest {
  const outcomes = test.outcomes.map((outcome) => outcome.id);
  let table: Float64Array | undefined;
  return {
    test,
    index,
    outcomes,
    table: {
      id: test.id,
      parents: matches.parents,
      states: outcomes.length,
      get table(): Float64Array {
        table ??= fillTable(matches, test.rows, outcomes);
        return table;
      },
    },
    asleep: Float64Array.from(outcomes, (outcome) => test.rows.at(-1)?.p[outcome] ?? 0),
    factors: new Map(),
  };
}

function networkOf(
  model: Model,
  { causes, mechanismMatches }: CompiledModel['structure'],
): ReturnType<typeof defineNetwork> {
  return defineNetwork({
    variables: [
      { name: 'cause', states: causes, table: causes.map(() => 1 / causes.length) },
      ...model.mechanisms.map((mechanism, at) => mechanismVariable(model, mechanism, mechanismMatches[at])),
    ],
  });
}

function mechanismVariable(model: Model, mechanism: Mechanism, matches: FirstMatches | undefined): VariableDefinition {
  const states = mechanism.states.map((state) => state.id);
  if (matches !== undefined) {
    const table = fillTable(matches, mechanism.rows ?? [], states);
    return { name: mechanism.id, states, parents: matches.parents, table };
  }
  const table = model.causes.flatMap((cause) => {
    const row = cause.states[mechanism.id] ?? mechanism.background;
    return states.map((state) => row?.p[state] ?? 0);
  });
  return { name: mechanism.id, states, parents: ['cause'], table };
}
