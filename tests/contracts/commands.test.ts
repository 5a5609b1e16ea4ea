import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { root } from '../fixtures/filesUnder.ts';

const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  scripts: Readonly<Record<string, string>>;
};
/** Parts of `check`, and plain Node without a dependency: these run, or say what to run first, with nothing installed. */
const WITHOUT_SETUP = ['check:format', 'check:lint', 'check:types', 'check:unused', 'assemble', 'faultodds'];

test('whichever npm command is the first in a fresh clone, it installs what is missing before anything else', () => {
  const commands = Object.keys(scripts).filter((name) => !name.startsWith('pre') && !WITHOUT_SETUP.includes(name));
  expect(commands).toContain('start');
  expect(commands.filter((name) => !scripts[`pre${name}`]?.startsWith('node .tools/ensure.mjs'))).toEqual([]);
});

test('what runs before anything is installed needs nothing that is installed', () => {
  for (const name of ['ensure', 'browser', 'assemblePriors', 'faultodds']) {
    const text = readFileSync(join(root, `.tools/${name}.mjs`), 'utf8');
    const imported = [...text.matchAll(/from '([^']+)'/g)].map(([, from]) => from!);
    expect(
      imported.filter((from) => !from.startsWith('node:') && !from.startsWith('./')),
      name,
    ).toEqual([]);
  }
});

test('whatever compiles puts the knowledge together first: sources read it', () => {
  const compiling = Object.entries(scripts).filter(([, command]) => command.includes('tsc -b'));
  expect(compiling.map(([name]) => name)).toContain('docs');
  expect(compiling.filter(([, command]) => !command.startsWith('npm run assemble && '))).toEqual([]);
});
