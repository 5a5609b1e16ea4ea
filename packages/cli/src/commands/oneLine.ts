/** Text on one line: its lines trimmed and joined by blanks. Linear in the text, whatever runs of blanks it holds. */
export function oneLine(text: string): string {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join(' ');
}
