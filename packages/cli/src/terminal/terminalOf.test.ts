import { describe, expect, test } from 'vitest';
import { terminalOf } from './terminalOf.ts';

function terminal(env: Record<string, string>, isTTY: boolean, platform = 'linux', columns = 200) {
  const written: string[] = [];
  const stream = {
    write: (text: string) => (written.push(text), true),
    isTTY,
    columns,
  } as unknown as NodeJS.WriteStream;
  const made = terminalOf({ stdout: stream, stderr: stream, stdin: { isTTY }, env, platform });
  return { ...made, written };
}

describe('colour', () => {
  test.each([
    [{}, true, true],
    [{}, false, false],
    [{ NO_COLOR: '1' }, true, false],
    [{ NO_COLOR: '' }, true, true],
    [{ TERM: 'dumb' }, true, false],
    [{ FORCE_COLOR: '1' }, false, true],
    [{ FORCE_COLOR: '' }, false, true],
    [{ FORCE_COLOR: '0' }, true, false],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, false, true],
  ])('%j on a terminal: %s -> %s', (env, isTTY, colour) => expect(terminal(env, isTTY).colour).toBe(colour));
});

describe('characters beyond ASCII', () => {
  test.each([
    [{ LANG: 'de_DE.UTF-8' }, 'linux', true],
    [{ LANG: 'de_DE.UTF-8', LC_ALL: 'C' }, 'linux', false],
    [{ LC_ALL: '', LANG: 'C.utf8' }, 'linux', true],
    [{}, 'linux', false],
    [{}, 'darwin', true],
    [{ WT_SESSION: 'x' }, 'win32', true],
    [{ LANG: 'C.UTF-8' }, 'win32', false],
  ])('%j on %s -> %s', (env, platform, unicode) => expect(terminal(env, true, platform).unicode).toBe(unicode));

  test('without them quotation marks, dashes and currencies are spelled out', () => {
    const { write, written } = terminal({ LANG: 'C' }, true);
    write('“Renew”… €1,637 – café · ’s\n');
    expect(written.join('')).toBe('"Renew"... EUR 1,637 - cafe - \'s\n');
  });
});

test('sentences are folded for a reader, never in a pipe', () => {
  expect(terminal({}, true, 'linux', 72).width).toBe(72);
  expect(terminal({}, true, 'linux', 300).width).toBe(100);
  expect(terminal({}, false).width).toBe(Infinity);
});
