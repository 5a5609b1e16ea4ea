import { problems } from '../words/languages/en/problems/problems.ts';
import type { Problem } from '../errors/faultoddsError.ts';

/** Name of a problem in the catalogue of a language: its code, and after a slash which of several sentences. */
export type ProblemKey = keyof typeof problems;

/** What the sentences of a problem are made of. */
export type ProblemParts<Key extends ProblemKey> =
  Parameters<(typeof problems)[Key]> extends [infer Parts] ? Parts : Record<string, never>;

/** A problem worded in English, with what another language needs to word it anew.
 * @param code where it is not the first part of the key. */
export function problemFor<Key extends ProblemKey>(
  key: Key,
  path: string,
  parts: ProblemParts<Key>,
  code: string = key.split('/')[0]!,
): Problem {
  const say = problems[key] as (parts: ProblemParts<Key>) => readonly [string, string];
  const [message, hint] = say(parts);
  return { code, path, message, hint, wording: { key, parts } };
}
