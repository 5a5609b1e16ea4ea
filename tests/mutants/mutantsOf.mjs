import ts from 'typescript';

/** One small change of a source file: `[start, end)` replaced by `text`. @typedef {{ start: number, end: number, text: string,
 * operator: string, line: number, from: string }} Mutant */

const K = ts.SyntaxKind;

/** Operator token -> what stands in its place, by kind of change. */
const binary = {
  arithmetic: [
    [K.PlusToken, '-'],
    [K.MinusToken, '+'],
    [K.AsteriskToken, '/'],
    [K.SlashToken, '*'],
    [K.PercentToken, '*'],
    [K.PlusEqualsToken, '-='],
    [K.MinusEqualsToken, '+='],
    [K.AsteriskEqualsToken, '/='],
    [K.SlashEqualsToken, '*='],
    [K.AmpersandToken, '|'],
    [K.BarToken, '&'],
    [K.BarEqualsToken, '&='],
    [K.AmpersandEqualsToken, '|='],
    [K.LessThanLessThanToken, '>>>'],
    [K.GreaterThanGreaterThanGreaterThanToken, '<<'],
  ],
  boundary: [
    [K.LessThanToken, '<='],
    [K.LessThanEqualsToken, '<'],
    [K.GreaterThanToken, '>='],
    [K.GreaterThanEqualsToken, '>'],
  ],
  comparison: [
    [K.LessThanToken, '>='],
    [K.LessThanEqualsToken, '>'],
    [K.GreaterThanToken, '<='],
    [K.GreaterThanEqualsToken, '<'],
    [K.EqualsEqualsEqualsToken, '!=='],
    [K.ExclamationEqualsEqualsToken, '==='],
  ],
  boolean: [
    [K.AmpersandAmpersandToken, '||'],
    [K.BarBarToken, '&&'],
  ],
};

/** Every mutant of a source text, in the order of the text. Types, imports and texts are left alone. @returns {Mutant[]} */
export function mutantsOf(text) {
  const file = parse(text);
  const found = [];
  const add = (operator, node, replacement, start = node.getStart(file), end = node.getEnd()) =>
    found.push({
      start,
      end,
      text: replacement,
      operator,
      line: file.getLineAndCharacterOfPosition(start).line + 1,
      from: text.slice(start, end),
    });
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    if (ts.isTypeAliasDeclaration(node) || ts.isStringLiteralLike(node)) return;
    if (ts.isBinaryExpression(node)) {
      const isText = [node.left, node.right].some(
        (side) => ts.isStringLiteralLike(side) || ts.isTemplateExpression(side),
      );
      for (const [operator, table] of Object.entries(binary))
        for (const [token, other] of table)
          if (node.operatorToken.kind === token && !(isText && token === K.PlusToken))
            add(operator, node.operatorToken, other);
    }
    if (ts.isNumericLiteral(node)) {
      add('constant', node, `(${node.text} + 1)`);
      add('constant', node, `(${node.text} - 1)`);
    }
    if (node.kind === K.TrueKeyword) add('boolean', node, 'false');
    if (node.kind === K.FalseKeyword) add('boolean', node, 'true');
    if (ts.isPrefixUnaryExpression(node) && [K.ExclamationToken, K.MinusToken].includes(node.operator))
      add(node.operator === K.MinusToken ? 'arithmetic' : 'boolean', node, node.operand.getText(file));
    if (ts.isConditionalExpression(node)) {
      add('boolean', node.condition, `!(${node.condition.getText(file)})`);
    }
    if (ts.isPropertyAccessExpression(node) && node.expression.getText(file) === 'Math') {
      if (node.name.text === 'min') add('min-max', node, 'Math.max');
      if (node.name.text === 'max') add('min-max', node, 'Math.min');
    }
    if (ts.isIfStatement(node)) {
      add('condition', node.expression, 'true');
      add('condition', node.expression, 'false');
    }
    if (ts.isExpressionStatement(node)) add('dropped statement', node, ';');
    if (
      ts.isFunctionLike(node) &&
      node.body !== undefined &&
      ts.isBlock(node.body) &&
      node.type?.kind === K.VoidKeyword
    )
      add('early return', node.body, ' return;', node.body.getStart(file) + 1, node.body.getStart(file) + 1);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** The text with a mutant in it, its loops counted: one that runs for more than `steps` rounds throws, whatever the machine's pace. */
export function applyMutant(text, mutant, steps) {
  const changed = mutant === undefined ? text : text.slice(0, mutant.start) + mutant.text + text.slice(mutant.end);
  const file = parse(changed);
  const edits = [];
  const visit = (node) => {
    if (ts.isIterationStatement(node, false)) {
      const { statement } = node;
      if (ts.isBlock(statement)) edits.push([statement.getStart(file) + 1, 'countRound();']);
      else edits.push([statement.getStart(file), '{countRound();'], [statement.getEnd(), '}']);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  let counted = changed;
  // from behind; of several at one place the inner one closes first
  edits.forEach((edit, at) => edit.push(at));
  edits.sort((a, b) => b[0] - a[0] || a[2] - b[2]);
  for (const [at, piece] of edits) counted = counted.slice(0, at) + piece + counted.slice(at);
  return `${counted}
let countedRounds = 0;
function countRound() { if (++countedRounds > ${steps}) throw new Error('more rounds than any test needs'); }
`;
}

function parse(text) {
  return ts.createSourceFile('source.ts', text, ts.ScriptTarget.Latest, true);
}
