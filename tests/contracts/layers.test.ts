import { dirname, join, normalize } from 'node:path/posix';
import { describe, expect, test } from 'vitest';
import { filesUnder } from '../fixtures/filesUnder.ts';
import { importsOf, placesOf, sourceFiles, type SourceFile } from './sourceFiles.ts';

// Arrows run one way: playground, cli -> core -> inference; the knowledge is data. A failure names file and line.

/** Imports of a file that no rule allows, as `path:line imports what`. */
function forbidden(file: SourceFile, within: string, allowed: readonly (string | RegExp)[]): string[] {
  return importsOf(file)
    .filter(({ from }) => {
      if (from.startsWith('.')) return !normalize(join(dirname(file.path), from)).startsWith(`${within}/`);
      return !allowed.some((one) => (typeof one === 'string' ? from === one : one.test(from)));
    })
    .map(({ from, line }) => `${file.path}:${line} imports ${from}`);
}

const inference = sourceFiles('packages/inference/src', ['.ts']);
const core = sourceFiles('packages/core/src', ['.ts']);
const cli = sourceFiles('packages/cli/src', ['.ts']);
const playground = sourceFiles('playground/src', ['.ts', '.svelte', '.js']);

test('there is something to look at', () => {
  for (const files of [inference, core, cli]) expect(files.length).toBeGreaterThan(3);
  expect(core.flatMap(importsOf).length).toBeGreaterThan(100);
});

test('an arrow that points the wrong way is found, with its line', () => {
  const code = `import { a } from './near.ts';\nimport type { B } from '../../cli/src/far.ts';\nexport { c } from 'jstat';\nawait import("immer");\n`;
  expect(forbidden({ path: 'packages/core/src/x.ts', text: code, code }, 'packages/core/src', ['immer'])).toEqual([
    'packages/core/src/x.ts:2 imports ../../cli/src/far.ts',
    'packages/core/src/x.ts:3 imports jstat',
  ]);
});

test('what stands in a comment is no code, what stands in a string is', () => {
  const [file] = sourceFiles('tests/contracts', ['acceptsJson.ts']);
  expect(file!.text).toContain('a second reading of the shipped schemas');
  expect(file!.code).not.toContain('a second reading of the shipped schemas');
  expect(file!.code.split('\n').length).toBe(file!.text.split('\n').length);
  expect(placesOf({ ...file!, code: "a();\nb('Math.random');" }, /Math\.random/g)).toEqual([
    'tests/contracts/acceptsJson.ts:2',
  ]);
});

test('inference imports nothing but itself', () => {
  expect(inference.flatMap((file) => forbidden(file, 'packages/inference/src', []))).toEqual([]);
});

test('core imports inference, zod, immer, jstat and d3-random, nothing else', () => {
  const kernel = ['@faultodds/inference', '@faultodds/inference/sweeps', '@faultodds/inference/sampling'];
  const allowed = [...kernel, 'zod/mini', 'immer', 'jstat', 'd3-random'];
  expect(core.flatMap((file) => forbidden(file, 'packages/core/src', allowed))).toEqual([]);
});

test.each([
  ['jstat', 'packages/core/src/distributions/'],
  ['d3-random', 'packages/core/src/distributions/'],
  ['immer', 'packages/core/src/session/'],
])('%s has one door, %s', (name, door) => {
  const users = core.filter((file) => importsOf(file).some(({ from }) => from === name || from.startsWith(`${name}/`)));
  expect(users.map(({ path }) => path).filter((path) => !path.startsWith(door))).toEqual([]);
  expect(users.length).toBeGreaterThan(0);
});

test('the command line knows core and the knowledge, never the kernel', () => {
  const allowed = [/^@faultodds\/core($|\/)/, '@faultodds/misfire', 'commander', '@clack/prompts', /^node:/];
  expect(cli.flatMap((file) => forbidden(file, 'packages/cli/src', allowed))).toEqual([]);
});

test('the playground asks core: it never imports the kernel, nor a package by its files', () => {
  const wrong = playground.flatMap((file) => [
    ...forbidden(file, 'playground/src', [/^(?!@faultodds\/inference)/]),
    ...importsOf(file)
      .filter(({ from }) => /^@faultodds\/(core|misfire)\/(src|dist)/.test(from))
      .map(({ from, line }) => `${file.path}:${line} imports ${from}`),
  ]);
  expect(wrong).toEqual([]);
});

test('the knowledge holds no code', () => {
  const files = filesUnder('priors', '').filter((path) => /\.[a-z]+$/i.test(path));
  expect(files.length).toBeGreaterThan(40);
  expect(files.filter((path) => !/\.(json|md)$/.test(path))).toEqual([]);
});

describe('in packages, tests aside', () => {
  const all = [...inference, ...core, ...cli];
  const pure = [...inference, ...core];
  test.each([
    ['Math.random', /\bMath\s*\.\s*random\b/g, all],
    ['Date.now or new Date()', /\bDate\s*\.\s*now\b|\bnew\s+Date\s*\(\s*\)/g, all],
    ['performance.now', /\bperformance\s*\.\s*now\b/g, all],
    ['throw new Error(', /\bthrow\s+new\s+(Error|TypeError|RangeError)\s*\(/g, all],
    ['a default export', /\bexport\s+default\b/g, all.filter(({ path }) => !path.endsWith('.d.ts'))],
    ['console', /\bconsole\s*\./g, pure],
    ['the DOM', /\b(document|window|localStorage|navigator)\s*\./g, pure],
    ['the file system or the process', /\bprocess\s*\.|['"]node:/g, pure],
    ['a global written to', /\bglobalThis\b/g, pure],
  ])('%s occurs nowhere', (_, pattern, files) => {
    expect(files.flatMap((file) => placesOf(file, pattern))).toEqual([]);
  });
});

describe('house style', () => {
  const all = [...inference, ...core, ...cli].filter(({ path }) => !path.endsWith('.d.ts'));

  test('no file above 300 lines, in packages and in the playground', () => {
    const long = [...all, ...playground].map(({ path, text }) => [path, text.split('\n').length] as const);
    expect(long.filter(([, lines]) => lines > 301)).toEqual([]);
  });

  test('no file named utils, helpers, common or types', () => {
    const vague = /(^|\/)(utils?|helpers?|common|types|misc)\.(ts|svelte)$/;
    expect([...all, ...playground].map(({ path }) => path).filter((path) => vague.test(path))).toEqual([]);
  });

  test('a file exports what it is named after, nineteen times in twenty', () => {
    const entries = /\/src\/(index|entries\/[\w/]+|main)\.ts$/;
    const named = all.filter(({ path }) => !entries.test(path));
    const odd = named.filter(({ path, code }) => {
      const name = path.split('/').at(-1)!.replace(/\.ts$/, '');
      return !new RegExp(
        `\\bexport\\s+(?:async\\s+)?(?:function\\*?|const|class|interface|type)\\s+${name}\\b`,
        'i',
      ).test(code);
    });
    console.log(`named after something else: ${odd.map(({ path }) => path).join(', ') || 'none'}`);
    expect(odd.length).toBeLessThan(named.length / 20);
  });

  test('only entries re-export', () => {
    const barrels = all.filter(
      ({ path, code }) =>
        !/\/src\/(index|entries\/[\w/]+)\.ts$/.test(path) && /\bexport\s+(type\s+)?(\{[^}]*\}|\*)\s+from\b/.test(code),
    );
    expect(barrels.map(({ path }) => path)).toEqual([]);
  });
});
