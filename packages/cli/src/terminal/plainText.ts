const spelledOut: Readonly<Record<string, string>> = {
  '“': '"',
  '”': '"',
  '‘': "'",
  '’': "'",
  '…': '...',
  '–': '-',
  '—': '-',
  '−': '-',
  '×': 'x',
  '·': '-',
  '→': '->',
  '\u00a0': ' ',
  '\u202f': ' ',
  '€': 'EUR ',
  '£': 'GBP ',
  '¥': 'JPY ',
};

/** Text for a terminal that knows ASCII only: quotation marks, dashes and currency signs are spelled out, accents dropped, the rest is "?". */
export function plainText(text: string): string {
  const plain = text.normalize('NFKD').replaceAll(/\p{M}/gu, '');
  return Array.from(plain, (character) =>
    character.charCodeAt(0) < 128 ? character : (spelledOut[character] ?? '?'),
  ).join('');
}
