import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { work } from '../../fixtures/scriptPrompter.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-codes-'));
afterAll(() => rmSync(folder, { recursive: true }));
const engine = ['4', '3'];
/** The events of a saved case, the engine aside: askEngine.test.ts looks at it. */
const saved = (path: string): { kind: string; [key: string]: unknown }[] =>
  (JSON.parse(readFileSync(path, 'utf8')) as { events: { kind: string }[] }).events.filter(
    ({ kind }) => kind !== 'engine-set',
  );

test('pasted trouble codes: malformed ones are pointed out, silent ones named, the list can be corrected before it counts', async () => {
  const path = join(folder, 'codes.json');
  const list = 'P0303\nP0353 pending\nP03O1, P0420, P0304';
  const { out, suggestions } = await work([
    '',
    '#enough',
    'codes',
    ...engine,
    list,
    'some',
    'correct',
    list.replace('P03O1, ', '').replace(', P0304', ''),
    'some',
    'record',
    'codes',
    'P0303',
    'some',
    'leave',
    'retract',
    'r1',
    'codes',
    'P0303 pending',
    'some',
    'record',
    'save',
    path,
    'leave',
  ]);
  expect(out).toContain("'P03O1' at character 21 is not a code: did you mean P0301?");
  expect(out).toContain('P0420 (auxiliary emission controls): says nothing about this fault');
  expect(out).toContain('is recorded already');
  expect(suggestions[4]).toBe(list);
  expect(saved(path)).toMatchObject([
    { id: 'r1', test: 'read-misfire-codes', outcome: 'one-cylinder-only', note: 'P0303' },
    { id: 'r2', test: 'read-circuit-codes', outcome: 'coil-circuit', note: 'P0353 pending' },
    { kind: 'observation-retracted', id: 'r1' },
    { id: 'r3', test: 'read-misfire-codes', note: 'P0303 pending' },
  ]);
});

test('raw monitor bytes become counts of every cylinder; bytes that are none are pointed out', async () => {
  const path = join(folder, 'monitors.json');
  const record = (monitor: string, count: string): string => `${monitor} 0C 24 ${count} 00 00 FF FF`;
  const hex = `46 ${record('A2', '00 02')} ${record('A3', '00 00')} ${record('A4', '00 76')} ${record('A5', '00 01')}`;
  const { out } = await work([
    '',
    '#enough',
    'monitors',
    ...engine,
    '41 0C',
    true,
    hex,
    '3000 revolutions',
    'yes',
    'save',
    path,
    'leave',
  ]);
  expect(out).toContain('a response to service $06 begins with 46');
  expect(out).toContain('cylinder 1: 2, cylinder 2: 0, cylinder 3: 118, cylinder 4: 1');
  expect(saved(path)[0]).toMatchObject({
    test: 'misfire-counters',
    reading: { kind: 'counts', suspect: 3, counts: { 1: 2, 2: 0, 3: 118, 4: 1 } },
  });
});
