import * as z from 'zod/mini';
import { checkOptions } from '../validation/checkOptions.ts';
import { compileSweep, type CompiledSweep } from '@faultodds/inference/sweeps';
import { defineNetwork, type Network, type VariableDefinition } from '@faultodds/inference';
import { problemFor } from '../validation/problemFor.ts';
import { ModelError } from '../errors/modelError.ts';
import type { CompiledModel, CompiledTest } from './compiledModel.ts';
import { fillTable, firstMatches, type FirstMatches, type Parents } from './firstMatches.ts';
import { hypothesesOf, type Hypothesis } from './hypotheses.ts';
import type { Mechanism, Model, Test } from '../model/model.ts';
import { questionsOf } from '../model/questionsOf.ts';
import type { Row } from '../model/row.ts';
import { closedForTest } from './closedForTest.ts';
import { noisyMax } from './noisyMax.ts';
import { persistingMatches } from './persistingMatches.ts';
import { withModelErrors } from './sweepModel.ts';

/** How many causes may be behind the fault together. */
export interface CompileModelOptions {
  /** Default 1. With 2, every pair of listed causes is a further hypothesis: the work grows about with the square. */
  readonly atMost?: 1 | 2;
}

const optionsSchema = z.strictObject({ atMost: z.optional(z.literal([1, 2])) });

/** Makes a model ready for questions: a Bayesian network whose root is the cause, a table per test, look-ups for prices. Costs
 * milliseconds, with pairs about a second, once; share the result.
 *
 * With pairs: mechanisms combine by noisy-MAX over the model's order of states; a test row that names a cause applies to every pair with
 * it, except that a fault stays while either cause does (`persistsAs`).
 * @throws ModelError `two-cause-share-missing` when pairs are asked of a model that does not say how common they are @throws OptionError
 * @example compileModel(pump.model).causes // ['fuse-blown', 'motor-worn', 'hose-leak', 'clogged', 'not-listed'] */
export function compileModel(model: Model, options: CompileModelOptions = {}): CompiledModel {
  checkOptions(optionsSchema, options);
  const hypotheses = hypothesesOf(model, options.atMost ?? 1);
  if (options.atMost === 2 && model.twoCauseShare === undefined) {
    throw new ModelError([problemFor('two-cause-share-missing', '/twoCauseShare', {})]);
  }
  const causes = hypotheses.map(({ id }) => id);
  const statesOf = new Map(model.mechanisms.map((m) => [m.id, m.states.map(({ id }) => [id])]));
  statesOf.set(
    'cause',
    hypotheses.map(({ members }) => members.map((at) => model.causes[at]!.id)),
  );
  const parentsOf = (ids: readonly string[]): Parents => ids.map((id) => ({ id, states: statesOf.get(id) ?? [] }));

  const mechanismMatches = model.mechanisms.map(({ parents, rows }) =>
    rows === undefined ? undefined : firstMatches(parentsOf(parents ?? []), rows),
  );
  const testMatches = model.tests.map((test) => {
    const named = new Set(test.rows.flatMap((row) => Object.keys(row.when)));
    // the cause last: the kernel's answers run over the root fastest
    const parents = parentsOf([...statesOf.keys()].filter((id) => named.has(id)));
    return test.persistsAs === undefined
      ? firstMatches(parents, test.rows)
      : persistingMatches(parents, test.rows, test.persistsAs);
  });

  const accessBit = new Map(model.access.map((access, at) => [access.id, 1 << at]));
  const closureOf = (id: string): number => {
    const access = model.access.find((a) => a.id === id);
    return (access?.requires ?? []).reduce((bits, required) => bits | closureOf(required), accessBit.get(id) ?? 0);
  };
  const accessClosure = model.access.map((access) => closureOf(access.id));
  const testAccess = model.tests.map(({ access }) => closureOf(access));
  return compileNumbers(model, {
    hypotheses,
    causes,
    causeIndex: new Map(causes.map((id, at) => [id, at])),
    mechanismMatches,
    testMatches,
    accessBit,
    accessClosure,
    testAccess,
    closedForTest: model.tests.map((test, at) => closedForTest(model, accessClosure, test, testAccess[at]!)),
    questions: questionsOf(model),
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
  const parts: Omit<CompiledModel, symbol> = {
    structure,
    model,
    causes,
    causeIndex,
    // two causes: the misfire shows while either does
    activeFractions: Float64Array.from(
      structure.hypotheses,
      ({ members }) => 1 - members.reduce((asleep, at) => asleep * (1 - model.causes[at]!.activeFraction.best), 1),
    ),
    tests: new Map(testList.map((test) => [test.test.id, test])),
    testList,
    get sweep(): CompiledSweep {
      sweep ??= withModelErrors(() => compileSweep(networkOf(model, structure), { root: 'cause' }));
      return sweep;
    },
    accessBit: structure.accessBit,
    accessClosure: structure.accessClosure,
    cures: model.repairs.map(({ cures }) =>
      structure.hypotheses.flatMap(({ members }, cause) => {
        const success = members.reduce((all, at) => all * (cures[model.causes[at]!.id]?.best ?? 0), 1);
        return success > 0 ? [{ cause, success }] : [];
      }),
    ),
  };
  return parts as CompiledModel;
}

function compileTest(test: Test, index: number, matches: FirstMatches): CompiledTest {
  const outcomes = test.outcomes.map((outcome) => outcome.id);
  let table: Float64Array | undefined;
  return {
    test,
    index,
    outcomes,
    matches,
    table: {
      id: test.id,
      parents: matches.parents,
      states: outcomes.length,
      get table(): Float64Array {
        table ??= fillTable(matches, test.rows, outcomes);
        return table;
      },
    },
    factors: new Map(),
  };
}

function networkOf(model: Model, { hypotheses, causes, mechanismMatches }: CompiledModel['structure']): Network {
  return defineNetwork({
    variables: [
      { name: 'cause', states: causes, table: causes.map(() => 1 / causes.length) },
      ...model.mechanisms.map((mechanism, at) => mechanismVariable(model, mechanism, hypotheses, mechanismMatches[at])),
    ],
  });
}

function mechanismVariable(
  model: Model,
  mechanism: Mechanism,
  hypotheses: readonly Hypothesis[],
  matches: FirstMatches | undefined,
): VariableDefinition {
  const states = mechanism.states.map((state) => state.id);
  if (matches !== undefined) {
    const table = fillTable(matches, mechanism.rows ?? [], states);
    return { name: mechanism.id, states, parents: matches.parents, table };
  }
  const numbers = (row: Row | undefined): number[] => states.map((state) => row?.p[state] ?? 0);
  const table = hypotheses.flatMap(({ members }) => {
    const disturbing = members.flatMap((at) => model.causes[at]!.states[mechanism.id] ?? []);
    return disturbing.length === 0 ? numbers(mechanism.background) : disturbing.map(numbers).reduce(noisyMax);
  });
  return { name: mechanism.id, states, parents: ['cause'], table };
}
