import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { filesUnder, root } from '../fixtures/filesUnder.ts';

/** What builds and tools leave behind; none of it is kept (see .gitignore). */
const leftBehind = ['node_modules', 'coverage', 'test-results', 'docs', 'dist'];

test('the top level holds these names and dotfiles, nothing else', () => {
  const names = readdirSync(root).filter(
    (name) => !name.startsWith('.') && !leftBehind.includes(name) && !name.endsWith('.tsbuildinfo'),
  );
  expect(names.sort()).toEqual(
    [
      'README.md',
      'DEVELOPERS.md',
      'CHANGELOG.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'vitest.config.ts',
      'packages',
      'playground',
      'priors',
      'tests',
    ].sort(),
  );
  const ignored = readFileSync(join(root, '.gitignore'), 'utf8');
  for (const name of leftBehind) {
    if (existsSync(join(root, name))) expect(ignored).toMatch(new RegExp(`^${name}/`, 'm'));
  }
});

test('the lockfile names no registry', () => {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { resolved?: string; version?: string; link?: boolean }>;
  };
  const entries = Object.entries(lock.packages);
  expect(entries.length).toBeGreaterThan(100);
  expect(entries.filter(([, { resolved }]) => /^(https?|git|ssh)/.test(resolved ?? ''))).toEqual([]);
});

test('every package states its licence, the Node it runs on and what it ships', () => {
  for (const path of filesUnder('packages', 'package.json')) {
    const about = JSON.parse(readFileSync(join(root, path), 'utf8')) as Record<string, unknown>;
    expect(about, path).toMatchObject({
      license: 'MIT',
      type: 'module',
      engines: { node: '^20.19.0 || ^22.12.0 || >=24' },
    });
    expect(about['files'], path).toContain('dist');
  }
});

test('no file names a path of one machine or the host of a registry', () => {
  const kept = ['packages', 'priors', 'playground', 'tests', '.tools', '.ci'].flatMap((folder) =>
    ['.ts', '.mjs', '.js', '.svelte', '.json', '.md', '.html', '.css', 'run'].flatMap((ending) =>
      filesUnder(folder, ending),
    ),
  );
  const own = [
    'README.md',
    'DEVELOPERS.md',
    'CHANGELOG.md',
    'package.json',
    'package-lock.json',
    '.npmrc',
    'vitest.config.ts',
  ];
  const pattern = new RegExp(
    ['/(work|root|home)/[a-z]', '(?<![.\\w])/tmp/[a-z]', 'registry\\.[a-z]+\\.(org|com)'].join('|'),
  );
  const found = [...kept, ...own]
    .filter((path) => path !== join('tests', 'contracts', 'topLevel.test.ts'))
    .filter((path) => existsSync(join(root, path)) && pattern.test(readFileSync(join(root, path), 'utf8')));
  expect(found).toEqual([]);
});
