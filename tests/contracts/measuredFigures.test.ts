import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { figures } from '../bench/figures.mjs';
import { root } from '../fixtures/filesUnder.ts';

/** Where a line breaks and how a table is padded does not matter. */
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe.each(Object.entries(figures))('%s says what the benches stored', (document, sentences) => {
  const text = flat(readFileSync(join(root, document), 'utf8'));
  test.each(sentences)('%s', (sentence) => {
    expect(text).toContain(flat(sentence));
  });
});
