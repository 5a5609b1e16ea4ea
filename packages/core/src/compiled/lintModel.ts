import type { Model } from '../model/model.ts';
import type { CompiledModel } from './compiledModel.ts';
import type { LintFinding } from './lintFinding.ts';
import { lintPairs } from './lintPairs.ts';
import { lintRepairs } from './lintRepairs.ts';
import { compileSeparation } from './separation.ts';

/** Total variation below which a test's results look alike under two causes; the dossier's own limit for "hard pairs". */
export const SEPARATES = 0.5;
const SAYS_SOMETHING = 0.02;

/** Reports what is legal but suspicious: pairs of causes that no single test separates (total variation below 0.5), tests that never
 * change a ranking, rows that no configuration reaches, weights and other numbers of the whole model without a range, pairs of tests called `modelled` that read nothing in
 * common, repairs that take less than their own access. Messages are for the author of the model, in English, as those of errors.
 * @example
 * ```ts
 * const found = lintModel(pump);
 * found.map(({ code, path }) => [code, path]) // [['causes-not-separated', '/causes/2'], ['repair-below-access', '/repairs/3/minutes']]
 * ``` */
export function lintModel(compiled: CompiledModel): readonly LintFinding[] {
  const { model, testList } = compiled;
  const causes = model.causes.map(({ id }) => id);
  const { best, between } = compileSeparation(compiled);
  const widest = new Float64Array(testList.length);
  const pairs = causes.flatMap((a, at) =>
    causes.slice(at + 1).flatMap((b, offset): LintFinding[] => {
      const other = at + 1 + offset;
      for (let t = 0; t < widest.length; t += 1) widest[t] = Math.max(widest[t]!, between(t, at, other));
      const { test, distance } = best(at, other);
      if (distance >= SEPARATES) return [];
      const apart = `the best, '${testList[test]?.test.id ?? 'none'}', tells them apart in ${Math.round(distance * 100)} of 100 cases`;
      const message = `no single test separates '${a}' and '${b}'; ${apart}`;
      return [{ code: 'causes-not-separated', path: `/causes/${at}`, message }];
    }),
  );
  const silent = testList.flatMap(({ test, index }): LintFinding[] =>
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
  return [
    ...pairs,
    ...silent,
    ...unusedRows(compiled),
    ...bare,
    ...numbersWithoutRange(model),
    ...lintPairs(model),
    ...lintRepairs(compiled),
  ];
}

/** Judgements that stand for the whole model and claim to be exact. */
function numbersWithoutRange(model: Model): LintFinding[] {
  const numbers = {
    labourPerHour: model.labourPerHour,
    twoCauseShare: model.twoCauseShare,
    plausibleFrom: model.plausibleFrom,
    goneWithoutCure: model.goneWithoutCure,
    presentIfNotNoted: model.presentIfNotNoted,
    leastRepairMinutes: model.leastRepairMinutes,
    needlessOpening: model.needlessOpening,
    aboutTheSame: model.aboutTheSame,
  };
  return Object.entries(numbers).flatMap(([name, number]): LintFinding[] =>
    number === undefined || number.definitional === true || number.low < number.high
      ? []
      : [{ code: 'number-without-range', path: `/${name}`, message: `'${name}' has no range` }],
  );
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
