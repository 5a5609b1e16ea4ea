import { describe, expect, test } from 'vitest';
import { defineNetwork } from './index.ts';
import { FormatError, parseBif, parseNetworkJson } from './entries/reading.ts';

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
