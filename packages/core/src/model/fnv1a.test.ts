import { expect, test } from 'vitest';
import { fnv1a } from './fnv1a.ts';

// test vectors of the authors, as printed in draft-eastlake-fnv
test.each([
  ['', 'cbf29ce484222325'],
  ['a', 'af63dc4c8601ec8c'],
  ['foobar', '85944171f73967e8'],
])('the published 64-bit hash of %j is %s', (text, hash) => {
  expect(fnv1a(text)).toBe(hash);
});

test('letters of one to four bytes are hashed as UTF-8: the definition, in big integers', () => {
  const defined = (text: string): string => {
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) % 2n ** 64n;
    return hash.toString(16).padStart(16, '0');
  };
  for (const text of ['é', 'Prüfstand – “four” 100 °C', '€', '😀', `${'leak-down '.repeat(300)}µ`]) {
    expect(fnv1a(text), text).toBe(defined(text));
  }
});
