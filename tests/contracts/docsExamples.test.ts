import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as core from '@faultodds/core';
import * as words from '@faultodds/core/words';
import * as english from '@faultodds/core/words/en';
import * as schema from '@faultodds/core/schema';
import * as inference from '@faultodds/inference';
import * as analysis from '@faultodds/inference/analysis';
import * as each from '@faultodds/inference/each';
import * as networkText from '@faultodds/inference/reading';
import * as sampling from '@faultodds/inference/sampling';
import * as sweeps from '@faultodds/inference/sweeps';
import * as knowledge from '@faultodds/misfire';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { filesUnder, root } from '../fixtures/filesUnder.ts';
import { sourceFiles } from './sourceFiles.ts';

// Examples that are not run will be wrong one day.
const modules: Readonly<Record<string, unknown>> = {
  '@faultodds/core': core,
  '@faultodds/core/schema': schema,
  '@faultodds/core/words': words,
  '@faultodds/core/words/en': english,
  '@faultodds/inference': inference,
  '@faultodds/inference/analysis': analysis,
  '@faultodds/inference/each': each,
  '@faultodds/inference/reading': networkText,
  '@faultodds/inference/sampling': sampling,
  '@faultodds/inference/sweeps': sweeps,
  '@faultodds/misfire': knowledge,
};
const compilerOptions: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2022,
  lib: ['lib.es2023.d.ts', 'lib.dom.d.ts'],
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  customConditions: ['source'],
  allowImportingTsExtensions: true,
  noEmit: true,
  strict: true,
  skipLibCheck: true,
  types: [],
};

interface Block {
  readonly from: string;
  readonly code: string;
}

const pages = [
  'README.md',
  'DEVELOPERS.md',
  ...filesUnder('packages', 'README.md'),
  ...filesUnder('priors', 'README.md'),
];
const blocks = pages
  .filter((page) => existsSync(join(root, page)))
  .flatMap((page): Block[] => {
    const text = readFileSync(join(root, page), 'utf8');
    return [...text.matchAll(/^```ts\n([\s\S]*?)^```$/gm)].map((match) => ({
      from: `${page}:${text.slice(0, match.index).split('\n').length}`,
      code: match[1]!,
    }));
  });

test.skipIf(!existsSync(join(root, 'README.md')))(
  'the front page has an example (skipped while there is no README.md)',
  () => {
    expect(blocks.filter(({ from }) => from.startsWith('README.md')).length).toBeGreaterThan(0);
  },
);

/** All examples are checked as files of one program: the packages are read once, not once an example. */
function checkTypes(): (block: Block) => string[] {
  const fileOf = ({ from }: Block): string =>
    join(root, 'tests/contracts', `example-${from.replaceAll(/\W/g, '-')}.ts`);
  const codes = new Map(blocks.map((block) => [fileOf(block), block.code]));
  const host = ts.createCompilerHost(compilerOptions);
  const { fileExists, readFile, getSourceFile } = host;
  host.fileExists = (path) => codes.has(path) || fileExists(path);
  host.readFile = (path) => codes.get(path) ?? readFile(path);
  host.getSourceFile = (path, ...rest) => {
    const code = codes.get(path);
    return code === undefined
      ? getSourceFile(path, ...rest)
      : ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true);
  };
  const program = ts.createProgram([...codes.keys()], compilerOptions, host);
  return (block) =>
    ts
      .getPreEmitDiagnostics(program, program.getSourceFile(fileOf(block)))
      .map((one) => ts.flattenDiagnosticMessageText(one.messageText, '\n'));
}
let typeProblems: ReturnType<typeof checkTypes> | undefined;

describe.each(blocks)('$from', (block) => {
  test('fits the types of the packages', () => {
    typeProblems ??= checkTypes();
    expect(typeProblems(block)).toEqual([]);
  });

  test('runs, and prints no NaN and nothing undefined', async () => {
    const printed: unknown[] = [];
    await run(block.code, printed);
    expect(
      JSON.stringify(printed, (_, value: unknown) => (Number.isNaN(value) ? 'NaN' : (value ?? 'undefined'))),
    ).not.toMatch(/"NaN"|"undefined"/);
  });
});

/** Runs an example: its imports are served from the packages' sources, what it prints is collected. */
async function run(code: string, printed: unknown[]): Promise<void> {
  const script = ts
    .transpile(code, { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext, verbatimModuleSyntax: true })
    .replaceAll(
      /^import \{([^}]*)\} from '([^']*)';$/gm,
      (_, names: string, from: string) => `const {${names.replaceAll(' as ', ': ')}} = modules['${from}'];`,
    );
  const AsyncFunction = (async () => {}).constructor as new (
    ...args: string[]
  ) => (modules: unknown, console: unknown) => Promise<void>;
  await new AsyncFunction('modules', 'console', script)(modules, {
    log: (...values: unknown[]) => printed.push(...values),
  });
}

// `@example call // result` in docstrings: the result is compared to the digits printed; without one the call must not throw.
const examples = ['packages/inference/src', 'packages/core/src'].flatMap((folder) =>
  sourceFiles(folder, ['.ts']).flatMap(({ path, text }) =>
    [...text.matchAll(/@example (.+?)(?: \/\/ (.+?))?(?: ?\*\/)?$/gm)].map((match) => ({
      path,
      call: match[1]!,
      result: match[2],
    })),
  ),
);

describe('examples in docstrings', () => {
  const compiled = core.compileModel(core.parseModel(knowledge.misfire));

  test('there are some', () => {
    expect(examples.length).toBeGreaterThan(3);
  });

  test.each(examples)('$call', async ({ path, call, result }) => {
    const own = (await import(/* @vite-ignore */ join(root, path))) as Record<string, unknown>;
    const scope: Record<string, unknown> = { ...inference, ...core, ...own, compiled, network: rain() };
    const evaluate = (expression: string): unknown =>
      new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope)) as unknown;
    const found = evaluate(call);
    // words, alone or after a value ("[1, 2], to four decimals"), are for the reader
    if (result === undefined || !/^([-\d{['"]|true|false|null)/.test(result)) return;
    const [, expected = ''] = /^(\{.*\}|\[.*\]|[^,;]+)/.exec(result) ?? [];
    expect(found).toEqual(toPrintedDigits(evaluate(`(${expected})`), expected));
  });
});

function toPrintedDigits(value: unknown, printed: string): unknown {
  if (typeof value === 'number') {
    const decimals = /\//.test(printed)
      ? [12]
      : (printed.match(/\d+\.\d+/g) ?? []).map((number) => number.split('.')[1]!.length);
    return expect.closeTo(value, decimals.length === 0 ? 9 : Math.max(...decimals)) as unknown;
  }
  if (Array.isArray(value)) return value.map((item) => toPrintedDigits(item, printed));
  if (typeof value === 'object' && value !== null) {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, toPrintedDigits(inner, printed)]));
  }
  return value;
}

function rain(): inference.Network {
  return inference.defineNetwork({ variables: [{ name: 'rain', states: ['yes', 'no'], table: [0.2, 0.8] }] });
}
