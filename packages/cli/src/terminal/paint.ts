import type { Terminal } from './terminal.ts';

/** The few looks there are: the mark that begins each, and its codes on and off. Unicode keeps U+FDD0 to U+FDEF for a program's own use, and
 * `textOf` lets none of them in: what a file says never passes for a look. */
export const looks = {
  strong: { mark: '\uFDD0', on: 1, off: 22 },
  dim: { mark: '\uFDD1', on: 2, off: 22 },
  bar: { mark: '\uFDD2', on: 36, off: 39 },
  good: { mark: '\uFDD3', on: 32, off: 39 },
  caution: { mark: '\uFDD4', on: 33, off: 39 },
} as const;

/** Ends every look. */
export const LOOK_END = '\uFDEF';

/** Text marked for one of the few looks; unchanged where colour is off. Colour never carries anything alone. */
export function paint({ colour }: Terminal, look: keyof typeof looks, text: string): string {
  return !colour || text === '' ? text : `${looks[look].mark}${text}${LOOK_END}`;
}
