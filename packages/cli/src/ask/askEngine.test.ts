import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { work } from '../../fixtures/scriptPrompter.ts';
import { run } from '../commands/run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-engine-'));
afterAll(() => rmSync(folder, { recursive: true }));
const saved = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8')).events;
const compression = ['test', 'cranking-compression', '#numbers', 'per-cylinder'];

test('the engine is asked for at intake, kept in the file, and never asked for again', async () => {
  const path = join(folder, 'intake.json');
  const { questions, refusals } = await work([
    ['one', '1', '13', '4'],
    ['0', '5', '3'],
    '#enough',
    ...compression,
    '12.4 12.1 9.2 12.5 bar',
    'codes',
    undefined,
    'save',
    path,
    'leave',
  ]);
  expect(refusals).toEqual([
    ...Array(3).fill('A whole number from 2 to 12.'),
    ...Array(2).fill('A whole number from 1 to 4.'),
  ]);
  expect(questions.filter((question) => question.startsWith('How many cylinders'))).toHaveLength(1);
  expect(saved(path)).toMatchObject([
    { kind: 'engine-set', cylinders: 4, suspect: 3 },
    { kind: 'result-recorded', reading: { suspect: 3 } },
  ]);
  const { terminal, out } = recordTerminal();
  expect(await run(['replay', path], terminal)).toBe(0);
  expect(out()).toContain('Cylinder 3 of 4 misfires.');
  const asData = recordTerminal();
  expect(await run(['replay', path, '--json'], asData.terminal)).toBe(0);
  expect(JSON.parse(asData.out())).toMatchObject({ case: { engine: { cylinders: 4, suspect: 3 } } });
});

test('left open at intake it is asked for with the first numbers, and recorded with them', async () => {
  const path = join(folder, 'later.json');
  await work([
    '',
    '#enough',
    ...compression,
    '4',
    '3',
    '12.4 12.1 9.2 12.5 bar',
    'undo',
    'undo',
    'redo',
    'save',
    path,
    'leave',
  ]);
  expect(saved(path)).toEqual([{ kind: 'engine-set', cylinders: 4, suspect: 3 }]);
});

test('it can be changed like any intake fact, but not from under numbers on record', async () => {
  const path = join(folder, 'changed.json');
  const { out, suggestions } = await work([
    '4',
    '3',
    '#enough',
    'intake',
    '#engine',
    '6',
    '3',
    ...compression,
    '12 12 9 12 12 12 bar',
    'intake',
    '#engine',
    '6',
    '2',
    'save',
    path,
    'leave',
  ]);
  expect(suggestions.slice(2, 4)).toEqual(['4', '3']);
  expect(out).toContain("read with cylinder 3 as the suspect, but cylinder 2 misfires; retract 'r1' first");
  expect(saved(path)).toMatchObject([
    { kind: 'engine-set', cylinders: 4, suspect: 3 },
    { kind: 'engine-set', cylinders: 6, suspect: 3 },
    { kind: 'result-recorded' },
  ]);
});

test('in an older file the readings on record propose it; the bank is asked once and kept', async () => {
  const path = join(folder, 'older.json');
  const reading = {
    kind: 'per-cylinder',
    measure: 'pressure',
    unit: 'bar',
    suspect: 3,
    values: { 2: 12, 3: 9, 4: 12 },
  };
  const event = { kind: 'result-recorded', id: 'r1', test: 'cranking-compression', reading };
  writeFileSync(
    path,
    JSON.stringify({ format: 'faultodds-case', version: 1, id: 'c', title: 'Invented', events: [event] }),
  );
  const codes = ['P0171', 'some', 'record'];
  const { suggestions, questions } = await work(
    ['codes', '4', '3', codes[0], '1', 'some', 'record', 'retract', 'r2', 'codes', ...codes, 'save', path, 'leave'],
    path,
  );
  expect(suggestions.slice(0, 2)).toEqual(['4', '3']);
  expect(questions.filter((question) => question.includes('bank'))).toHaveLength(1);
  expect(saved(path)).toMatchObject([
    { kind: 'result-recorded', id: 'r1' },
    { kind: 'engine-set', cylinders: 4, suspect: 3, bank: 1 },
    { kind: 'result-recorded', id: 'r2', test: 'read-mixture-codes' },
    { kind: 'observation-retracted' },
    { kind: 'result-recorded', id: 'r3', test: 'read-mixture-codes' },
  ]);
});
