import { spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

// Spawns the built program: `npm run build` first. Where it is not built, these tests are skipped and say so.
const bin = fileURLToPath(new URL('../bin/faultodds.mjs', import.meta.url));
const isBuilt = existsSync(new URL('../dist/main.js', import.meta.url));
if (!isBuilt)
  console.warn('packages/cli is not built: the tests of the spawned program are skipped; run npm run build');

function spawned(argv: readonly string[], env: Record<string, string> = {}, input = ''): SpawnSyncReturns<string> {
  const { PATH = '' } = process.env;
  return spawnSync(process.execPath, [bin, ...argv], {
    encoding: 'utf8',
    input,
    env: { PATH, LANG: 'C.UTF-8', ...env },
  });
}

describe.skipIf(!isBuilt)('the built program', () => {
  test('replays a demo case into a pipe: no colour, no cursor codes', () => {
    const { status, stdout, stderr } = spawned(['replay', 'demo-07']);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain('█');
    expect(stdout).not.toContain('\u001b');
  });

  test('FORCE_COLOR colours even a pipe; NO_COLOR and a pipe do not', () => {
    expect(spawned(['replay', 'demo-01'], { FORCE_COLOR: '1' }).stdout).toContain('\u001b[1m');
    expect(spawned(['replay', 'demo-01'], { NO_COLOR: '1' }).stdout).not.toContain('\u001b');
  });

  test('plain ASCII where the locale is not UTF-8', () => {
    const { stdout } = spawned(['replay', 'demo-08', '--labour', '80', '--currency', 'EUR'], { LANG: 'C' });
    // oxlint-disable-next-line no-control-regex
    expect(stdout).toMatch(/^[\x00-\x7f]+$/);
    expect(stdout).toContain('=====');
    expect(stdout).not.toContain('?\n');
  });

  test('reads a case from standard input', () => {
    const events = [{ kind: 'result-recorded', id: 'r1', test: 'coil-swap', outcome: 'follows' }];
    const document = JSON.stringify({ format: 'faultodds-case', version: 1, id: 'c', title: 'Invented', events });
    const { status, stdout } = spawned(['replay', '-', '--json'], {}, `\uFEFF${document}`);
    expect(status).toBe(0);
    expect(JSON.parse(stdout).case.title).toBe('Invented');
  });

  test('unknown input: one line on standard error, exit code 2, no stack', () => {
    const { status, stdout, stderr } = spawned(['replay', 'demo-77']);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toMatch(/^faultodds: [^\n]+\n$/);
  });

  test('asking without a terminal says so', () => {
    expect(spawned(['ask'], {}, 'y\n')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('needs a terminal'),
    });
  });
});

test('the bin of a checkout that is not built says what to do', () => {
  const folder = mkdtempSync(join(tmpdir(), 'faultodds-bin-'));
  mkdirSync(join(folder, 'bin'));
  copyFileSync(bin, join(folder, 'bin', 'faultodds.mjs'));
  const { status, stderr } = spawnSync(process.execPath, [join(folder, 'bin', 'faultodds.mjs')], { encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  expect(status).toBe(2);
  expect(stderr).toBe('faultodds: not built yet; run npm run build first\n');
});
