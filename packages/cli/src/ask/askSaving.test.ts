import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { scriptPrompter, work, type Answer } from '../../fixtures/scriptPrompter.ts';
import { run } from '../commands/run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-keeping-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** How many events stand in the file whenever something is asked; `before` may do something to it first. */
async function eventsAtQuestions(
  path: string,
  answers: readonly Answer[],
  argv: readonly string[],
  before: (question: number) => void = () => {},
): Promise<{ events: number[]; out: string }> {
  const { terminal, out } = recordTerminal();
  const { prompter } = scriptPrompter(answers);
  const events: number[] = [];
  const look = (): void => {
    before(events.length);
    events.push((JSON.parse(readFileSync(path, 'utf8')) as { events: unknown[] }).events.length);
  };
  const code = await run(['ask', ...argv], terminal, {
    ...prompter,
    choose: (question, choices) => (look(), prompter.choose(question, choices)),
  });
  expect(code).toBe(0);
  return { events, out: out() };
}

test('a new case with --keep stands in its file after every answer, those of the intake too', async () => {
  const path = join(folder, 'new.json');
  const { events, out } = await eventsAtQuestions(
    path,
    ['4', '3', 'fitted', '#enough', 'test', 'coil-swap', 'stays', 'yes', 'undo', 'leave'],
    ['--keep', path],
  );
  // at the first intake question, the second, the menu; three questions about the test; the menu after the result, and after undo
  expect(events).toEqual([1, 2, 2, 2, 2, 3, 2]);
  expect(out).toContain(`Every answer is saved in '${path}' at once.`);
  expect(readdirSync(folder)).toEqual(['new.json']);
});

test('a case from a file is kept there; what another program writes meanwhile is never replaced unasked', async () => {
  const path = join(folder, 'shared.json');
  const elsewhere = join(folder, 'elsewhere.json');
  const empty = { format: 'faultodds-case', version: 2, id: 'c', title: 'Invented', events: [] };
  const others = JSON.stringify({ ...empty, title: 'Invented by another' });
  writeFileSync(path, JSON.stringify(empty));
  const { events, out } = await eventsAtQuestions(
    path,
    [
      'access',
      'coil-off',
      'access',
      'valve-cover-off',
      'save',
      path,
      false,
      'save',
      elsewhere,
      'access',
      'coil-off',
      'leave',
    ],
    [path],
    (question) => {
      if (question === 1) writeFileSync(path, others);
    },
  );
  expect(events[0]).toBe(0);
  expect(out).toContain('was changed by another program since it was read');
  expect(readFileSync(path, 'utf8')).toBe(others);
  // from the file it was saved to on, answers are kept there
  expect(
    (JSON.parse(readFileSync(elsewhere, 'utf8')) as { events: { kind: string }[] }).events.map(({ kind }) => kind),
  ).toEqual(['access-opened', 'access-opened', 'access-closed']);
});

test('what a hand-written file says for its editor stays in it', async () => {
  const path = join(folder, 'by-hand.json');
  const byHand = {
    $schema: './case.schema.json',
    format: 'faultodds-case',
    version: 2,
    id: 'c',
    title: 'Invented',
    events: [],
  };
  writeFileSync(path, JSON.stringify(byHand));
  await work(['access', 'coil-off', 'leave'], path);
  const opened = { kind: 'access-opened', access: 'coil-off' };
  const { $schema, title } = byHand;
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ $schema, title, events: [opened] });
});

test('--keep takes no file that is there: it says how to go on with it', async () => {
  const path = join(folder, 'there.json');
  writeFileSync(path, 'mine');
  const { terminal, err } = recordTerminal();
  expect(await run(['ask', '--keep', path], terminal, scriptPrompter([]).prompter)).toBe(2);
  expect(err()).toContain(`'${path}' exists; 'faultodds ask ${path}' continues`);
  expect(readFileSync(path, 'utf8')).toBe('mine');
});

test('without a file it is said at the start how answers are kept', async () => {
  const { out } = await work(['', '#enough', 'leave']);
  expect(out).toContain("'faultodds ask --keep <file>' saves each at once");
  expect(out).toContain('faultodds-recovered.json');
});
