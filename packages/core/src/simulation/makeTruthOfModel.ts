import { evidenceOf } from '../evidence/evidenceOf.ts';
import type { Facts } from '../evidence/facts.ts';
import { beliefOf } from '../belief/beliefOf.ts';
import type { Circumstances } from '../cost/circumstances.ts';
import { compileCaseProblem } from '../problem/compileCaseProblem.ts';
import type { Random } from '../distributions/random.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { drawIndex } from './drawIndex.ts';
import type { Truth } from './truth.ts';
import { makeTruthOfProblem } from './makeTruthOfProblem.ts';

// Engines drawn for one cause before giving up on finding one that shows what is on record.
const TRIES = 2000;

/** The world as a model says, from given facts on: a case is a cause with a state of every mechanism, drawn once; a test then shows an
 * outcome given these alone, which is a look into its table. The same distribution as `makeTruthOfProblem`, without a sweep per state.
 *
 * What is on record is respected by rejection (von Neumann 1951); where it is too rare for that, outcomes are drawn given the cause and all
 * results instead.
 * @throws EvidenceError as `beliefOf` and `compileCaseProblem` do.
 * @example
 * ```ts
 * const { causes, draw } = makeTruthOfModel(compiled, facts);
 * draw(createRandom(7)).cause < causes.length // true
 * ``` */
export function makeTruthOfModel(
  compiled: CompiledModel,
  facts: Facts,
  circumstances: Circumstances = {},
  id = 'as-believed',
): Truth {
  const problem = compileCaseProblem(compiled, beliefOf(compiled, facts), circumstances);
  const whole = makeTruthOfProblem(problem, id);
  const { network, root } = compiled.sweep;
  const order = network.topologicalOrder.filter((variable) => variable !== root);
  const positions = (names: readonly string[]): readonly number[] => names.map((name) => network.indexOf.get(name)!);
  const indexIn = (variables: readonly number[], states: Int32Array): number => {
    let index = 0;
    for (const variable of variables) index = index * network.variables[variable]!.states.length + states[variable]!;
    return index;
  };
  const onRecord = evidenceOf(compiled, facts).map(({ variables, values }) => ({
    variables: positions(variables),
    values,
    largest: values.reduce((a, b) => Math.max(a, b), 0),
  }));
  const tests = problem.tests.map((test) => {
    const { table } = compiled.tests.get(test.id)!;
    return { parents: positions(table.parents), table: table.table, outcomes: test.outcomes.length };
  });

  const drawStates = (cause: number, random: Random): Int32Array => {
    const states = new Int32Array(network.variables.length);
    states[root] = cause;
    for (const at of order) {
      const { parents, states: names, table } = network.variables[at]!;
      states[at] = drawIndex(table, random(), indexIn(parents, states) * names.length, names.length);
    }
    return states;
  };
  const shows = (states: Int32Array, random: Random): boolean =>
    onRecord.every(({ variables, values, largest }) => random() * largest < values[indexIn(variables, states)]!);

  return {
    ...whole,
    draw: (random) => {
      const drawn = whole.draw(random);
      for (let tries = 0; tries < TRIES; tries += 1) {
        const states = drawStates(drawn.cause, random);
        if (!shows(states, random)) continue;
        return {
          cause: drawn.cause,
          outcome: (test, _, uniform) => {
            const { parents, table, outcomes } = tests[test]!;
            return drawIndex(table, uniform, indexIn(parents, states) * outcomes, outcomes);
          },
        };
      }
      return drawn;
    },
  };
}
