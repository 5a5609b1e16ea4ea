import { join, relative } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { sourcesOfEntries } from './publicEntries.ts';
import { checker, exportsOf } from './publicProgram.ts';

test.each(sourcesOfEntries.map((path) => relative(root, path)))('every export of %s says what it is for', (entry) => {
  const exported = exportsOf(join(root, entry));
  expect(exported.length).toBeGreaterThan(2);
  const silent = exported.filter(({ target }) => {
    const text = ts.displayPartsToString(target.getDocumentationComment(checker)).trim();
    // one sentence at least, with its full stop
    return !/^[^\s][\s\S]*?[.:!?)](\s|$)/.test(text);
  });
  expect(silent.map(({ name }) => name)).toEqual([]);
});

test('what is made ready is opaque: it shows what it was made of, and only its maker makes it', () => {
  const shown: Record<string, readonly string[]> = {};
  for (const entry of sourcesOfEntries) {
    for (const { name: exported, target } of exportsOf(entry)) {
      if ((target.flags & ts.SymbolFlags.Interface) === 0) continue;
      const properties = checker.getPropertiesOfType(checker.getDeclaredTypeOfSymbol(target));
      const marks = properties.filter(({ name }) => name.startsWith('__@madeBy'));
      if (marks.length === 0) continue;
      shown[exported] = properties
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
