import { sweepRoot } from '@faultodds/inference';
import type { CompiledModel } from './compiledModel.ts';

/** Something legal but suspicious in a model. */
export interface LintFinding {
  /** `causes-not-separated`, `test-says-nothing`, `row-never-used`, `weight-without-range`. */
  readonly code: string;
  /** JSON Pointer. */
  readonly path: string;
  readonly message: string;
}

// Total variation below which a test's results look alike under two causes; the dossier's own limit for "hard pairs".
const SEPARATES = 0.5;
const SAYS_SOMETHING = 0.02;

/** Reports what is legal but suspicious: pairs of causes that no single test separates (total variation below 0.5), tests that never
 * change a ranking, rows that no configuration reaches, weights without a range. */
export function lintModel(compiled: CompiledModel): readonly LintFinding[] {
  const { model, causes } = compiled;
  const { targets } = sweepRoot(compiled.sweep, {
    likelihoods: [],
    targets: compiled.testList.map((test) => test.table),
  });
  const distance = (test: string, outcomes: number, a: number, b: number): number => {
    const table = targets.get(test)!;
    let sum = 0;
    for (let o = 0; o < outcomes; o += 1) sum += Math.abs(table[a * outcomes + o]! - table[b * outcomes + o]!);
    return sum / 2;
  };

  const widest = new Float64Array(compiled.testList.length);
  const pairs = causes.flatMap((a, at) =>
    causes.slice(at + 1).flatMap((b, offset): LintFinding[] => {
      let best = { test: '', tv: 0 };
      compiled.testList.forEach(({ test, outcomes }, t) => {
        const tv = distance(test.id, outcomes.length, at, at + 1 + offset);
        widest[t] = Math.max(widest[t]!, tv);
        if (tv > best.tv) best = { test: test.id, tv };
      });
      if (best.tv >= SEPARATES) return [];
      const message = `no single test separates '${a}' and '${b}'; the best, '${best.test}', tells them apart in ${Math.round(best.tv * 100)} of 100 cases`;
      return [{ code: 'causes-not-separated', path: `/causes/${at}`, message }];
    }),
  );
  const silent = compiled.testList.flatMap(({ test, index }): LintFinding[] =>
    widest[index]! >= SAYS_SOMETHING
      ? []
      : [{ code: 'test-says-nothing', path: `/tests/${index}`, message: `'${test.id}' never changes a ranking` }],
  );
  const bare = model.causes.flatMap((cause, at): LintFinding[] =>
    cause.weight.low < cause.weight.high
      ? []
      : [
          {
            code: 'weight-without-range',
            path: `/causes/${at}/weight`,
            message: `the weight of '${cause.id}' has no range`,
          },
        ],
  );
  return [...pairs, ...silent, ...unusedRows(compiled), ...bare];
}

/** Rows behind earlier ones that always match first. */
function unusedRows({ model, testList }: CompiledModel): LintFinding[] {
  const statesOf = new Map(model.mechanisms.map((m) => [m.id, m.states.map((state) => state.id)]));
  statesOf.set(
    'cause',
    model.causes.map((cause) => cause.id),
  );
  return testList.flatMap(({ test, index }) =>
    test.rows.flatMap((row, r): LintFinding[] => {
      const covered = test.rows.slice(0, r).some((earlier) =>
        Object.entries(earlier.when).every(([parent, states]) => {
          const here = row.when[parent] ?? statesOf.get(parent) ?? [];
          return here.every((state) => states.includes(state));
        }),
      );
      return covered
        ? [
            {
              code: 'row-never-used',
              path: `/tests/${index}/rows/${r}`,
              message: `an earlier row of '${test.id}' always matches first`,
            },
          ]
        : [];
    }),
  );
}
