import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { bundleOf } from './bundleOf.ts';

// Bytes a consumer ships, minified and gzipped, built by Vite from the sources. Ceilings stand just above today's size and are raised
// in the commit that needs it.

/** kB (1000 bytes) of a bundle that uses all of `code`'s exports. */
async function sizeKb(code: string, external: readonly string[] = []): Promise<number> {
  return gzipSync((await bundleOf(code, external)).code, { level: 9 }).length / 1000;
}

const dependencies = ['@faultodds/inference', 'zod', 'zod/mini', 'immer', 'jstat', 'd3-random'];

describe('bytes a consumer ships', () => {
  test.each([
    ['@faultodds/inference', `export * from '@faultodds/inference'`, [], 12.6],
    ['@faultodds/inference/sweeps', `export * from '@faultodds/inference/sweeps'`, [], 9.3],
    ['@faultodds/inference/each', `export * from '@faultodds/inference/each'`, [], 12],
    ['@faultodds/inference/analysis', `export * from '@faultodds/inference/analysis'`, [], 9],
    ['@faultodds/inference/sampling', `export * from '@faultodds/inference/sampling'`, [], 6],
    ['@faultodds/inference/reading', `export * from '@faultodds/inference/reading'`, [], 5],
    ['@faultodds/core without dependencies', `export * from '@faultodds/core'`, dependencies, 76],
    ['@faultodds/core with dependencies', `export * from '@faultodds/core'`, [], 110],
    ['@faultodds/misfire', `export * from '@faultodds/misfire'`, [], 60],
  ])('%s', async (name, code, external, ceilingKb) => {
    const kb = await sizeKb(code, external);
    console.log(`${name}: ${kb.toFixed(1)} kB minified and gzipped`);
    expect(kb).toBeGreaterThan(1);
    expect(kb).toBeLessThan(ceilingKb);
  });

  test('nothing runs at load: importing without using costs nothing', async () => {
    for (const name of ['@faultodds/inference', '@faultodds/core']) {
      expect(await sizeKb(`import '${name}'; export const nothing = 0;`), name).toBeLessThan(0.2);
    }
  });
});
