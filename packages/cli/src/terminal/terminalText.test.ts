import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { run } from '../commands/run.ts';
import { terminalOf } from './terminalOf.ts';
import { terminalText } from './terminalText.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-controls-'));
afterAll(() => rmSync(folder, { recursive: true }));

// C0 with ESC, DEL, C1 (a sequence of its own in one character), overrides and isolates of writing direction
const controls = ['\u0000', '\u0007', '\b', '\r', '\u001b', '\u007f', '\u0085', '\u009b', '\u009d', '\u202e', '\u2066'];
const hostile = `\u001b]0;owned\u0007\u001b[1mloud\u009b31m${controls.join('')}\nline`;
// oxlint-disable-next-line no-control-regex
const steering = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufdd0-\ufdef]/;
// oxlint-disable-next-line no-control-regex
const ownLooks = /\u001b\[(1|2|22|36|39|32|33)m/g;

test('what could steer a terminal is spelled out; line feeds and tabs stay', () => {
  expect(terminalText('a\u001b[2Jb\u009bc\u202ed\te\n', true)).toBe('a\\u001b[2Jb\\u009bc\\u202ed\te\n');
  for (const one of controls) expect(terminalText(one, true)).toMatch(/^\\u[0-9a-f]{4}$/);
});

/** What reaches a terminal that shows colour. */
async function printed(...argv: string[]): Promise<string> {
  const written: string[] = [];
  const stream = { write: (text: string) => (written.push(text), true) } as unknown as NodeJS.WriteStream;
  const env = { FORCE_COLOR: '1', LANG: 'C.UTF-8' };
  await run(argv, terminalOf({ stdout: stream, stderr: stream, stdin: {}, env, platform: 'linux' }));
  return written.join('');
}
function file(name: string, content: unknown): string {
  writeFileSync(join(folder, name), JSON.stringify(content));
  return join(folder, name);
}

describe('no file steers the terminal', () => {
  const { tests, causes, ...rest } = pumpModel();
  const model = {
    ...rest,
    title: hostile,
    causes: causes.map((cause) => ({ ...cause, label: `${cause.label}${hostile}` })),
    tests: tests.map((one) => ({ ...one, label: `${one.label}${hostile}` })),
  };
  const events = [
    { kind: 'title-set', title: hostile },
    { kind: 'result-recorded', id: 'r1', test: 'fuse-look', outcome: 'blown', note: hostile },
  ];
  const aCase = { format: 'faultodds-case', version: 2, id: 'c', title: hostile, events };
  const [ofModel, ofCase] = [file('model.json', model), file('case.json', aCase)];
  const wrong = file('wrong.json', {
    ...aCase,
    id: hostile,
    events: [{ kind: hostile }, { ...events[1], [hostile]: 1 }],
  });

  test.each([
    [['replay', ofCase, '--model', ofModel]],
    [['replay', ofCase, '--model', ofModel, '--json']],
    [['plan', ofCase, '--model', ofModel]],
    [['plan', ofCase, '--model', ofModel, '--mermaid']],
    [['list', 'causes', '--model', ofModel]],
    [['check', wrong]],
    [['replay', wrong]],
    [['replay', hostile]],
    [['codes', `P0301${hostile}`, '--cylinder', '1', '--of', '4']],
  ])('%j', async (argv) => {
    const text = await printed(...argv);
    expect(text).toMatch(/\\u001b/);
    // looks are the program's own: the bold of the title is spelled out too
    expect(text).not.toContain('\u001b[1mloud');
    expect(text.replaceAll(ownLooks, '')).not.toMatch(steering);
  });

  test('a title, a note or a label of several lines stays on its line', async () => {
    const lines = (await printed('replay', ofCase, '--model', ofModel)).split('\n');
    expect(lines.filter((line) => line.startsWith('line'))).toEqual([]);
  });
});

test('a drawn plan holds none of it either', async () => {
  const title = `Invented ${controls.join('')}`;
  const path = file('drawn.json', { format: 'faultodds-case', version: 2, id: 'c', title, events: [] });
  await printed('plan', path, '--search', '1', '--svg', join(folder, 'drawn.svg'));
  const drawn = readFileSync(join(folder, 'drawn.svg'), 'utf8');
  expect(drawn).toContain('Invented');
  expect(drawn).not.toMatch(steering);
});

test('the marks of looks cannot come from a file', async () => {
  for (const mark of ['\ufdd0loud\ufdef', '\\ufdd0loud\\ufdef']) {
    const path = join(folder, 'marks.json');
    writeFileSync(path, `{ "format": "faultodds-case", "version": 2, "id": "c", "title": "${mark}", "events": [] }`);
    expect(await printed('replay', path)).toContain('contains a character from U+FDD0 to U+FDEF');
  }
});
