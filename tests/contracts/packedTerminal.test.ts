import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';

// Packs what would be published and installs it into an empty folder, without a network: what it depends on is packed from this checkout's
// node_modules. Needs a build; where there is none, these tests are skipped and say so.
const own = ['packages/inference', 'packages/core', 'packages/cli', 'priors'];
const isBuilt = existsSync(join(root, 'packages/cli/dist/main.js')) && existsSync(join(root, 'priors/dist/index.js'));
if (!isBuilt) console.warn('nothing is built: the packed terminal is not tried; run npm run build');

const folder = mkdtempSync(join(tmpdir(), 'faultodds-packed-'));
afterAll(() => rmSync(folder, { recursive: true }));

function npm(...argv: readonly string[]): void {
  const cli = process.env['npm_execpath'];
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--offline', '--loglevel=error', ...argv];
  const [command, first] = cli?.endsWith('.js') === true ? [process.execPath, [cli]] : ['npm', []];
  const { status, stderr } = spawnSync(command, [...first, ...quiet], { cwd: folder, encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
}

/** Names of everything that packages depend on and that is not theirs, however deep. */
function foreign(paths: readonly string[], found = new Set<string>()): Set<string> {
  for (const path of paths) {
    const { dependencies = {} } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8')) as {
      dependencies?: Record<string, string>;
    };
    const fresh = Object.keys(dependencies).filter((name) => !name.startsWith('@faultodds/') && !found.has(name));
    for (const name of fresh) found.add(name);
    foreign(
      fresh.map((name) => join('node_modules', name)),
      found,
    );
  }
  return found;
}

describe.skipIf(!isBuilt)('the packed terminal, installed into an empty folder', () => {
  beforeAll(() => {
    const paths = [...own, ...[...foreign(own)].map((name) => join('node_modules', name))];
    npm('pack', ...paths.map((path) => join(root, path)));
    const tarballs = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
    expect(tarballs).toHaveLength(paths.length);
    mkdirSync(join(folder, 'place'));
    writeFileSync(join(folder, 'place', 'package.json'), '{ "name": "place", "private": true }');
    npm('install', '--prefix', 'place', ...tarballs.map((name) => join(folder, name)));
  }, 240_000);

  const answer = (...argv: readonly string[]) => {
    const bin = join(folder, 'place/node_modules/.bin/faultodds');
    const { status, stdout, stderr } = spawnSync(bin, argv, {
      cwd: join(folder, 'place'),
      encoding: 'utf8',
      env: { PATH: process.env['PATH'] ?? '', LANG: 'C.UTF-8' },
      shell: process.platform === 'win32',
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    return stdout;
  };

  test('it explains itself', () => {
    const help = answer('--help');
    for (const command of ['replay', 'ask', 'plan', 'codes', 'check', 'list']) expect(help).toContain(command);
  });

  test('it lists the knowledge that was packed with it', () => {
    const listed = JSON.parse(answer('list', 'cases', '--json')) as { id: string }[];
    expect(listed.map(({ id }) => id)).toEqual(expect.arrayContaining(['demo-01', 'demo-07', 'demo-12']));
  });

  test('it replays a case, with the numbers of this checkout', () => {
    const ours = spawnSync(
      process.execPath,
      [join(root, 'packages/cli/bin/faultodds.mjs'), 'replay', 'demo-07', '--json'],
      {
        encoding: 'utf8',
        env: { PATH: process.env['PATH'] ?? '', LANG: 'C.UTF-8' },
      },
    );
    const packed = JSON.parse(answer('replay', 'demo-07', '--json')) as { ending: { trueCause: string } };
    expect(packed.ending.trueCause).toBe('cam-bridge-cracked');
    expect(packed).toEqual(JSON.parse(ours.stdout));
  });

  test('no tests, no configuration and nothing of the checkout is in it', () => {
    const packed = join(folder, 'place/node_modules/@faultodds');
    const files = (readdirSync(packed, { recursive: true }) as string[]).filter((path) => !/node_modules/.test(path));
    expect(files.length).toBeGreaterThan(100);
    expect(files.filter((path) => /\.test\.|tsconfig|fixtures|\.tsbuildinfo$/.test(path))).toEqual([]);
  });
});
