import { spawn, spawnSync, type SpawnSyncReturns } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, copyFileSync, existsSync, mkdirSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
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
      stderr: expect.stringContaining('needs an interactive terminal'),
    });
  });
});

describe.skipIf(!isBuilt)('the built program at its edges', () => {
  const document = JSON.stringify({ format: 'faultodds-case', version: 2, id: 'c', title: 'Invented', events: [] });
  const env = { PATH: process.env['PATH'] ?? '', LANG: 'C.UTF-8' };

  test('a pipe that has nothing yet is waited for', async () => {
    // says so when it begins to read, so that nothing has to be slept for
    const hook = `const read = process.stdin._read;
      process.stdin._read = function (size) { process.stderr.write('reading'); read.call(this, size); };`;
    const child = spawn(
      process.execPath,
      ['--import', `data:text/javascript,${encodeURIComponent(hook)}`, bin, 'replay', '-', '--json'],
      { env },
    );
    const said: string[] = [];
    child.stdout.on('data', (chunk) => said.push(String(chunk)));
    const closed = once(child, 'close');
    const [first] = (await Promise.race([once(child.stderr, 'data'), closed])) as [unknown];
    expect(String(first)).toContain('reading');
    child.stdin.write(document.slice(0, 20));
    child.stdin.end(document.slice(20));
    expect(await closed).toEqual([0, null]);
    expect(JSON.parse(said.join(''))).toMatchObject({ case: { title: 'Invented' } });
  });

  test('data stays the same data where only ASCII is shown', () => {
    // its sentences hold quotation marks: as ASCII they would end a string of JSON
    const argv = ['replay', 'demo-01', '--json', '--top', '1'];
    const ascii = spawned(argv, { LANG: 'C' }).stdout;
    // oxlint-disable-next-line no-control-regex
    expect(ascii).toMatch(/^[\x00-\x7f]+$/);
    expect(JSON.parse(ascii)).toEqual(JSON.parse(spawned(argv).stdout));
  });

  test('a pipe that is closed early is no failure and says nothing', async () => {
    const child = spawn(process.execPath, [bin, 'list', 'causes'], { env });
    child.stdout.destroy();
    const said: string[] = [];
    child.stderr.on('data', (chunk) => said.push(String(chunk)));
    expect(await once(child, 'close')).toEqual([0, null]);
    expect(said.join('')).toBe('');
  });

  const hasFullDevice = existsSync('/dev/full');
  if (!hasFullDevice) console.warn('no /dev/full here: that a full disk is told on output is not tried');
  test.skipIf(!hasFullDevice)('output that cannot be written is told in one line', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [bin, 'list', 'causes'], {
      encoding: 'utf8',
      env,
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'faultodds: cannot write what was asked for: the disk is full\n',
    });
  });

  test('a fault of its own is one line with its place, and exit code 3', () => {
    const fault = `Array.prototype.findLast = () => { throw new TypeError('broken\\nby the test'); };
      JSON.stringify = Array.prototype.findLast;`;
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', `data:text/javascript,${encodeURIComponent(fault)}`, bin, 'list', 'causes', '--json'],
      { encoding: 'utf8', env },
    );
    expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
    expect(stderr).toMatch(/^faultodds: a fault of faultodds itself, please report it: broken by the test \(.+\)\n$/);
  });
});

test('the bin of a checkout that is not installed or built says in one line what to do, through npm too', () => {
  const folder = mkdtempSync(join(tmpdir(), 'faultodds-bin-'));
  for (const path of ['packages/cli/bin/faultodds.mjs', '.tools/faultodds.mjs']) {
    mkdirSync(join(folder, path, '..'), { recursive: true });
    copyFileSync(new URL(`../../../${path}`, import.meta.url), join(folder, path));
  }
  writeFileSync(join(folder, 'packages/cli/tsconfig.json'), '{}');
  const answers = ['packages/cli/bin/faultodds.mjs', '.tools/faultodds.mjs'].map((path) =>
    spawnSync(process.execPath, [join(folder, path), 'replay', 'demo-07'], { encoding: 'utf8' }),
  );
  rmSync(folder, { recursive: true });
  for (const { status, stderr } of answers) {
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'faultodds: not ready yet; run first: npm run build\n',
    });
  }
});
