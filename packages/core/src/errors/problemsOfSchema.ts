import type * as z from 'zod/mini';
import { jsonPointer } from './jsonPointer.ts';
import type { Problem } from './faultoddsError.ts';
import { quoteFound } from './quoteFound.ts';

/** What a failed schema check found, one problem per issue, in our words.
 * @param input the value that was checked: what was found is quoted from it. */
export function problemsOfSchema(error: z.core.$ZodError, input: unknown): Problem[] {
  return error.issues.flatMap((issue) => problemsOfIssue(issue, issue.path, input));
}

type Issue = z.core.$ZodIssue;

function problemsOfIssue(issue: Issue, path: readonly PropertyKey[], input: unknown): Problem[] {
  const at = jsonPointer(path);
  const found = quoteFound(valueAt(input, path));
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        code: 'key-unknown',
        path: jsonPointer([...path, key]),
        message: `unknown property '${key}'`,
        hint: 'check the spelling, or remove it',
      }));
    case 'invalid_type':
      return [
        found === 'undefined'
          ? { code: 'value-missing', path: at, message: `missing, expected ${issue.expected}`, hint: `add it` }
          : {
              code: 'type-wrong',
              path: at,
              message: `found ${found}, expected ${issue.expected}`,
              hint: `write a ${issue.expected}`,
            },
      ];
    case 'invalid_value':
      return [
        {
          code: found === 'undefined' ? 'value-missing' : 'value-unknown',
          path: at,
          message: `found ${found}, expected ${issue.values.map((v) => quoteFound(v)).join(' or ')}`,
          hint: 'use one of the values listed',
        },
      ];
    case 'too_small':
      return [
        {
          code: 'too-small',
          path: at,
          message: `found ${found}, expected at least ${issue.minimum}`,
          hint: 'raise or complete it',
        },
      ];
    case 'too_big':
      return [
        {
          code: 'too-big',
          path: at,
          message: `found ${found}, expected at most ${issue.maximum}`,
          hint: 'lower or shorten it',
        },
      ];
    case 'invalid_format':
      return [
        {
          code: 'id-malformed',
          path: at,
          message: `found ${found}`,
          hint: `ids are lower-case letters, digits, - and _, not 'constructor'`,
        },
      ];
    case 'invalid_key':
      return [
        {
          code: 'id-malformed',
          path: at,
          message: `key '${String(path.at(-1))}' is not an id`,
          hint: `ids are lower-case letters, digits, - and _, not 'constructor'`,
        },
      ];
    case 'invalid_union':
      return closestBranch(issue, path, input);
    default:
      return [
        {
          code: 'value-invalid',
          path: at,
          message: `found ${found}`,
          hint: 'compare with the JSON Schema of this format',
        },
      ];
  }
}

/** The branch of a union that was meant: the one with the fewest faults. */
function closestBranch(issue: z.core.$ZodIssueInvalidUnion, path: readonly PropertyKey[], input: unknown): Problem[] {
  const branches = issue.errors.map((branch) =>
    branch.flatMap((inner) => problemsOfIssue(inner, [...path, ...inner.path], input)),
  );
  const closest = branches.sort((a, b) => a.length - b.length)[0];
  if (closest !== undefined && closest.length > 0) return closest;
  const found = quoteFound(valueAt(input, path));
  return [
    {
      code: 'kind-unknown',
      path: jsonPointer(path),
      message: `found ${found}`,
      hint: 'use one of the documented kinds',
    },
  ];
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let value = input;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}
