/** What stands in a place, as a message may say it: texts cut short, lists and objects by their kind. Plain data, the same in every language. */
export type Found =
  | { readonly kind: 'text' | 'plain'; readonly text: string }
  | { readonly kind: 'list'; readonly length: number }
  | { readonly kind: 'object' | 'function' | 'nothing' };

const LONGEST = 40;

/** Describes what was found without walking into it. */
export function foundIn(value: unknown): Found {
  if (typeof value === 'string') {
    return { kind: 'text', text: value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value };
  }
  if (Array.isArray(value)) return { kind: 'list', length: value.length };
  if (value === undefined) return { kind: 'nothing' };
  if (typeof value === 'object' && value !== null) return { kind: 'object' };
  return typeof value === 'function' ? { kind: 'function' } : { kind: 'plain', text: String(value) };
}
