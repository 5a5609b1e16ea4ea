import { describe, expect, test } from 'vitest';
import { defineNetwork } from '../index.ts';
import { FormatError, parseBif, parseNetworkJson } from '../entries/formats.ts';

const rain = `// an example
network weather { property author nobody ; }
variable rain { type discrete [ 2 ] { yes, no }; property note "a; b" ; }
variable "wet grass" {
  type discrete [ 3 ] { <1, 1.5e0, >2_ };
}
probability ( rain ) { table 0.2, 0.8; }
/* rows in any order */
probability ( "wet grass" | rain ) {
  (no) 0.9, 0.05, 5e-2;
  (yes) 0.1, 0.2, 0.7;
}
`;

function fault(parse: () => unknown): { code: string; line: number; column: number } | null {
  try {
    parse();
  } catch (error) {
    if (error instanceof FormatError) return { code: error.code, line: error.line, column: error.column };
    throw error;
  }
  return null;
}

describe('BIF text', () => {
  test('is read with rows by state names, comments, properties and quoted names', () => {
    const definition = parseBif(rain);
    expect(definition.variables.map(({ name }) => name)).toEqual(['rain', 'wet grass']);
    expect(definition.variables[1]!.states).toEqual(['<1', '1.5e0', '>2_']);
    expect([...(definition.variables[1]!.table as Float64Array)]).toEqual([0.1, 0.2, 0.7, 0.9, 0.05, 0.05]);
    expect(defineNetwork(definition).variables.length).toBe(2);
  });

  test('may give one table, the child’s state slowest, and rows by default', () => {
    const head =
      'network n { } variable a { type discrete [ 2 ] { t, f }; } variable b { type discrete [ 2 ] { t, f }; } probability ( a ) { table 0.5 0.5; }';
    expect([
      ...(parseBif(`${head} probability ( b | a ) { table 0.6 0.05 0.4 0.95; }`).variables[1]!.table as Float64Array),
    ]).toEqual([0.6, 0.4, 0.05, 0.95]);
    expect([
      ...(parseBif(`${head} probability ( b | a ) { default 0.3, 0.7; (f) 1, 0; }`).variables[1]!
        .table as Float64Array),
    ]).toEqual([0.3, 0.7, 1, 0]);
  });

  test.each([
    ['bif-syntax', 2, 9, 'network weather', 'network { '],
    ['bif-syntax', 7, 1, 'probability ( rain )', 'chance ( rain )'],
    ['bif-meaning', 3, 44, '[ 2 ] { yes, no }', '[ 3 ] { yes, no }'],
    ['bif-meaning', 9, 29, '| rain )', '| snow )'],
    ['bif-meaning', 10, 4, '(no)', '(maybe)'],
    ['bif-meaning', 11, 18, '0.1, 0.2, 0.7', '0.1, 0.2'],
    ['bif-meaning', 7, 30, '0.2, 0.8;', '0.2, x8;'],
    ['bif-meaning', 12, 1, '  (no) 0.9, 0.05, 5e-2;', ''],
    ['bif-syntax', 3, 64, '"a; b" ;', '"a; b ;'],
  ])('%s is found at line %i, column %i', (code, line, column, text, instead) => {
    const found = fault(() => parseBif(rain.replace(text, instead)));
    expect(found?.code).toBe(code);
    expect(found?.line).toBe(line);
    if (code === 'bif-syntax') expect(found?.column).toBe(column);
  });
});

describe('network JSON', () => {
  const good = '{\n "variables": [\n  { "name": "rain", "states": ["yes", "no"],\n    "table": [0.2, 0.8] }\n ]\n}';

  test('is read and validated', () => {
    expect(parseNetworkJson(good).variables[0]!.states).toEqual(['yes', 'no']);
  });

  test.each([
    ['json-syntax', 3, 20, '"rain",', '"rain"'],
    ['json-syntax', 6, 3, '\n}', '\n} x'],
    ['json-syntax', 4, 24, '0.8]', '0.8'],
    ['network-json', 4, 15, '0.2, 0.8', '0.2, 0.9'],
    ['network-json', 4, 20, '0.2, 0.8', '1.2, -0.2'],
    ['network-json', 3, 39, '"yes", "no"', '"yes", "yes"'],
    ['network-json', 1, 1, '"variables"', '"variable"'],
  ])('%s is found at line %i, column %i', (code, line, column, text, instead) => {
    expect(fault(() => parseNetworkJson(good.replace(text, instead)))).toEqual({ code, line, column });
  });
});

// each ended in a RangeError of the engine: a pattern ran out of stack, an array out of length
describe('text that is out of all proportion', () => {
  const MANY = 10_000_000;
  const head = 'network n { } ';
  const variable = (name: string): string => `variable ${name} { type discrete [ 2 ] { y, n }; }\n`;

  test.each([
    ['blanks', ' '.repeat(MANY)],
    ['a comment', `/*${'*'.repeat(MANY)}*/`],
    ['comments', '/**/'.repeat(MANY / 2)],
    ['a quoted property', `network m { property "${'x'.repeat(MANY)}"; }`],
  ])('%s: read over, however long', (_, filling) => {
    const text = `${head}${filling}${variable('a')}probability ( a ) { table 0.2, 0.8; }`;
    expect(parseBif(text).variables[0]!.table).toEqual(Float64Array.of(0.2, 0.8));
  });

  test('a word without end is refused, and not quoted whole', () => {
    const error = thrown(() => parseBif(head + 'x'.repeat(MANY)));
    expect(error).toMatchObject({ name: 'FormatError', code: 'bif-syntax', line: 1, column: 15 });
    expect(error.message.length).toBeLessThan(1000);
  });

  test('a table of forty parents is refused where it is declared', () => {
    const parents = Array.from({ length: 40 }, (_, at) => `p${at}`);
    const text = `${head}\n${parents.map(variable).join('')}${variable('c')}probability ( c | ${parents.join(', ')} ) { default 0.5, 0.5; }`;
    expect(thrown(() => parseBif(text))).toMatchObject({ name: 'FormatError', code: 'bif-meaning', line: 43 });
  });

  test('a fault behind a string without end has its place', () => {
    expect(thrown(() => parseNetworkJson(`{"variables":["${'x'.repeat(MANY)}", ]}`))).toMatchObject({
      code: 'json-syntax',
      column: MANY + 19,
    });
  });

  function thrown(act: () => unknown): FormatError {
    try {
      act();
    } catch (error) {
      if (error instanceof FormatError) return error;
      throw error;
    }
    throw new TypeError('nothing was refused');
  }
});
