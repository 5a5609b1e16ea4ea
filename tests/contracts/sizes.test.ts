import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { bundleOf } from './bundleOf.ts';

// Bytes a consumer ships, minified and gzipped, built by Vite from the sources. Ceilings stand just above today's size and are raised
// in the commit that needs it.

/** kB (1000 bytes) of a bundle that uses all of `code`'s exports. */
async function sizeKb(code: string, external: readonly string[] = []): Promise<number> {
  return gzipSync((await bundleOf(code, external)).code, { level: 9 }).length / 1000;
}

const dependencies = ['@faultodds/inference', 'zod', 'zod/mini', 'immer', 'jstat', 'd3-random'];

/** What the kernel's README says its entries weigh. */
const written = Object.fromEntries(
  [
    ...readFileSync(join(root, 'packages/inference/README.md'), 'utf8').matchAll(
      /^\| `(?:…|@faultodds\/inference)(\/\w+)?` \| ([\d.]+) \|$/gm,
    ),
  ].map(([, path = '', kb]) => [`@faultodds/inference${path}`, Number(kb)]),
);

describe('bytes a consumer ships', () => {
  test.each([
    ['@faultodds/inference', `export * from '@faultodds/inference'`, [], 12.6],
    ['@faultodds/inference/sweeps', `export * from '@faultodds/inference/sweeps'`, [], 9.3],
    ['@faultodds/inference/each', `export * from '@faultodds/inference/each'`, [], 12],
    ['@faultodds/inference/analysis', `export * from '@faultodds/inference/analysis'`, [], 9],
    ['@faultodds/inference/sampling', `export * from '@faultodds/inference/sampling'`, [], 6],
    ['@faultodds/inference/formats', `export * from '@faultodds/inference/formats'`, [], 5],
    ['@faultodds/core without dependencies', `export * from '@faultodds/core'`, dependencies, 47.5],
    ['@faultodds/core with dependencies', `export * from '@faultodds/core'`, [], 62.5],
    ['@faultodds/core/readings', `export * from '@faultodds/core/readings'`, dependencies, 14.2],
    ['@faultodds/core/codes', `export * from '@faultodds/core/codes'`, dependencies, 10.5],
    ['@faultodds/core/explanation', `export * from '@faultodds/core/explanation'`, dependencies, 26.5],
    ['@faultodds/core/planning', `export * from '@faultodds/core/planning'`, dependencies, 51],
    ['@faultodds/core/doubt', `export * from '@faultodds/core/doubt'`, dependencies, 39],
    ['@faultodds/core/simulation', `export * from '@faultodds/core/simulation'`, dependencies, 43.5],
    ['@faultodds/core/authoring', `export * from '@faultodds/core/authoring'`, dependencies, 19],
    ['@faultodds/core/schema', `export * from '@faultodds/core/schema'`, dependencies, 3.8],
    ['@faultodds/core/words', `export * from '@faultodds/core/words'`, dependencies, 7.5],
    ['@faultodds/core/words/en', `export * from '@faultodds/core/words/en'`, dependencies, 10],
    ['@faultodds/core/words/de', `export * from '@faultodds/core/words/de'`, dependencies, 12],
    ['@faultodds/misfire', `export * from '@faultodds/misfire'`, [], 60],
  ])('%s', async (name, code, external, ceilingKb) => {
    const kb = await sizeKb(code, external);
    console.log(`${name}: ${kb.toFixed(1)} kB minified and gzipped`);
    expect(kb).toBeGreaterThan(1);
    expect(kb).toBeLessThan(ceilingKb);
    if (name in written) expect(kb, 'as packages/inference/README.md says').toBeCloseTo(written[name]!, 0);
  });

  test('what is written is found', () => {
    expect(Object.keys(written)).toHaveLength(6);
  });

  test('nothing runs at load: importing without using costs nothing', async () => {
    for (const name of ['@faultodds/inference', '@faultodds/core']) {
      expect(await sizeKb(`import '${name}'; export const nothing = 0;`), name).toBeLessThan(0.2);
    }
  });
});
