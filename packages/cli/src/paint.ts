import type { Terminal } from './terminal.ts';

const codes = { strong: [1, 22], faint: [2, 22], bar: [36, 39], good: [32, 39], caution: [33, 39] } as const;

/** Text in one of the few looks there are; unchanged where colour is off. Colour never carries anything alone. */
export function paint({ colour }: Terminal, look: keyof typeof codes, text: string): string {
  if (!colour || text === '') return text;
  const [on, off] = codes[look];
  return `\u001b[${on}m${text}\u001b[${off}m`;
}
