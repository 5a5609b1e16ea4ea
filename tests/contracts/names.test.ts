// One concept, one name: a name that is exported in two files of the packages or the page means the same in both, and nothing that is
// exported has two names. Source: the rules of DEVELOPERS.md.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { sourceFiles, type SourceFile } from './sourceFiles.ts';

/** Names that two files define on purpose, and why they mean the same in both. */
const DEFINED_TWICE: Readonly<Record<string, string>> = {
  createRandom:
    'a seeded source of chance in both packages: the kernel imports nothing, and core repeats the sequence that its recorded results were drawn with',
};

/** What a file defines and exports, with the type's members for interfaces; a re-export defines nothing. */
interface Definition {
  readonly name: string;
  readonly path: string;
  /** Of an interface: its members, without comments. */
  readonly members?: string;
  /** Of a type alias: the name it is another name for. */
  readonly aliasOf?: string;
}

/** A language defines the names that English defines: the file stands at the same place of another language's folder. */
const codes = readdirSync(join(root, 'packages/core/src/words/languages')).filter((name) => !name.includes('.'));
const inLanguage = new RegExp(`/(${codes.join('|')})(?=[/.])`);
const withoutLanguage = (path: string): string => path.replace(inLanguage, '/<language>');

function scriptOf({ path, text }: SourceFile): string {
  if (!path.endsWith('.svelte')) return text;
  return /<script(?=[^>]*\bmodule\b)[^>]*>([\s\S]*?)<\/script>/.exec(text)?.[1] ?? '';
}

function definitionsIn(file: SourceFile): Definition[] {
  const source = ts.createSourceFile(file.path, scriptOf(file), ts.ScriptTarget.Latest, true);
  return source.statements.flatMap((statement): Definition[] => {
    const modifiers = ts.canHaveModifiers(statement) ? (ts.getModifiers(statement) ?? []) : [];
    if (!modifiers.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
    if (ts.isVariableStatement(statement))
      return statement.declarationList.declarations.map(({ name }) => ({ name: name.getText(), path: file.path }));
    if (ts.isInterfaceDeclaration(statement)) {
      const heritage = statement.heritageClauses?.map((one) => one.getText()) ?? [];
      const members = statement.members.map((one) => one.getText().replaceAll(/\/\*\*[\s\S]*?\*\/|\s|;/g, ''));
      return [{ name: statement.name.text, path: file.path, members: [...heritage, ...members.sort()].join('\n') }];
    }
    if (ts.isTypeAliasDeclaration(statement)) {
      const { name, type } = statement;
      const isName = ts.isTypeReferenceNode(type) && type.typeArguments === undefined;
      return [{ name: name.text, path: file.path, ...(isName ? { aliasOf: type.getText() } : {}) }];
    }
    const { name } = statement as { readonly name?: ts.Node };
    return name === undefined ? [] : [{ name: name.getText(), path: file.path }];
  });
}

function groupedBy<T>(items: readonly T[], keyOf: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups.values()];
}

/** name -> the files that define it, where they are more than one and not the same file of several languages. */
function definedTwice(definitions: readonly Definition[]): Record<string, readonly string[]> {
  const groups = groupedBy(definitions, ({ name }) => name).map((group) => [
    group[0]!.name,
    [...new Set(group.map(({ path }) => path))],
  ]) as [string, string[]][];
  return Object.fromEntries(groups.filter(([, paths]) => new Set(paths.map(withoutLanguage)).size > 1));
}

const definitions = [
  ...sourceFiles('packages/inference/src', ['.ts']),
  ...sourceFiles('packages/core/src', ['.ts']),
  ...sourceFiles('packages/cli/src', ['.ts']),
  ...sourceFiles('playground/src', ['.ts', '.svelte']),
].flatMap(definitionsIn);

test('no name is defined twice, but by the listed and for every language', () => {
  expect(definitions.length).toBeGreaterThan(900);
  const twice = definedTwice(definitions);
  expect(Object.fromEntries(Object.entries(twice).filter(([name]) => !(name in DEFINED_TWICE)))).toEqual({});
  expect(Object.keys(DEFINED_TWICE).filter((name) => !(name in twice))).toEqual([]);
});

test('no exported type is only another name of one that is exported', () => {
  const names = new Set(definitions.map(({ name }) => name));
  const aliases = definitions.filter(({ aliasOf }) => aliasOf !== undefined && names.has(aliasOf));
  expect(aliases.map(({ name, path, aliasOf }) => `${path}: ${name} is ${aliasOf}`)).toEqual([]);
});

test('no two exported interfaces have the same members', () => {
  const shaped = definitions.filter(({ members }) => members !== undefined && members.includes('\n'));
  const twins = groupedBy(shaped, ({ members }) => members!).filter((group) => group.length > 1);
  expect(twins.map((group) => group.map(({ name, path }) => `${path}: ${name}`))).toEqual([]);
});

describe('the checks find what they look for', () => {
  const file = (path: string, text: string): SourceFile => ({ path, text, code: text });
  const found = [
    file('a/one.ts', 'export interface Engine { readonly a: 1; readonly b: 2 }\nexport const x = 1, y = 2;'),
    file('a/two.ts', 'export interface Motor { readonly b: 2; /** */ readonly a: 1 }\nexport type Drive = Motor;'),
    file('a/Three.svelte', '<script module lang="ts">export function x() {}</script><script>let y;</script>'),
    file('words/en/plan.ts', 'export const plan = 1;'),
    file('words/de/plan.ts', 'export const plan = 2;'),
    file('a/index.ts', "export { x } from './one.ts';"),
  ].flatMap(definitionsIn);

  test('a name in two files, components included; not one of every language, nor a re-export', () => {
    expect(definedTwice(found)).toEqual({ x: ['a/one.ts', 'a/Three.svelte'] });
  });

  test('an alias, and two interfaces whose members stand in another order', () => {
    expect(found.filter(({ aliasOf }) => aliasOf !== undefined).map(({ name }) => name)).toEqual(['Drive']);
    const [engine, motor] = ['Engine', 'Motor'].map((name) => found.find((one) => one.name === name));
    expect(engine!.members).toBe(motor!.members);
  });
});
