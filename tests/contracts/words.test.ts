// Text is for people. Code decides by ids and kinds, and what it has to say it says in the words of a language.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { sourceFiles, type SourceFile } from './sourceFiles.ts';

/** Names of the fields that hold text of a model, read from its schema: strings that are neither an id nor one of a list. */
function textFields(): ReadonlySet<string> {
  const found = new Set<string>();
  const walk = (node: unknown, name: string): void => {
    if (Array.isArray(node)) node.forEach((one) => walk(one, name));
    if (typeof node !== 'object' || node === null) return;
    const { type, pattern, enum: listed, const: only, properties, ...rest } = node as Record<string, unknown>;
    if (type === 'string' && pattern === undefined && listed === undefined && only === undefined) found.add(name);
    Object.entries(properties ?? {}).forEach(([key, inner]) => walk(inner, key));
    for (const key of ['items', 'anyOf', 'oneOf', 'allOf', 'additionalProperties']) walk(rest[key], name);
  };
  walk(JSON.parse(readFileSync(join(root, 'priors/schema/model.schema.json'), 'utf8')), '');
  return found;
}

/** Names that mean something else as well: what a person typed, a unit, a state. */
const AMBIGUOUS = [
  'text',
  'exposure',
  'unit',
  'state',
  'order',
  'term',
  'en',
  'de',
  'running',
  'currencyUnit',
  'meaning',
];
const fields: ReadonlySet<string> = new Set(
  [...textFields(), 'message', 'hint', 'sentence', 'treatment'].filter((name) => !AMBIGUOUS.includes(name)),
);

/** Where text is looked into to set it in type, to cut it to a length, or to find what a person typed; nothing else follows from it. */
const TYPESETTING: readonly string[] = [
  // a label that is a question takes no colon; inside a sentence its first letter is small
  'packages/core/src/words/languages/en/messages.ts',
  'packages/cli/src/ask/askEvidence.ts',
  'packages/cli/src/print/labelOf.ts',
  // a message that is too long; the first line of what another program said
  'packages/core/src/errors/faultoddsError.ts',
  'packages/core/src/errors/shortenMessage.ts',
  'packages/cli/src/files/readJsonFile.ts',
  // a search field
  'playground/src/screens/RecordDone.svelte',
];

const LOOKS =
  'startsWith|endsWith|includes|indexOf|lastIndexOf|search|match|matchAll|split|localeCompare|charAt|at|slice';
const looksInto = new Set(LOOKS.split('|'));

/** Places of TypeScript where a field of text, or a variable named like one, decides something. */
function decisionsIn({ path, text }: SourceFile, source = text, firstLine = 0): readonly string[] {
  const file = ts.createSourceFile(path, source, ts.ScriptTarget.ES2022, true);
  const found: string[] = [];
  const isText = (node: ts.Node): boolean => {
    if (ts.isIdentifier(node)) return fields.has(node.text);
    if (ts.isPropertyAccessExpression(node)) return fields.has(node.name.text);
    if (ts.isNonNullExpression(node) || ts.isParenthesizedExpression(node)) return isText(node.expression);
    // label.toLowerCase(), (note ?? '').trim()
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression))
      return isText(node.expression.expression) && /^(to|trim|normalize|replace)/.test(node.expression.name.text);
    return ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken
      ? isText(node.left)
      : false;
  };
  const saysNothing = (node: ts.Node): boolean =>
    (ts.isIdentifier(node) && node.text === 'undefined') ||
    node.kind === ts.SyntaxKind.NullKeyword ||
    (ts.isStringLiteral(node) && node.text === '');
  const decides = (node: ts.Node): boolean => {
    if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
      const { expression, name } = node.expression;
      if (looksInto.has(name.text) && isText(expression)) return true;
      // /^handled/.test(note), new Set(labels).has(label)
      return ['test', 'exec', 'has', 'get', 'includes', 'indexOf'].includes(name.text) && node.arguments.some(isText);
    }
    if (ts.isBinaryExpression(node) && /^(={2,3}|!={1,2}|[<>]=?)$/.test(node.operatorToken.getText(file))) {
      const { left, right } = node;
      return (isText(left) && !saysNothing(right)) || (isText(right) && !saysNothing(left));
    }
    if (ts.isSwitchStatement(node)) return isText(node.expression);
    return ts.isElementAccessExpression(node) && isText(node.argumentExpression);
  };
  const walk = (node: ts.Node): void => {
    if (decides(node)) {
      const line = file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1 + firstLine;
      found.push(`${path}:${line} ${node.getText(file).split('\n')[0]}`);
    }
    ts.forEachChild(node, walk);
  };
  walk(file);
  return found;
}

/** The script of a component and every expression of its markup. */
function decisionsInComponent(file: SourceFile): readonly string[] {
  const lineOf = (at: number): number => file.text.slice(0, at).split('\n').length - 1;
  const scripts = [...file.text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)];
  const markup = file.text.replaceAll(/<(script|style)[^>]*>[\s\S]*?<\/\1>/g, (all) => all.replaceAll(/[^\n]/g, ' '));
  const expressions = [...markup.matchAll(/\{(?:[#:@](?:if|else if|const|each|key|html|render)\b)?([^{}]*)\}/g)];
  return [
    ...scripts.flatMap((one) => decisionsIn(file, one[1]!, lineOf(one.index))),
    ...expressions.flatMap((one) => decisionsIn(file, `(${one[1]!})`, lineOf(one.index))),
  ];
}

const typescript = ['packages/core/src', 'packages/cli/src', 'playground/src'].flatMap((folder) =>
  sourceFiles(folder, ['.ts']),
);
const components = sourceFiles('playground/src', ['.svelte']);

describe('no text decides anything', () => {
  const of = (code: string): readonly string[] => decisionsIn({ path: 'x.ts', text: code, code });

  test('the fields are those of the schema', () => {
    for (const name of ['label', 'note', 'shared', 'how', 'description', 'monitorRun']) expect(fields).toContain(name);
    expect(fields.size).toBeGreaterThan(15);
    for (const name of ['id', 'kind', 'a', 'source', 'outcome', 'hazard']) expect(fields).not.toContain(name);
  });

  test.each([
    `pairs.filter(({ treatment }) => treatment.startsWith('same question'))`,
    `pairs.filter(({ treatment }) => !/^(handled|cause-level)/.test(treatment))`,
    `if (pair.note.toLowerCase() === 'handled') skip();`,
    `const is = repair.label !== other.label;`,
    `switch (test.label) { default: }`,
    `const rank = { good: 1 }[cause.description];`,
    `seen.has(problem.message)`,
    `(test.note ?? '').includes('x')`,
  ])('it would be found: %s', (code) => expect(of(code)).toHaveLength(1));

  test.each([
    `if (test.note !== undefined) print(test.note);`,
    `const shown = label === '' ? id : label;`,
    `labels.map(({ label }) => label.toUpperCase())`,
    `pairs.filter(({ kind }) => kind === 'same-question')`,
  ])('it would not be found: %s', (code) => expect(of(code)).toEqual([]));

  test('in core, terminal and page', () => {
    expect(typescript.length + components.length).toBeGreaterThan(400);
    const found = [...typescript.flatMap((file) => decisionsIn(file)), ...components.flatMap(decisionsInComponent)];
    expect(found.filter((place) => !TYPESETTING.some((path) => place.startsWith(`${path}:`)))).toEqual([]);
    const unused = TYPESETTING.filter((path) => !found.some((place) => place.startsWith(`${path}:`)));
    expect(unused).toEqual([]);
  });
});

describe('core says nothing by itself', () => {
  /** Three words in a row. What errors and the linter say is for developers, made of the problems of a language (English) or written there. */
  const sentence = /\p{L}{2,} \p{L}+ \p{L}{2,}/u;
  const LINTER = [
    'packages/core/src/compiled/lintModel.ts',
    'packages/core/src/compiled/lintPairs.ts',
    'packages/core/src/compiled/lintRepairs.ts',
  ];

  function sentencesIn({ path, text }: SourceFile): readonly string[] {
    const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
    const found: string[] = [];
    const walk = (node: ts.Node): void => {
      const isLiteral = ts.isStringLiteralLike(node) || ts.isTemplateLiteralToken(node);
      if (isLiteral && sentence.test(node.text)) found.push(`${path}: ${node.text}`);
      ts.forEachChild(node, walk);
    };
    walk(file);
    return found;
  }
  const files = sourceFiles('packages/core/src', ['.ts']);

  test('there are sentences to find: in the words, and in the linter', () => {
    for (const folder of ['languages/en', 'languages/de'])
      expect(
        files.filter(({ path }) => path.includes(`/words/${folder}/`)).flatMap(sentencesIn).length,
      ).toBeGreaterThan(100);
    for (const path of LINTER) expect(files.filter((one) => one.path === path).flatMap(sentencesIn)).not.toEqual([]);
  });

  test('outside the words and the linter there is none', () => {
    const others = files.filter(({ path }) => !path.includes('/words/languages/') && !LINTER.includes(path));
    expect(others.length).toBeGreaterThan(300);
    expect(others.flatMap(sentencesIn)).toEqual([]);
  });
});
