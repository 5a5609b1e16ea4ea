import { compileEach, posteriorGivenEach } from '@faultodds/inference/each';
import { compileNetwork, defineNetwork, InferenceError, posterior } from '@faultodds/inference';
import { parseBif, parseNetworkJson } from '@faultodds/inference/formats';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const seed = 20261125;
const good =
  'network n { } variable a { type discrete [ 2 ] { y, n }; } variable b { type discrete [ 2 ] { y, n }; } probability ( a ) { table 0.2, 0.8; } probability ( b | a ) { (y) 0.1, 0.9; (n) 0.5, 0.5; }';
const json = JSON.stringify({
  variables: [
    { name: 'a', states: ['y', 'n'], table: [0.2, 0.8] },
    { name: 'b', states: ['y', 'n'], parents: ['a'], table: [0.1, 0.9, 0.5, 0.5] },
  ],
});

/** What reading a text does: 'read', or the error's class; anything but our own errors is thrown on. */
function outcome(read: () => unknown): string {
  try {
    read();
    return 'read';
  } catch (error) {
    if (error instanceof InferenceError) return error.name;
    throw error;
  }
}

describe('network text that is damaged', () => {
  test.each([
    ['BIF', good, (text: string): unknown => defineNetwork(parseBif(text))],
    ['JSON', json, (text: string): unknown => parseNetworkJson(text)],
  ])(
    '%s: cut, doubled or with a character changed it is read or refused with one of our errors, quickly',
    (_, text, read) => {
      expect(outcome(() => read(text))).toBe('read');
      const damaged = fc.oneof(
        fc.nat(text.length).map((at) => text.slice(0, at)),
        fc.tuple(fc.nat(text.length), fc.nat(text.length)).map(([a, b]) => text.slice(0, a) + text.slice(b)),
        fc
          .tuple(
            fc.nat(text.length),
            fc.constantFrom(
              '{',
              '}',
              '(',
              ')',
              '"',
              ',',
              ';',
              '|',
              '0',
              '-',
              'x',
              '/*',
              '//',
              '\u0000',
              '\ud800',
              '__proto__',
            ),
          )
          .map(([at, mark]) => text.slice(0, at) + mark + text.slice(at + 1)),
        fc.string({ maxLength: 60 }),
      );
      fc.assert(
        fc.property(damaged, (other) => {
          expect(['read', 'FormatError', 'NetworkError']).toContain(outcome(() => read(other)));
        }),
        { seed, numRuns: 1500 },
      );
    },
  );

  test('deep nesting is refused, not a stack overflow', () => {
    expect(outcome(() => parseNetworkJson('['.repeat(200_000)))).toBe('FormatError');
    expect(outcome(() => parseNetworkJson(`{"variables":${'['.repeat(3000)}${']'.repeat(3000)}}`))).toBe('FormatError');
    expect(outcome(() => parseBif('{'.repeat(100_000)))).toBe('FormatError');
  });

  test('names that mean something to JavaScript are ordinary names', () => {
    const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty'];
    const network = defineNetwork({
      variables: names.map((name, at) => ({
        name,
        states: ['__proto__', 'valueOf'],
        parents: names.slice(Math.max(0, at - 1), at),
        table: at === 0 ? [0.25, 0.75] : [0.5, 0.5, 0.1, 0.9],
      })),
    });
    const { marginals } = posterior(compileNetwork(network), { constructor: 'valueOf' });
    expect(Object.keys(marginals)).toEqual(names);
    for (const name of names)
      expect(Object.keys(Object.getOwnPropertyDescriptor(marginals, name)!.value as object)).toEqual([
        '__proto__',
        'valueOf',
      ]);
    expect(Object.getPrototypeOf({})).toBe(Object.prototype);
    expect(Object.keys(posteriorGivenEach(compileEach(network, '__proto__'), {}).marginals)).toEqual(names);
  });
});
