const eighths = ['', '▏', '▎', '▍', '▌', '▋', '▊', '▉'];

/** A probability as a bar of `width` columns, to an eighth of a column; in ASCII to half a column. Any positive probability shows. */
export function bar(probability: number, width: number, unicode: boolean): string {
  const parts = unicode ? 8 : 2;
  const filled = Math.max(probability > 0 ? 1 : 0, Math.round(probability * width * parts));
  const [whole, rest] = [Math.floor(filled / parts), filled % parts];
  const drawn = unicode ? '█'.repeat(whole) + eighths[rest] : '='.repeat(whole) + '-'.repeat(rest);
  return drawn.padEnd(width);
}
