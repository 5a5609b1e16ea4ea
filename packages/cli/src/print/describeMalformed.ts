import type { MalformedCode } from '@faultodds/core/codes';

/** A piece of a list that is not a code, and what was probably meant. */
export function describeMalformed({ text, at, hint }: MalformedCode): string {
  return `'${text}' at character ${at + 1} is not a code: ${hint}`;
}
