import type { CodeMeaning, CodeRemark, KeptCode, MalformedCode } from '@faultodds/core';

/** What a code is about, in a phrase. */
export function describeMeaning(meaning: CodeMeaning): string {
  switch (meaning.kind) {
    case 'misfire':
      return meaning.cylinder === undefined ? 'misfire, no cylinder named' : `misfire of cylinder ${meaning.cylinder}`;
    case 'coil-circuit':
      return meaning.coil === undefined ? 'coil circuit, none named' : `circuit of coil ${meaning.coil}`;
    case 'injector-circuit':
      return meaning.cylinder === undefined
        ? 'injector circuit, none named'
        : `injector circuit of cylinder ${meaning.cylinder}`;
    case 'mixture':
      return `mixture ${meaning.direction}, bank ${meaning.bank}`;
    case 'cam':
      return `camshaft, bank ${meaning.bank}`;
    case 'circumstance':
      return circumstances[meaning.circumstance];
    case 'other':
      return meaning.standardClass;
  }
}

const circumstances = {
  'misfire-with-low-fuel': 'misfire with low fuel',
  'misfire-single-cylinder-not-told': 'misfire of one cylinder, which is not told',
  'misfire-on-start-up': 'misfire just after starting',
  'misfire-fuelling-disabled': 'misfire, fuel cut off to protect the catalyst',
  'crank-pattern-not-learned': 'crank pattern not learned',
  'cylinder-balance': 'balance of a cylinder',
} as const;

const reasons: Readonly<Record<KeptCode['reason'], string>> = {
  'says-nothing-here': 'says nothing about this misfire',
  circumstance: 'worth knowing, but names no cause',
  'other-cylinder': 'of another cylinder',
  'other-bank': 'of the other bank',
  'cylinder-not-told': 'names no cylinder',
  'beyond-the-engine': 'of a cylinder this engine has not',
  contradictory: 'the list holds its opposite as well',
};

/** A code that made no result, and why. */
export function describeKeptCode({ code, meaning, reason }: KeptCode): string {
  const status = code.status === 'stored' ? '' : ` ${code.status}`;
  return `${code.code}${status}: ${describeMeaning(meaning)}; ${reasons[reason]}`;
}

/** A piece of a list that is no code, and what was probably meant. */
export function describeMalformed({ text, at, hint }: MalformedCode): string {
  return `'${text}' at character ${at + 1} is no code: ${hint}`;
}

/** What a reader of the list should know. */
export function describeCodeRemark({ kind, codes }: CodeRemark): string {
  const list = codes.join(', ');
  switch (kind) {
    case 'coil-order-assumed':
      return `${list}: coil A is taken to fire cylinder 1, B cylinder 2 and so on; the order is the maker's, look it up.`;
    case 'suspect-not-named':
      return `${list}: other cylinders are named and this one is not. Is it the right one?`;
    case 'counts-doubtful':
      return `${list}: the crank pattern is not learned, misfire counts are doubtful until it is.`;
  }
}
