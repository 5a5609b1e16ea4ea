import { createBifTokens, type BifTokens } from './createBifTokens.ts';
import { FormatError } from '../errors/formatError.ts';
import type { NetworkDefinition } from '../network/network.ts';

// 128 MiB; a `default` row alone could ask for any size
const LARGEST_TABLE = 2 ** 24;

interface Declared {
  readonly name: string;
  readonly states: string[];
  parents: string[];
  table: Float64Array | null;
}

/** Reads the open Bayesian interchange format (BIF 0.15 text): `network`, `variable` and `probability` blocks, rows keyed by the
 * parents' states in any order, `table`, `default`, properties (skipped) and comments.
 * @returns a definition for `defineNetwork`, variables in the order declared.
 * @throws FormatError `bif-syntax` or `bif-meaning` (unknown or repeated names, missing rows, wrong counts, tables beyond any memory), with line and column.
 * @example parseBif('network n {} variable a { type discrete [ 2 ] { y, n }; } probability ( a ) { table 0.2, 0.8; }').variables.length // 1 */
export function parseBif(text: string): NetworkDefinition {
  const tokens = createBifTokens(text);
  const declared = new Map<string, Declared>();
  const refuse = (message: string, hint: string): never => {
    throw new FormatError('bif-meaning', message, hint, text, tokens.start());
  };
  for (let keyword = tokens.take(); keyword !== ''; keyword = tokens.take()) {
    if (keyword === 'network') {
      tokens.word("the network's name");
      tokens.expect('{');
      while (!tokens.accept('}')) tokens.skipStatement();
    } else if (keyword === 'variable') readVariable(tokens, declared, refuse);
    else if (keyword === 'probability') readProbability(tokens, declared, refuse);
    else
      throw new FormatError(
        'bif-syntax',
        `found '${keyword}', expected 'network', 'variable' or 'probability'`,
        'blocks stand one after the other',
        text,
        tokens.start(),
      );
  }
  return {
    variables: [...declared.values()].map(({ name, states, parents, table }) => ({
      name,
      states,
      parents,
      table: table ?? refuse(`'${name}' has no probability block`, 'every variable needs one'),
    })),
  };
}

type Refuse = (message: string, hint: string) => never;

function readVariable(tokens: BifTokens, declared: Map<string, Declared>, refuse: Refuse): void {
  const name = tokens.word("a variable's name");
  if (declared.has(name)) refuse(`'${name}' is declared twice`, 'rename or remove one');
  const states: string[] = [];
  tokens.expect('{');
  while (!tokens.accept('}')) {
    if (!tokens.accept('type')) {
      tokens.skipStatement();
      continue;
    }
    tokens.expect('discrete');
    tokens.expect('[');
    const count = readNumber(tokens, refuse);
    tokens.expect(']');
    tokens.expect('{');
    do states.push(tokens.word("a state's name"));
    while (tokens.accept(','));
    tokens.expect('}');
    if (states.length !== count)
      refuse(`'${name}' lists ${states.length} states, but [ ${count} ] was said`, 'correct one of the two');
    tokens.expect(';');
  }
  if (states.length === 0) refuse(`'${name}' has no states`, "give 'type discrete [ n ] { ... };'");
  declared.set(name, { name, states, parents: [], table: null });
}

function readProbability(tokens: BifTokens, declared: Map<string, Declared>, refuse: Refuse): void {
  const known = (): Declared => {
    const name = tokens.word("a variable's name");
    return declared.get(name) ?? refuse(`'${name}' is not declared`, 'declare variables before their probabilities');
  };
  tokens.expect('(');
  const child = known();
  if (child.table !== null) refuse(`'${child.name}' has two probability blocks`, 'remove one');
  const parents: Declared[] = [];
  if (tokens.accept('|')) {
    do parents.push(known());
    while (tokens.accept(','));
  }
  tokens.expect(')');
  tokens.expect('{');
  const own = child.states.length;
  const rows = parents.reduce((product, parent) => product * parent.states.length, 1);
  if (rows * own > LARGEST_TABLE)
    refuse(
      `'${child.name}' has ${parents.length} parents: a table of ${rows * own} numbers, at most ${LARGEST_TABLE} are read`,
      'name fewer parents',
    );
  const table = new Float64Array(rows * own).fill(NaN);
  let fallback: number[] = [];
  const numbers = (count: number): number[] => {
    const read: number[] = [];
    // older files separate numbers by blanks alone
    do read.push(readNumber(tokens, refuse));
    while (tokens.accept(',') || tokens.peek() !== ';');
    if (read.length !== count)
      refuse(`${read.length} numbers for '${child.name}', expected ${count}`, 'one number per state');
    tokens.expect(';');
    return read;
  };
  while (!tokens.accept('}')) {
    if (tokens.accept('table')) {
      // the child's state slowest, the last parent fastest, as in the format's own examples (from memory)
      const read = numbers(rows * own);
      read.forEach((value, k) => (table[(k % rows) * own + Math.floor(k / rows)] = value));
    } else if (tokens.accept('default')) fallback = numbers(own);
    else if (tokens.accept('(')) {
      let row = 0;
      parents.forEach((parent, k) => {
        if (k > 0) tokens.expect(',');
        const name = tokens.word(`a state of '${parent.name}'`);
        const state = parent.states.indexOf(name);
        if (state < 0) refuse(`'${parent.name}' has no state '${name}'`, `its states are ${parent.states.join(', ')}`);
        row = row * parent.states.length + state;
      });
      tokens.expect(')');
      if (!Number.isNaN(table[row * own]))
        refuse(`this row of '${child.name}' was given before`, 'remove one of the two');
      table.set(numbers(own), row * own);
    } else tokens.skipStatement();
  }
  for (let at = 0; at < table.length; at += own) {
    if (!Number.isNaN(table[at])) continue;
    if (fallback.length === 0)
      refuse(
        `'${child.name}' lacks ${table.filter(Number.isNaN).length / own} of ${rows} rows`,
        "give every row, or 'default'",
      );
    table.set(fallback, at);
  }
  child.parents = parents.map((parent) => parent.name);
  child.table = table;
}

function readNumber(tokens: BifTokens, refuse: Refuse): number {
  const word = tokens.word('a number');
  const value = Number(word);
  if (!Number.isFinite(value)) refuse(`'${word}' is not a number`, 'write numbers like 0.25 or 2.5e-1');
  return value;
}
