import { join, relative } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { sourcesOfEntries } from './publicEntries.ts';

const program = ts.createProgram(sourcesOfEntries, {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  customConditions: ['source'],
  allowImportingTsExtensions: true,
  noEmit: true,
  skipLibCheck: true,
});
const checker = program.getTypeChecker();

test.each(sourcesOfEntries.map((path) => relative(root, path)))('every export of %s says what it is for', (entry) => {
  const file = program.getSourceFile(join(root, entry))!;
  const exported = checker.getExportsOfModule(checker.getSymbolAtLocation(file)!);
  expect(exported.length).toBeGreaterThan(2);
  const silent = exported.filter((symbol) => {
    const target = (symbol.flags & ts.SymbolFlags.Alias) === 0 ? symbol : checker.getAliasedSymbol(symbol);
    const text = ts.displayPartsToString(target.getDocumentationComment(checker)).trim();
    // one sentence at least, with its full stop
    return !/^[^\s][\s\S]*?[.:!?)](\s|$)/.test(text);
  });
  expect(silent.map((symbol) => symbol.name)).toEqual([]);
});

test('what is made ready is opaque: it shows what it was made of, and only its maker makes it', () => {
  const shown: Record<string, readonly string[]> = {};
  for (const entry of sourcesOfEntries) {
    for (const symbol of checker.getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(entry)!)!)) {
      const target = (symbol.flags & ts.SymbolFlags.Alias) === 0 ? symbol : checker.getAliasedSymbol(symbol);
      if ((target.flags & ts.SymbolFlags.Interface) === 0) continue;
      const properties = checker.getPropertiesOfType(checker.getDeclaredTypeOfSymbol(target));
      const marks = properties.filter(({ name }) => name.startsWith('__@madeBy'));
      if (marks.length === 0) continue;
      shown[symbol.name] = properties
        .filter((one) => !marks.includes(one))
        .filter((one) => !one.getJsDocTags(checker).some(({ name }) => name === 'internal'))
        .map(({ name }) => name);
    }
  }
  expect(shown).toEqual({
    CompiledNetwork: ['network'],
    CompiledEach: [],
    Propagation: [],
    CompiledSweep: ['network', 'root'],
    CompiledModel: ['model'],
  });
});
