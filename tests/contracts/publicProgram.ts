import ts from 'typescript';
import { sourcesOfEntries } from './publicEntries.ts';

const program = ts.createProgram(sourcesOfEntries, {
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  customConditions: ['source'],
  allowImportingTsExtensions: true,
  strict: true,
  exactOptionalPropertyTypes: true,
  noEmit: true,
  skipLibCheck: true,
});

/** Knows the types of everything public. */
export const checker = program.getTypeChecker();

/** What an entry exports: the name it has there, and what it stands for. @param entry one of `sourcesOfEntries` */
export function exportsOf(entry: string): readonly { readonly name: string; readonly target: ts.Symbol }[] {
  return checker.getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(entry)!)!).map((symbol) => ({
    name: symbol.name,
    target: (symbol.flags & ts.SymbolFlags.Alias) === 0 ? symbol : checker.getAliasedSymbol(symbol),
  }));
}
