import type * as z from 'zod/mini';
import { jsonPointer } from '../errors/jsonPointer.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { foundIn } from '../errors/foundIn.ts';
import { problemFor } from './problemFor.ts';

/** What a failed schema check found, one problem per issue, in our words.
 * @param input the value that was checked: what was found is quoted from it. */
export function problemsOfSchema(error: z.core.$ZodError, input: unknown): Problem[] {
  return error.issues.flatMap((issue) => problemsOfIssue(issue, issue.path, input));
}

type Issue = z.core.$ZodIssue;

function problemsOfIssue(issue: Issue, path: readonly PropertyKey[], input: unknown): Problem[] {
  const at = jsonPointer(path);
  const found = foundIn(valueAt(input, path));
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => problemFor('key-unknown', jsonPointer([...path, key]), { key }));
    case 'invalid_type': {
      const { expected } = issue;
      return [
        found.kind === 'nothing'
          ? problemFor('value-missing', at, { expected })
          : problemFor('type-wrong', at, { found, expected }),
      ];
    }
    case 'custom':
      return [
        issue.params?.['expected'] === undefined
          ? problemFor('value-invalid', at, { found })
          : problemFor('type-wrong', at, { found, expected: String(issue.params['expected']) }),
      ];
    case 'invalid_value': {
      const values = issue.values.map(foundIn);
      return [
        found.kind === 'nothing'
          ? problemFor('value-missing/listed', at, { values })
          : problemFor('value-unknown/listed', at, { found, values }),
      ];
    }
    case 'too_small':
      return [problemFor('too-small', at, { found, least: String(issue.minimum) })];
    case 'too_big':
      return [problemFor('too-big', at, { found, most: String(issue.maximum) })];
    case 'invalid_format':
      return [problemFor('id-malformed', at, { found })];
    case 'invalid_key':
      return [problemFor('id-malformed/key', at, { key: String(path.at(-1)) })];
    case 'invalid_union':
      return closestBranch(issue, path, input);
    default:
      return [problemFor('value-invalid', at, { found })];
  }
}

/** The branch of a union that was meant: the one with the fewest faults. */
function closestBranch(issue: z.core.$ZodIssueInvalidUnion, path: readonly PropertyKey[], input: unknown): Problem[] {
  const branches = issue.errors.map((branch) =>
    branch.flatMap((inner) => problemsOfIssue(inner, [...path, ...inner.path], input)),
  );
  const closest = branches.sort((a, b) => a.length - b.length)[0];
  if (closest !== undefined && closest.length > 0) return closest;
  return [problemFor('kind-unknown', jsonPointer(path), { found: foundIn(valueAt(input, path)) })];
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
