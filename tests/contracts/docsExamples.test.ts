import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as knowledge from '@faultodds/misfire';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { filesUnder, root } from '../fixtures/filesUnder.ts';
import { publicEntries } from './publicEntries.ts';

// Examples that are not run will be wrong one day.
const modules: Readonly<Record<string, object>> = {
  '@faultodds/misfire': knowledge,
  ...Object.fromEntries(
    await Promise.all(
      Object.entries(publicEntries).map(async ([specifier, load]) => [specifier, await load()] as const),
    ),
  ),
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
