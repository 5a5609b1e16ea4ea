import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { recordTerminal } from '../../../tests/fixtures/recordTerminal.ts';
import { loadKnowledge } from './loadKnowledge.ts';
import type { Choice, Prompter } from './prompter.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-ask-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { model } = loadKnowledge();

type Answer = string | readonly string[] | boolean | undefined;

/** Answers in order; fails when a choice is not offered, when a question comes too many, and keeps the questions. */
function script(answers: readonly Answer[]): { prompter: Prompter; questions: string[]; left: () => number } {
  const waiting = [...answers];
  const questions: string[] = [];
  const next = (question: string): Answer => {
    questions.push(question);
    if (waiting.length === 0) return expect.fail(`no answer is left for: ${question}`);
    return waiting.shift();
  };
  const offered = (question: string, choices: readonly Choice[]): string | undefined => {
    const answer = next(question);
    if (answer !== undefined)
      expect(
        choices.map(({ value }) => value),
        question,
      ).toContain(answer);
    return answer as string | undefined;
  };
  const prompter: Prompter = {
    choose: async (question, choices) => offered(question, choices),
    find: async (question, choices) => offered(question, choices),
    gather: async (question) => next(question) as readonly string[] | undefined,
    type: async (question, _suggestion, refuse) => {
      const answer = next(question) as string | undefined;
      if (answer !== undefined) expect(refuse?.(answer)).toBeUndefined();
      return answer;
    },
    confirm: async (question) => next(question) as boolean | undefined,
  };
  return { prompter, questions, left: () => waiting.length };
}

async function work(answers: readonly Answer[], ...argv: string[]): Promise<{ out: string; questions: string[] }> {
  const { terminal, out, err } = recordTerminal();
  const { prompter, questions, left } = script(answers);
  expect(await run(['ask', ...argv], terminal, prompter)).toBe(0);
  expect(err()).toBe('');
  expect(left()).toBe(0);
  return { out: out(), questions };
}

test('intake, a result, a tried repair, saved to a file that replays', async () => {
  const path = join(folder, 'saved.json');
  const { out } = await work([
    ['pattern', 'plug-age'],
    'within-interval',
    'load-only',
    'test',
    'coil-swap',
    'stays',
    'yes',
    'repair',
    'replace-plug-set',
    'stays',
    'save',
    path,
    'leave',
  ]);
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({
    format: 'faultodds-case',
    version: 1,
    events: [
      { kind: 'context-set', feature: 'plug-age', value: 'within-interval' },
      { kind: 'context-set', feature: 'pattern', value: 'load-only' },
      { kind: 'result-recorded', id: 'r1', test: 'coil-swap', outcome: 'stays' },
      { kind: 'repair-tried', id: 'r2', repair: 'replace-plug-set', cured: false },
    ],
  });
  expect(out).toContain('Ignition coil weak or failed');
  expect(out).toMatch(/Of 1000 engines like this, \d+ had “Ignition coil weak or failed” before this result/);
  expect(out).toContain('Caution: ');
  const { terminal, out: replayed } = recordTerminal();
  expect(await run(['replay', path], terminal)).toBe(0);
  expect(replayed()).toContain('Tried “Replace the whole set of plugs”: the misfire stays');
});

test('the best next step is offered first, with how it is done and its cautions', async () => {
  const { out, questions } = await work([['pattern'], 'load-only', 'best-test', undefined, 'leave', true]);
  const coilSwap = model.tests.find(({ id }) => id === 'coil-swap')!;
  expect(out).toContain(coilSwap.how);
  for (const id of coilSwap.cautions) expect(out).toContain(model.cautions.find((caution) => caution.id === id)!.text);
  expect(questions.at(-1)).toBe('Leave without saving?');
});

test('a result by degree, and one while the fault may have slept', async () => {
  const path = join(folder, 'degree.json');
  await work([[], 'test', 'coil-swap', '', 'stays', 'follows', '3', 'unknown', 'save', path, 'leave']);
  expect(JSON.parse(readFileSync(path, 'utf8')).events).toEqual([
    {
      kind: 'result-recorded',
      id: 'r1',
      test: 'coil-swap',
      likelihood: { stays: 3, follows: 1 },
      faultActive: 'unknown',
    },
  ]);
});

test('undo and redo bring the ranking back, retraction takes a result out, access is opened and closed', async () => {
  const path = join(folder, 'undone.json');
  const { out } = await work([
    [],
    'test',
    'coil-swap',
    'stays',
    'yes',
    'undo',
    'redo',
    'retract',
    'r1',
    'access',
    'valve-cover-off',
    'access',
    'coil-off',
    'why',
    'steps',
    'save',
    path,
    'leave',
  ]);
  expect(JSON.parse(readFileSync(path, 'utf8')).events.map(({ kind }: { kind: string }) => kind)).toEqual([
    'result-recorded',
    'observation-retracted',
    'access-opened',
    'access-closed',
  ]);
  expect(out).toContain('Open now: Engine dress cover, air duct off; Coil or lead off this cylinder; Valve cover off.');
  expect(out).toContain('No result yet');
  expect(out).toContain('Tests, best value for their price first');
});

test('a demo case can be gone on with; leaving untouched asks nothing', async () => {
  const { out, questions } = await work(['leave'], 'demo-03');
  expect(out).toContain('Injector flow low');
  expect(questions).toEqual(['What now?']);
});

test('a mistake is told and changes nothing', async () => {
  // a recorded result needs this intake fact as it is
  const { out } = await work([
    ['variable-lift'],
    'fitted',
    'test',
    'lift-mode-command',
    'responds-normally',
    'yes',
    'intake',
    ['variable-lift'],
    'not-fitted',
    'leave',
    true,
  ]);
  expect(out).toContain("retract 'r1' first");
});

test('nothing is overwritten without asking, and a file that cannot be written is told', async () => {
  const path = join(folder, 'mine.json');
  writeFileSync(path, 'mine');
  const { out } = await work([
    ['onset'],
    'sudden',
    'save',
    path,
    false,
    'save',
    join(folder, 'no', 'such', 'folder.json'),
    'leave',
    false,
    'leave',
    undefined,
  ]);
  expect(readFileSync(path, 'utf8')).toBe('mine');
  expect(out).toContain('Not saved');
  expect(existsSync(join(folder, 'no'))).toBe(false);
});
