import * as z from 'zod/mini';
import { atLeastOne } from '../errors/atLeastOne.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { problemFor } from '../validation/problemFor.ts';
import { ModelError } from '../errors/modelError.ts';
import { optionSchemas } from '../validation/optionSchemas.ts';
import { problemsOfSchema } from '../validation/problemsOfSchema.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import { limitsSchema } from './limitsSchema.ts';
import type { ProblemTables } from './problemTables.ts';

// access is kept in the bits of one number, outcomes in six bits of another
const MOST_ACCESS = 31;
const MOST_OUTCOMES = 64;
// of a row that sums to one
const ROUNDING = 1e-6;

/** Looks at the tables of a decision problem: numbers that are probabilities and costs, rows that sum to one, lists as long as they must
 * be, positions that exist. @throws ModelError */
export function checkTables(tables: ProblemTables): void {
  const checked = schemaOf(tables).safeParse(tables);
  const problems = checked.success ? findSumProblems(tables) : problemsOfSchema(checked.error, tables);
  if (atLeastOne(problems)) throw new ModelError(problems);
}

function schemaOf(tables: ProblemTables): z.ZodMiniType {
  const causes = lengthOf(tables?.prior);
  const [accesses, tests] = [lengthOf(tables?.access), lengthOf(tables?.tests)];
  const share = optionSchemas.number(0, 1);
  const cost = optionSchemas.number(0, LARGEST_NUMBER);
  const id = z.string().check(z.minLength(1));
  const byCause = <T extends z.ZodMiniType>(item: T): z.ZodMiniType => z.array(item).check(z.length(causes));
  const access = z.optional(optionSchemas.whole(0, accesses - 1));
  const accessList = z.optional(z.array(optionSchemas.whole(0, accesses - 1)));
  const answers = z.optional(z.array(optionSchemas.whole(0, tests - 1)));
  const follows = z.optional(
    z.array(
      z.strictObject({ test: optionSchemas.whole(0, tests - 1), outcome: optionSchemas.whole(0, MOST_OUTCOMES - 1) }),
    ),
  );
  return z.strictObject({
    prior: z.array(share).check(z.minLength(1)),
    access: z.optional(
      z
        .array(z.strictObject({ cost, requires: accessList, opensEngine: z.optional(z.boolean()) }))
        .check(z.maxLength(MOST_ACCESS)),
    ),
    tests: z.array(
      z.strictObject({
        id,
        cost,
        access,
        closes: accessList,
        impossibleWith: accessList,
        outcomeGivenCause: byCause(z.array(share).check(z.minLength(1), z.maxLength(MOST_OUTCOMES))),
        answers,
        asleep: z.optional(z.strictObject({ chance: byCause(share), again: cost })),
        follows,
      }),
    ),
    repairs: z.array(z.strictObject({ id, cost, access, cures: byCause(share), answers })),
    referralCost: byCause(cost),
    needlessOpening: z.optional(cost),
    open: accessList,
    limits: z.optional(limitsSchema),
    currency: z.optional(z.string()),
  });
}

function findSumProblems({ prior, access = [], tests }: ProblemTables): Problem[] {
  const sums = [
    ['/prior', prior] as const,
    ...tests.flatMap(({ outcomeGivenCause }, t) =>
      outcomeGivenCause.map((row, c) => [`/tests/${t}/outcomeGivenCause/${c}`, row] as const),
    ),
  ];
  const rows = sums.flatMap(([path, row]): Problem[] => {
    const sum = row.reduce((total, p) => total + p, 0);
    return Math.abs(sum - 1) <= ROUNDING ? [] : [problemFor('row-not-one/table', path, { sum })];
  });
  const ragged = tests.flatMap(({ outcomeGivenCause }, t): Problem[] =>
    outcomeGivenCause.flatMap((row, c) => {
      const { length } = outcomeGivenCause[0]!;
      const parts = {
        found: { kind: 'list', length: row.length } as const,
        most: String(length),
        least: String(length),
      };
      if (row.length === length) return [];
      return [problemFor(row.length > length ? 'too-big' : 'too-small', `/tests/${t}/outcomeGivenCause/${c}`, parts)];
    }),
  );
  // what one requires stands before it: so there is no circle
  const circles = access.flatMap(({ requires = [] }, at) =>
    requires.flatMap((required, k): Problem[] => {
      if (required < at) return [];
      const parts = { found: { kind: 'plain', text: String(required) } as const, most: String(at - 1) };
      return [problemFor('too-big', `/access/${at}/requires/${k}`, parts)];
    }),
  );
  // as with access, what one follows stands before it
  const follows = tests.flatMap((test, t) =>
    (test.follows ?? []).flatMap((look, k): Problem[] => {
      const limits = [
        ['test', t - 1],
        ['outcome', (tests[look.test]!.outcomeGivenCause[0] ?? []).length - 1],
      ] as const;
      return limits.flatMap(([what, most]): Problem[] => {
        if (look[what] <= most) return [];
        const parts = { found: { kind: 'plain', text: String(look[what]) } as const, most: String(most) };
        return [problemFor('too-big', `/tests/${t}/follows/${k}/${what}`, parts)];
      });
    }),
  );
  return [...rows, ...ragged, ...circles, ...follows];
}

function lengthOf(list: unknown): number {
  return Array.isArray(list) ? list.length : 0;
}
