import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';
import { askKernel } from '../fixtures/askKernel.mjs';

// The built kernel, as it is published, against the sources in this process.
const isBuilt = existsSync(join(root, 'packages/inference/dist/index.js'));
const script = join(root, 'tests/fixtures/tellAnswers.mjs');

describe.skipIf(!isBuilt)('the built kernel (npm run build)', () => {
  const expected = askKernel();

  test('gives the same numbers, bit by bit, in a worker thread', async () => {
    const told = await new Promise<string>((resolve, reject) => {
      const worker = new Worker(script, { execArgv: [] });
      worker.once('message', resolve);
      worker.once('error', reject);
    });
    expect(JSON.parse(told)).toEqual({ answers: expected, makesCode: true });
    expect(expected.length).toBeGreaterThan(10_000);
  });

  test('and where no code may be made from text', () => {
    const told = execFileSync(process.execPath, ['--disallow-code-generation-from-strings', script], {
      encoding: 'utf8',
    });
    expect(JSON.parse(told)).toEqual({ answers: expected, makesCode: false });
  });
});
