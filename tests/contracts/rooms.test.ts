import { dirname, join, normalize } from 'node:path/posix';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { rooms, type Rooms } from './rooms.ts';
import { importsOf, sourceFiles, type SourceFile } from './sourceFiles.ts';

// Inside a package arrows run one way too: a room imports rooms above it in the table, types included, and no two files import each other
// in a circle. A failure names file and line.

/** One import of another file of the same package. */
interface Arrow {
  readonly from: string;
  readonly line: number;
  readonly to: string;
}

const MOST_FILES = 30;
/** Rooms that are larger for now: the screens until they are laid out anew, the words of two languages in files of equal names. */
const larger: Readonly<Record<string, number>> = { 'playground/src/screens': 70, 'playground/src/words': 34 };

function arrowsOf(files: readonly SourceFile[]): Arrow[] {
  const known = new Set(files.map(({ path }) => path));
  return files.flatMap((file) =>
    importsOf(file)
      .map(({ from, line }) => ({
        from: file.path,
        line,
        to: normalize(join(dirname(file.path), from.replace(/\?.*$/, ''))),
      }))
      .filter(({ to }) => known.has(to)),
  );
}

/** The room of a file: the longest of the table that its folder lies in; its folder where there is none. */
function roomOf(source: string, table: Rooms, path: string): string {
  const folder = dirname(path).slice(source.length + 1) || '.';
  return (
    Object.keys(table)
      .filter((room) => folder === room || folder.startsWith(`${room}/`))
      .reduce((longest, room) => (room.length > longest.length ? room : longest), '') || folder
  );
}

function wrongArrows(source: string, table: Rooms, arrows: readonly Arrow[]): string[] {
  return arrows.flatMap(({ from, line, to }) => {
    const [here, there] = [roomOf(source, table, from), roomOf(source, table, to)];
    return here === there || table[here]?.includes(there) === true ? [] : [`${from}:${line} imports ${to}`];
  });
}

/** Imports that lie on circles: what is left when files that import nothing left, or that nothing left imports, are taken away. */
function circles(arrows: readonly Arrow[]): string[] {
  let left = arrows;
  for (;;) {
    const importing = new Set(left.map(({ from }) => from));
    const imported = new Set(left.map(({ to }) => to));
    const next = left.filter(({ from, to }) => imported.has(from) && importing.has(to));
    if (next.length === left.length) return left.map(({ from, line, to }) => `${from}:${line} imports ${to}`);
    left = next;
  }
}

const packages = Object.entries(rooms).map(([source, table]) => ({
  source,
  table,
  files: sourceFiles(source, ['.ts', '.svelte']),
}));

describe.each(packages)('$source', ({ source, table, files }) => {
  const arrows = arrowsOf(files);

  test('there are arrows to look at', () => {
    expect(arrows.length).toBeGreaterThan(100);
  });

  test('the table lists a room after all rooms it imports', () => {
    const names = Object.keys(table);
    const early = names.flatMap((room, at) =>
      table[room]!.filter((other) => !names.slice(0, at).includes(other)).map((other) => `${room} imports ${other}`),
    );
    expect(early).toEqual([]);
  });

  test('every file lies in a room of the table, every room holds files', () => {
    const used = new Set(files.map(({ path }) => roomOf(source, table, path)));
    expect([...used].sort()).toEqual(Object.keys(table).sort());
  });

  test('every import of another room stands in the table', () => {
    expect(wrongArrows(source, table, arrows)).toEqual([]);
  });

  test('every arrow of the table is in use', () => {
    const used = new Set(
      arrows.map(({ from, to }) => `${roomOf(source, table, from)} -> ${roomOf(source, table, to)}`),
    );
    const unused = Object.entries(table).flatMap(([room, others]) =>
      others.map((other) => `${room} -> ${other}`).filter((arrow) => !used.has(arrow)),
    );
    expect(unused).toEqual([]);
  });

  test('no files import each other in a circle, not by types either', () => {
    expect(circles(arrows)).toEqual([]);
  });

  test(`no room holds more than ${MOST_FILES} files`, () => {
    const held = files.map(({ path }) => roomOf(source, table, path));
    const full = Object.keys(table)
      .map((room) => ({ room: `${source}/${room}`, files: held.filter((other) => other === room).length }))
      .filter(({ room, files }) => files > (larger[room] ?? MOST_FILES));
    expect(full).toEqual([]);
  });

  test('DEVELOPERS.md names every room', () => {
    const text = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    const missing = Object.keys(table).filter((room) => room !== '.' && !text.includes(`\`${room}\``));
    expect(missing).toEqual([]);
  });
});

describe('what is looked for is found', () => {
  const table: Rooms = { low: [], high: ['low'] };
  const file = (path: string, code: string): SourceFile => ({ path: `src/${path}`, text: code, code });

  test('an arrow that points the wrong way, by its line', () => {
    const files = [
      file('low/a.ts', `export const a = 1;\nimport type { B } from '../high/b.ts';\n`),
      file('high/b.ts', `import { a } from '../low/a.ts';\n`),
    ];
    expect(wrongArrows('src', table, arrowsOf(files))).toEqual(['src/low/a.ts:2 imports src/high/b.ts']);
  });

  test('a room inside a room counts for itself', () => {
    const inside: Rooms = { low: [], 'low/inner': [], high: ['low'] };
    const files = [
      file('low/inner/c.ts', ''),
      file('low/a.ts', ''),
      file('high/b.ts', `import { c } from '../low/inner/c.ts';\nimport { a } from '../low/a.ts';\n`),
    ];
    expect(wrongArrows('src', inside, arrowsOf(files))).toEqual(['src/high/b.ts:1 imports src/low/inner/c.ts']);
  });

  test('a circle, by value, by types or dynamic, and nothing that only leads to one', () => {
    const files = [
      file('low/a.ts', `import { b } from './b.ts';\n`),
      file('low/b.ts', `import type { C } from './c.ts';\nimport './leaf.ts';\n`),
      file('low/c.ts', `const a = await import('./a.ts');\n`),
      file('low/leaf.ts', ''),
      file('low/user.ts', `import { a } from './a.ts';\n`),
    ];
    expect(circles(arrowsOf(files))).toEqual([
      'src/low/a.ts:1 imports src/low/b.ts',
      'src/low/b.ts:1 imports src/low/c.ts',
      'src/low/c.ts:1 imports src/low/a.ts',
    ]);
  });
});
