import type { Problem } from '../../errors/faultoddsError.ts';
import { shortenMessage } from '../../errors/shortenMessage.ts';
import type { Language } from '../languages/language.ts';
import type { Worded } from '../worded.ts';

/** What is wrong and what to do about it, in a language. A problem without wording keeps its message. Also for what is no code in a list of
 * trouble codes.
 * @example
 * ```ts
 * const [piece] = parseTroubleCodes('P03').malformed.map((found) => describeProblem(found, english));
 * piece // { message: "'P03' is not a code", hint: 'a code has a letter and four digits, this one 2' }
 * ``` */
export function describeProblem(
  problem: Pick<Problem, 'wording' | 'hint'> & { readonly message?: string },
  { problems }: Language,
): { readonly message: string; readonly hint: string } {
  const { wording, message: own = '', hint: ownHint } = problem;
  const say =
    wording !== undefined && Object.hasOwn(problems, wording.key)
      ? (problems[wording.key as keyof typeof problems] as (parts: unknown) => Worded)
      : undefined;
  if (wording === undefined || say === undefined) return { message: own, hint: ownHint };
  const [message, hint] = say(wording.parts);
  return { message: shortenMessage(message), hint };
}
