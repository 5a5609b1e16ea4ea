import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { lockFile } from './lockFile.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-held-'));
afterAll(() => rmSync(folder, { recursive: true }));
const lock = join(folder, '.case.json.lock');
const hold = (work: () => unknown, most?: number) => lockFile(join(folder, 'case.json'), work, most);

test('while another faultodds holds the file nothing is done, and its lock stays', () => {
  // the process that runs these tests has a parent, and that one runs
  writeFileSync(lock, `${process.ppid}`);
  let done = false;
  expect(() => hold(() => (done = true), 3)).toThrow('being written by another faultodds');
  expect(done).toBe(false);
  expect(readdirSync(folder)).toEqual(['.case.json.lock']);
  rmSync(lock);
});

test.each([
  ['of a process that has ended', '999999999'],
  ['of an earlier process with the number of this one', `${process.pid}`],
  ['that names nobody', ''],
])('a lock %s is taken away', (_, text) => {
  writeFileSync(lock, text);
  expect(hold(() => readdirSync(folder))).toEqual(['.case.json.lock']);
  expect(readdirSync(folder)).toEqual([]);
});

test('what goes wrong meanwhile is passed on, and the file is free again', () => {
  expect(() =>
    hold(() => {
      throw new TypeError('full');
    }),
  ).toThrow('full');
  expect(readdirSync(folder)).toEqual([]);
});
