/** A number of a line, with the name it was given: `3: 9.2` is named "3". `-` stands for what was not read. */
export interface NumberRead {
  readonly value: number | undefined;
  readonly name?: string;
}

/** A line of numbers, read; or why it cannot be. */
export type NumbersRead =
  | { readonly kind: 'numbers'; readonly numbers: readonly NumberRead[]; readonly unit: string | undefined }
  | { readonly kind: 'problem'; readonly message: string };

// a name, a number or a dash, a unit that may have several words ("in Hg")
const PIECE =
  /(?:(\d{1,2}|maker)\s*[:=]\s*)?([+-]?\d+(?:[.,]\d+)?|-)(?:\s*((?!maker\b)[^\d\s;,+-][^\s;,]*(?:[ \t]+(?!maker\b)[A-Za-z°][^\s;,:=]*(?![:=\w]))*))?[\s;,]*/iy;

/** Reads numbers as one writes them down: `12.4 12.1 - 12.5 bar`, `3: 9,2 bar; 4: 12.5`. A comma between digits is a decimal comma. One
 * unit counts for all, wherever it stands. */
export function readNumbers(text: string): NumbersRead {
  const line = text
    .trim()
    .replaceAll(/[−–]/g, '-')
    .replaceAll(/\b1\/min\b/g, 'rpm');
  const grouped = /(?<![\d.,])[1-9]\d{0,2},\d{3}(?![\d,])/.exec(line)?.[0];
  if (grouped !== undefined) {
    const plain = grouped.replace(',', '');
    return problem(`${grouped} can be read in two ways: write ${plain}, or ${grouped.replace(',', '.')}`);
  }
  // from the first digit of a number only: from each of them a long number would be walked anew
  const listed = /(?<!\d)\d+,\d+,\d+/.exec(line)?.[0];
  if (listed !== undefined) return problem(`${listed} can be read in several ways: put spaces between the numbers`);
  const numbers: NumberRead[] = [];
  const units = new Map<string, string>();
  PIECE.lastIndex = 0;
  while (PIECE.lastIndex < line.length) {
    const at = PIECE.lastIndex;
    const [, name, digits, unit] = PIECE.exec(line) ?? [];
    if (digits === undefined) return problem(`expected a number, found '${line.slice(at, at + 12)}'`);
    const value = digits === '-' ? undefined : Number(digits.replace(',', '.'));
    numbers.push(name === undefined ? { value } : { value, name: name.toLowerCase() });
    if (unit !== undefined) units.set(unit.toLowerCase(), unit);
  }
  if (units.size > 1) return problem(`one unit for all numbers, not ${[...units.values()].join(' and ')}`);
  return { kind: 'numbers', numbers, unit: [...units.values()][0] };
}

const problem = (message: string): NumbersRead => ({ kind: 'problem', message });
