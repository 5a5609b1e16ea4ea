import type { CodeRemark, UnusedCode, MalformedCode } from '@faultodds/core';
import { describeCodeMeaning } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';

const reasons: Readonly<Record<UnusedCode['reason'], string>> = {
  'says-nothing-here': 'says nothing about this misfire',
  circumstance: 'worth knowing, but names no cause',
  'other-cylinder': 'of another cylinder',
  'other-bank': 'of the other bank',
  'cylinder-not-told': 'names no cylinder',
  'beyond-the-engine': 'of a cylinder this engine does not have',
  contradictory: 'the list contains its opposite as well',
};

/** A code that made no result, and why. */
export function describeKeptCode({ code, meaning, reason }: UnusedCode): string {
  const status = code.status === 'stored' ? '' : ` ${code.status}`;
  return `${code.code}${status}: ${describeCodeMeaning(meaning, english)}; ${reasons[reason]}`;
}

/** A piece of a list that is no code, and what was probably meant. */
export function describeMalformed({ text, at, hint }: MalformedCode): string {
  return `'${text}' at character ${at + 1} is not a code: ${hint}`;
}

/** What a reader of the list should know. */
export function describeCodeRemark({ kind, codes }: CodeRemark): string {
  const list = codes.join(', ');
  switch (kind) {
    case 'coil-order-assumed':
      return `${list}: coil A is assumed to fire cylinder 1, B cylinder 2 and so on; the order depends on the maker: check it.`;
    case 'suspect-not-named':
      return `${list}: other cylinders are named and this one is not. Is it the right one?`;
    case 'counts-doubtful':
      return `${list}: the crank pattern is not learned, misfire counts are doubtful until it is.`;
  }
}
