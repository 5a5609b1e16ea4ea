import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { jsonFilesBelow } from './jsonFilesBelow.ts';
import { MOST_BYTES, readBytes } from './readBytes.ts';
import { run } from '../commands/run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-reading-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, content);
  return path;
}

async function refused(...argv: string[]): Promise<string> {
  const { terminal, out, err } = recordTerminal();
  expect(await run(argv, terminal)).toBe(2);
  expect(out()).toBe('');
  expect(err()).toMatch(/^faultodds: [^\n]+\n$/);
  return err();
}

test('a file is read whole up to the ceiling, and refused above it', async () => {
  const path = file('large.json', '');
  truncateSync(path, MOST_BYTES);
  expect((await readBytes(path)).length).toBe(MOST_BYTES);
  truncateSync(path, MOST_BYTES + 1);
  await expect(readBytes(path)).rejects.toThrow('is larger than 16 MiB');
  expect(await refused('check', path)).toContain('is larger than 16 MiB');
  truncateSync(path, 0);
});

describe('what is not UTF-8 is refused with its place', () => {
  const text = '{ "format": "faultodds-case", "version": 2, "id": "c", "title": "caf';
  const latin = Buffer.concat([Buffer.from(text), Buffer.from([0xe9]), Buffer.from('", "events": [] }')]);

  test.each([['replay'], ['plan'], ['check']])('%s of a case', async (command) => {
    expect(await refused(command, file('latin.json', latin))).toContain(`is not UTF-8 at byte ${text.length + 1}`);
  });

  test('a part of a model, and a file of another encoding from its first byte', async () => {
    file('parts/a.json', latin);
    expect(await refused('check', join(folder, 'parts'))).toContain("a.json' is not UTF-8");
    expect(await refused('replay', 'demo-01', '--model', join(folder, 'parts'))).toContain('is not UTF-8');
    expect(await refused('check', file('utf16.json', Buffer.from('\uFEFF{}', 'utf16le')))).toContain('at byte 1;');
    expect(await refused('check', file('cut.json', Buffer.from('{ "é').subarray(0, -1)))).toContain('at byte 4;');
  });
});

test('a folder that is no model in parts is refused, whatever lies in it', async () => {
  for (const name of ['a.json', 'b/c.json', 'd.txt']) file(join('many', name), '{}');
  expect(jsonFilesBelow(join(folder, 'many'), 4)).toEqual(
    ['a.json', 'b/c.json'].map((name) => join(folder, 'many', name)),
  );
  expect(() => jsonFilesBelow(join(folder, 'many'), 3)).toThrow('more than 3 files and folders');
  const circle = file('circle/a.json', '[]');
  rmSync(circle);
  symlinkSync(circle, circle);
  expect(await refused('check', join(folder, 'circle'))).toContain('its links lead in a circle');
  expect(await refused('check', join(file('plain.json', '{}'), 'below'))).toContain('not a folder');
});
