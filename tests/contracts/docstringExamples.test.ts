import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { exampleWorld } from '../fixtures/exampleWorld.ts';
import { root } from '../fixtures/filesUnder.ts';
import { publicEntries, sourcesOfEntries } from './publicEntries.ts';
import { checker, exportsOf } from './publicProgram.ts';
import { sourceFiles } from './sourceFiles.ts';

// An example is one line, `@example call // result`, or a fenced block of statements in which lines end with `// result`. What stands
// behind the slashes is compared to the digits printed, where it is a value; words are for the reader. Without a result it must not throw.
interface Example {
  readonly path: string;
  readonly code: string;
}

const examples = ['packages/inference/src', 'packages/core/src'].flatMap((folder) =>
  sourceFiles(folder, ['.ts']).flatMap(({ path, text }) =>
    [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].flatMap(([comment]) => {
      const plain = comment.replace(/^\/\*\*/, '').replace(/\s*\*\/$/, '');
      const lines = plain.replaceAll(/^[ \t]*\* ?/gm, '');
      return [...lines.matchAll(/@example(?:\s*```ts\n([\s\S]*?)\n```| (.+))/g)].map(([, block, line]): Example => ({
        path,
        code: block ?? line!,
      }));
    }),
  ),
);

describe('examples in docstrings', async () => {
  const entries = Object.assign(
    {},
    ...(await Promise.all(Object.values(publicEntries).map((load) => load()))),
  ) as object;

  test.each(examples)('$code', async ({ path, code }) => {
    const own = (await import(/* @vite-ignore */ join(root, path))) as object;
    const scope: Readonly<Record<string, unknown>> = { ...entries, ...own, ...exampleWorld };
    let told = 0;
    const tell = (found: unknown, printed: string): void => {
      told += 1;
      const [, value] = /^(\{.*\}|\[.*\]|'[^']*'|"[^"]*"|-?[\d.][^,;\s]*|true|false|null)/.exec(printed) ?? [];
      if (value === undefined) expect(found).toBeDefined();
      else expect(found).toEqual(toPrintedDigits(new Function(`return (${value});`)(), value));
    };
    const statements = code.split('\n').map((line) => {
      const [, expression = line, printed] = /^(.+?);? \/\/ (.+)$/.exec(line) ?? [];
      if (printed === undefined) return line;
      const [, name] = /^const (\w+) = /.exec(expression) ?? [];
      return name === undefined
        ? `tell(${expression}, ${JSON.stringify(printed)});`
        : `${expression}; tell(${name}, ${JSON.stringify(printed)});`;
    });
    const AsyncFunction = (async () => {}).constructor as new (
      ...args: string[]
    ) => (...values: unknown[]) => Promise<void>;
    await new AsyncFunction('tell', ...Object.keys(scope), statements.join('\n'))(tell, ...Object.values(scope));
    expect(told).toBe(code.split('\n').filter((line) => / \/\/ /.test(line)).length);
  });
});

test('every public function has an example', () => {
  const without = sourcesOfEntries.flatMap((entry) =>
    exportsOf(entry)
      .map(({ target }) => target)
      .filter((symbol) => symbol.valueDeclaration !== undefined && (symbol.flags & ts.SymbolFlags.Class) === 0)
      .filter((symbol) => checker.getTypeOfSymbol(symbol).getCallSignatures().length > 0)
      .filter((symbol) => !symbol.getJsDocTags(checker).some(({ name }) => name === 'example'))
      .map(
        ({ name, valueDeclaration }) =>
          `${valueDeclaration!.getSourceFile().fileName.slice(root.length).replace(/^\//, '')}: ${name}`,
      ),
  );
  expect([...new Set(without)].toSorted()).toEqual([]);
});

function toPrintedDigits(value: unknown, printed: string): unknown {
  if (typeof value === 'number') {
    const decimals = /\//.test(printed)
      ? [12]
      : (printed.match(/\d+\.\d+/g) ?? []).map((number) => number.split('.')[1]!.length);
    return expect.closeTo(value, decimals.length === 0 ? 9 : Math.max(...decimals)) as unknown;
  }
  if (Array.isArray(value)) return value.map((item) => toPrintedDigits(item, printed));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, toPrintedDigits(inner, printed)]));
  return value;
}
