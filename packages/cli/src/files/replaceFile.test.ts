import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { replaceFile } from './replaceFile.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-replace-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** A folder of its own, with a file in it. */
function place(name: string, content?: string): string {
  mkdirSync(join(folder, name));
  const path = join(folder, name, 'case.json');
  if (content !== undefined) writeFileSync(path, content);
  return path;
}
const namesBeside = (path: string): string[] => readdirSync(join(path, '..')).sort();

test('a file is written and replaced, and nothing is left beside it', () => {
  const path = place('plain');
  replaceFile(path, 'one');
  replaceFile(path, 'two');
  expect(readFileSync(path, 'utf8')).toBe('two');
  expect(namesBeside(path)).toEqual(['case.json']);
});

describe('over what was read', () => {
  test('the same content is replaced', () => {
    const path = place('same', 'read');
    replaceFile(path, 'new', { over: Buffer.from('read') });
    expect(readFileSync(path, 'utf8')).toBe('new');
  });

  test('what another writer put there, of the same length even, stays', () => {
    const path = place('changed', 'raed');
    expect(() => replaceFile(path, 'new', { over: Buffer.from('read') })).toThrow('changed by another program');
    expect(readFileSync(path, 'utf8')).toBe('raed');
    expect(namesBeside(path)).toEqual(['case.json']);
  });

  test('a file that must not exist is never replaced; one that is gone is written anew', () => {
    const path = place('new', 'there');
    expect(() => replaceFile(path, 'new', { over: null })).toThrow('exists');
    expect(readFileSync(path, 'utf8')).toBe('there');
    rmSync(path);
    replaceFile(path, 'again', { over: Buffer.from('there') });
    expect(readFileSync(path, 'utf8')).toBe('again');
    expect(namesBeside(path)).toEqual(['case.json']);
  });
});

test('a link is followed and rights are kept', () => {
  const path = place('linked', 'old');
  chmodSync(path, 0o640);
  const link = join(folder, 'linked', 'link.json');
  symlinkSync(path, link);
  replaceFile(link, 'new');
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(statSync(path).mode & 0o777).toBe(0o640);
});

test('what a killed process left beside it is taken away; a trap laid there is not written through', () => {
  const path = place('killed', 'old');
  const victim = join(folder, 'killed', 'victim');
  writeFileSync(victim, 'mine');
  symlinkSync(victim, join(folder, 'killed', '.case.json.new'));
  // no process has this number: they end far below
  writeFileSync(join(folder, 'killed', '.case.json.lock'), '999999999');
  replaceFile(path, 'new');
  expect(readFileSync(path, 'utf8')).toBe('new');
  expect(readFileSync(victim, 'utf8')).toBe('mine');
  expect(namesBeside(path)).toEqual(['case.json', 'victim']);
});

test.each([
  ['a folder', () => folder, 'it is a folder'],
  ['a folder that is not there', () => join(folder, 'no', 'case.json'), 'there is no such file or folder'],
  ['a name below a file', () => join(place('below', 'x'), 'case.json'), 'is not a folder'],
  ['too long a name', () => join(folder, 'x'.repeat(300)), 'the name is too long'],
])('%s is refused in one line', (_, path, reason) => {
  expect(() => replaceFile(path(), 'new')).toThrow(reason);
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
});

const hasFullDevice = existsSync('/dev/full');
if (!hasFullDevice) console.warn('no /dev/full here: that a full device is told is not tried');
test.skipIf(!hasFullDevice)('a device is written to, not replaced; when it is full, that is told', () => {
  expect(() => replaceFile('/dev/full', 'new')).toThrow('the disk is full');
  expect(statSync('/dev/full').isCharacterDevice()).toBe(true);
});

describe('when the disk is full in mid-write', () => {
  const root = join(folder, 'small-disk');
  mkdirSync(root);
  const isMounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', root]).status === 0;
  if (!isMounted) console.warn('no small disk can be mounted here (root only): the full disk is not tried');
  afterAll(() => {
    if (isMounted) spawnSync('umount', [root]);
  });

  test.skipIf(!isMounted)(
    'what was there stays whole, nothing is left beside it, and there is room again later',
    () => {
      const path = join(root, 'case.json');
      writeFileSync(path, 'old '.repeat(400));
      const filler = join(root, 'filler');
      try {
        writeFileSync(filler, Buffer.alloc(80_000));
      } catch {
        // as full as it gets
      }
      expect(() => replaceFile(path, 'new '.repeat(5_000))).toThrow('the disk is full');
      expect(readFileSync(path, 'utf8')).toBe('old '.repeat(400));
      expect(namesBeside(path)).toEqual(['case.json', 'filler']);
      rmSync(filler);
      replaceFile(path, 'new '.repeat(5_000));
      expect(readFileSync(path, 'utf8')).toBe('new '.repeat(5_000));
    },
  );
});
