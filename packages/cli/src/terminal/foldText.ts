/** A paragraph folded at spaces to lines of at most `width` columns, each indented; longer words stand alone. Breaks of its own (a note of
 * several lines) become spaces. */
export function foldText(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.replaceAll(/[\t\n\v\f\r]+/g, ' ').split(' ')) {
    if (line !== '' && indent.length + line.length + 1 + word.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, indent + line].join('\n');
}
