import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { filesUnder, root } from '../fixtures/filesUnder.ts';

/** A hand-written file of the repository. */
export interface SourceFile {
  /** Relative to the root, with slashes. */
  readonly path: string;
  readonly text: string;
  /** The text with comments blanked out, lines kept. */
  readonly code: string;
}

/** One import or re-export. */
export interface Import {
  readonly from: string;
  readonly line: number;
}

/** Files under a folder with one of the endings; unit tests are left out unless asked for. */
export function sourceFiles(folder: string, endings: readonly string[], withTests = false): SourceFile[] {
  return endings
    .flatMap((ending) => filesUnder(folder, ending))
    .filter((path) => withTests || !/\.(test|browser|bench)\.ts$/.test(path))
    .map((path) => {
      const text = readFileSync(join(root, path), 'utf8');
      return { path: path.replaceAll('\\', '/'), text, code: withoutComments(text) };
    });
}

/** Everything a file imports, static, dynamic or for its effects, types included. */
export function importsOf({ code }: SourceFile): Import[] {
  const pattern = /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+)(['"])([^'"\n]+)\1/g;
  return [...code.matchAll(pattern)].map((match) => ({ from: match[2]!, line: lineOf(code, match.index) }));
}

/** `path:line` of every place where a pattern (with the g flag) matches the code. */
export function placesOf(file: SourceFile, pattern: RegExp): string[] {
  return [...file.code.matchAll(pattern)].map((match) => `${file.path}:${lineOf(file.code, match.index)}`);
}

function lineOf(text: string, at: number): number {
  return text.slice(0, at).split('\n').length;
}

// Strings are matched first, so that '//' inside one is no comment. A quote inside a regular expression or a template would be taken
// for a string's; that only ever hides a comment's end on the same line.
function withoutComments(text: string): string {
  const pattern = /'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|\/\*[\s\S]*?\*\/|<!--[\s\S]*?-->|(?<![:\\])\/\/[^\n]*/g;
  return text.replace(pattern, (match) => (/^['"]/.test(match) ? match : match.replace(/[^\n]/g, ' ')));
}
