import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { textIn } from '@faultodds/core';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { work } from '../../fixtures/scriptPrompter.ts';
import { loadModel } from '../read/loadModel.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-ask-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { model } = await loadModel();

test('intake, a result, a tried repair, saved to a file that replays', async () => {
  const path = join(folder, 'saved.json');
  const { out } = await work([
    '',
    '#enough',
    'intake',
    'plug-age',
    'within-interval',
    'intake',
    'pattern',
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
    version: 3,
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
  expect(replayed()).toContain('Tried “Replace the whole set of plugs”: the misfire is still there');
});

test('the best next step is offered first, with how it is done and its cautions', async () => {
  const { out, questions } = await work([
    '',
    '#enough',
    'intake',
    'pattern',
    'load-only',
    'best-test',
    undefined,
    'leave',
    true,
  ]);
  const codes = model.tests.find(({ id }) => id === 'read-circuit-codes')!;
  expect(out).toContain(codes.how);
  expect(out.replace(/\s+/g, ' ')).toContain('In one go, ');
  // cautions of the best step are shown with it, here those of what is done in one go with it
  const cautions = [...codes.cautions, ...model.tests.find(({ id }) => id === 'relative-compression')!.cautions];
  for (const id of cautions)
    expect(out.replace(/\s+/g, ' ')).toContain(textIn(model.cautions.find((caution) => caution.id === id)!.text, 'en'));
  expect(questions.at(-1)).toBe('Leave without saving?');
});

test('a result by degree, and one while the fault may have slept', async () => {
  const path = join(folder, 'degree.json');
  await work(['', '#enough', 'test', 'coil-swap', '', 'stays', 'follows', '3', 'unknown', 'save', path, 'leave']);
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
    '',
    '#enough',
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
    '',
    '#enough',
    'intake',
    'variable-lift',
    'fitted',
    'test',
    'lift-mode-command',
    'responds-normally',
    'yes',
    'intake',
    'variable-lift',
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
    '',
    '#enough',
    'intake',
    'onset',
    'sudden',
    'save',
    path,
    false,
    'save',
    join(folder, 'no', 'such', 'folder.json'),
    'leave',
    false,
    'leave',
    true,
  ]);
  expect(readFileSync(path, 'utf8')).toBe('mine');
  expect(out).toContain('Not saved');
  expect(existsSync(join(folder, 'no'))).toBe(false);
});

test('results that do not fit together are said to, with the one to look at first', async () => {
  const { out } = await work([
    '',
    '#enough',
    'test',
    'cranking-compression',
    'near-zero',
    'test',
    'leak-down',
    'tight',
    'leave',
    true,
  ]);
  expect(out).toMatch(/The results do not fit together \([\d.]+ bits of conflict\)/);
  expect(out).toMatch(/Check first: “[^”]+”: without it, (the others fit together|[\d.]+ bits remain)/);
});
