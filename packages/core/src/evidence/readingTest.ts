import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';
import { fillTable, firstMatches, type FirstMatches } from '../compiled/firstMatches.ts';
import type { MeasuredReading } from '../model/readingModel.ts';

// Structure per compiled structure (shared by redrawn numbers), tables per compiled test: made when first asked, gone with their model.
const matchesOf = new WeakMap<CompiledModel['structure'], Map<string, FirstMatches>>();
const testsOf = new WeakMap<CompiledTest, Map<string, CompiledTest>>();

// Numbers are many (a slider moved through a range): factors of the last few are kept, not of all.
const KEPT = 64;

/** A measured reading as a test of its own whose outcomes are the distributions: P(distribution | mechanisms, cause) from its rows. So a
 * number is evidence of the same form as an outcome, only finer. */
export function readingTest(compiled: CompiledModel, compiledTest: CompiledTest, model: MeasuredReading): CompiledTest {
  const known = testsOf.get(compiledTest) ?? new Map<string, CompiledTest>();
  testsOf.set(compiledTest, known);
  const made = known.get(model.id) ?? makeTest(compiled, compiledTest, model);
  known.set(model.id, made);
  if (made.factors.size > KEPT) made.factors.clear();
  return made;
}

function makeTest(compiled: CompiledModel, { test, index }: CompiledTest, model: MeasuredReading): CompiledTest {
  const outcomes = model.distributions.map(({ id }) => id);
  const matches = structureOf(compiled, `${test.id}/${model.id}`, model);
  const rows = model.rows.map((row) => ({
    ...row,
    p: Object.fromEntries(outcomes.map((id) => [id, row.p[id] ?? 0])),
  }));
  // asleep the numbers are those of a sound engine
  const { asleep: _, ...rest } = test;
  return {
    test: { ...rest, rows },
    index,
    outcomes,
    matches,
    table: {
      id: `${test.id}/${model.id}`,
      parents: matches.parents,
      states: outcomes.length,
      table: fillTable(matches, rows, outcomes),
    },
    factors: new Map(),
  };
}

function structureOf({ model, structure }: CompiledModel, key: string, { rows }: MeasuredReading): FirstMatches {
  const known = matchesOf.get(structure) ?? new Map<string, FirstMatches>();
  matchesOf.set(structure, known);
  const made = known.get(key);
  if (made !== undefined) return made;
  const named = new Set(rows.flatMap((row) => Object.keys(row.when)));
  const mechanisms = model.mechanisms.map(({ id, states }) => ({ id, states: states.map((state) => [state.id]) }));
  // the cause last, as everywhere
  const cause = {
    id: 'cause',
    states: structure.hypotheses.map(({ members }) => members.map((at) => model.causes[at]!.id)),
  };
  const matches = firstMatches(
    [...mechanisms, cause].filter(({ id }) => named.has(id)),
    rows,
  );
  known.set(key, matches);
  return matches;
}
