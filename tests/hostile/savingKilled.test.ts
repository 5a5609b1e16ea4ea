import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { scriptPrompter } from '../../packages/cli/fixtures/scriptPrompter.ts';
import { saveToFile } from '../../packages/cli/src/save/saveToFile.ts';
import { caseState, compileModel, loadCase, parseModel, startCase } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { root } from '../fixtures/filesUnder.ts';
import { recordTerminal } from '../fixtures/recordTerminal.ts';

// Runs the built terminal: `npm run build` first. Where it is not built, these tests are skipped and say so.
const isBuilt = existsSync(join(root, 'packages/cli/dist/files/replaceFile.js'));
if (!isBuilt) console.warn('packages/cli is not built: saving that is killed is not tried; run npm run build');

const folder = mkdtempSync(join(tmpdir(), 'faultodds-killed-'));
afterAll(() => rmSync(folder, { recursive: true }));
const compiled = compileModel(parseModel(misfire));

/** Of a case that loads. */
function titleIn(path: string): string {
  return caseState(loadCase(compiled, JSON.parse(readFileSync(path, 'utf8')))).title;
}

function started(script: string, ...argv: readonly string[]): ChildProcess {
  return spawn(process.execPath, [join(root, 'tests/fixtures', script), ...argv], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
}

describe.skipIf(!isBuilt)('the terminal that is killed while it saves', () => {
  const titles = ['one', 'two'];
  const path = join(folder, 'case.json');

  test('leaves a whole case, the old or the new one, in each of twenty trials, and the next save works', async () => {
    for (let trial = 0; trial < 20; trial += 1) {
      const child = started('saveForEver.mjs', path, ...titles);
      // killed somewhere in the save that comes after so many lines
      for (let lines = 0; lines <= trial % 4;) {
        const [chunk] = (await once(child.stdout!, 'data')) as [Buffer];
        lines += chunk.toString().split('\n').length - 1;
      }
      child.kill('SIGKILL');
      await once(child, 'close');
      expect(titles).toContain(titleIn(path));
    }
    const { terminal, out } = recordTerminal();
    const { prompter } = scriptPrompter([path, true]);
    expect(await saveToFile(terminal, prompter, compiled, startCase({ id: 'c', title: 'three' }))).toMatchObject({
      path,
    });
    expect(out()).toContain('Saved.');
    expect(titleIn(path)).toBe('three');
    expect(readdirSync(folder)).toEqual(['case.json']);
  }, 240_000);

  test('of several that count up in one file at once, none undoes what another wrote', async () => {
    const count = join(folder, 'count');
    writeFileSync(count, '0');
    const children = [1, 2, 3].map(() => started('countInFile.mjs', count, '40'));
    expect(await Promise.all(children.map((child) => once(child, 'close')))).toEqual([1, 2, 3].map(() => [0, null]));
    expect(readFileSync(count, 'utf8')).toBe('120');
    expect(readdirSync(folder).filter((name) => name.includes('count'))).toEqual(['count']);
  }, 240_000);
});
