import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { work } from '../../fixtures/scriptPrompter.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-reading-'));
afterAll(() => rmSync(folder, { recursive: true }));
const engine = ['4', '3'];
/** The events of a saved case, the engine aside: askEngine.test.ts looks at it. */
const saved = (path: string): { kind: string; [key: string]: unknown }[] =>
  (JSON.parse(readFileSync(path, 'utf8')) as { events: { kind: string }[] }).events.filter(
    ({ kind }) => kind !== 'engine-set',
  );

test('compression is typed as it was read; a slip is pointed out at its cylinder and nothing is lost', async () => {
  const path = join(folder, 'compression.json');
  const { out, questions, refusals } = await work([
    '',
    '#enough',
    'test',
    'cranking-compression',
    '#numbers',
    'per-cylinder',
    ...engine,
    [
      '12.4 12.1 9.2',
      '12.4 12.1 9.2 12.5',
      '12.4 12.1 9.2 125 bar',
      '12,4 12,1 9,2 12,5 bars',
      '12.4 12.1 - 12.5 bar',
      '12,4 12,1 9,2 12,5 bar',
    ],
    'save',
    path,
    'leave',
  ]);
  expect(questions.find((question) => question.startsWith('Gauge pressure'))).toContain('cylinder 1 to 4');
  expect(refusals[0]).toContain('3 numbers for 4 cylinders');
  expect(refusals[1]).toContain('the unit is missing: kPa, bar, psi');
  expect(refusals[2]).toMatch(/^Cylinder 4: found 125 bar, expected 0 to 6000 kPa; is it /);
  expect(refusals[3]).toContain('bars');
  expect(refusals[4]).toContain('no value for cylinder 3, the suspect');
  expect(saved(path)).toEqual([
    {
      kind: 'result-recorded',
      id: 'r1',
      test: 'cranking-compression',
      reading: {
        kind: 'per-cylinder',
        measure: 'pressure',
        unit: 'bar',
        suspect: 3,
        values: { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 },
      },
    },
  ]);
  expect(out).toContain('Compared value: 0.736.');
  expect(out).toMatch(/Rule of thumb \(“Lowest at least 75 % of highest.*not met/);
});

test('leak-down as two pressures, with what was heard where the number leaves it open', async () => {
  const path = join(folder, 'leak.json');
  const { out, refusals } = await work([
    '',
    '#enough',
    'test',
    'leak-down',
    '#numbers',
    'pair',
    ['6.9 4.0 bar', '4.0 6.9 bar'],
    'to-exhaust',
    'save',
    path,
    'leave',
  ]);
  expect(refusals).toEqual([expect.stringContaining('are the two gauges exchanged?')]);
  expect(saved(path)[0]).toMatchObject({
    outcome: 'to-exhaust',
    reading: { kind: 'pair', value: 4, reference: 6.9, unit: 'bar' },
  });
  expect(out).toContain('Compared value: 42 %');
});

test('counts before and after a swap: Escape goes back a line, what was typed stays', async () => {
  const path = join(folder, 'swap.json');
  const { refusals, suggestions } = await work([
    '',
    '#enough',
    'test',
    'coil-swap',
    '#numbers',
    '3000 rev',
    ['118', '9000 2', '118 2'],
    undefined,
    '118 2',
    ['soon', '3000 revolutions'],
    '3 121',
    'yes',
    'save',
    path,
    'leave',
  ]);
  expect(refusals[0]).toContain('2 numbers are expected here, 1 found');
  expect(refusals[1]).toContain('9000 misfires in 1500 firings');
  expect(refusals[2]).toContain("found 'soon'");
  expect(suggestions).toEqual(['', '', '', '', '118 2', '', '', 'case-1.json']);
  expect(saved(path)[0]).toMatchObject({
    test: 'coil-swap',
    reading: {
      kind: 'part-counts',
      before: { suspect: 118, partner: 2, exposure: { amount: 3000, unit: 'revolutions' } },
      after: { suspect: 3, partner: 121, exposure: { amount: 3000, unit: 'revolutions' } },
    },
  });
});

test('windings with the temperature of each and the figure of the maker', async () => {
  const path = join(folder, 'windings.json');
  await work([
    '',
    '#enough',
    'test',
    'injector-current',
    '#numbers',
    'per-cylinder',
    ...engine,
    '3: 14.1 maker: 12 ohm',
    ['3: 80', '3: 80 degC'],
    '#not-seen',
    'yes',
    'save',
    path,
    'leave',
  ]);
  expect(saved(path)[0]!['reading']).toEqual({
    kind: 'per-cylinder',
    measure: 'resistance',
    suspect: 3,
    values: { 3: 14.1 },
    unit: 'ohm',
    nominal: 12,
    temperatures: { values: { 3: 80 }, unit: 'degC' },
  });
});

test('lines that were left are there again', async () => {
  const { suggestions } = await work([
    '',
    '#enough',
    'test',
    'coil-swap',
    '#numbers',
    '3000 rev',
    undefined,
    undefined,
    'test',
    'coil-swap',
    '#numbers',
    undefined,
    'leave',
  ]);
  expect(suggestions).toEqual(['', '', '', '3000 rev', '3000 rev']);
});

test('the suspect is asked once; after going back it is asked again, with what was said before', async () => {
  const path = join(folder, 'suspect.json');
  const compression = ['test', 'cranking-compression', '#numbers', 'per-cylinder'];
  const { suggestions } = await work([
    '',
    '#enough',
    ...compression,
    '4',
    '4',
    undefined,
    ...compression,
    '4',
    '3',
    '12 12 9 - bar',
    'test',
    'relative-compression',
    '#numbers',
    'per-cylinder',
    '100 100 72 101',
    'save',
    path,
    'leave',
  ]);
  expect(suggestions).toEqual(['', '', '', '', '4', '4', '', '', 'case-1.json']);
  expect(saved(path).map(({ reading }) => reading)).toMatchObject([
    { suspect: 3, values: { 1: 12, 2: 12, 3: 9 } },
    { suspect: 3, values: { 1: 100, 2: 100, 3: 72, 4: 101 }, unit: 'ratio' },
  ]);
  const again = await work(['test', 'wet-compression', '#numbers', 'single', '1.02', 'leave'], path);
  expect(again.out).toContain('Compared value: 1.02.');
  const { questions } = await work(['codes', undefined, 'leave'], path);
  expect(questions).toEqual(['What now?', 'Trouble codes, as the scan tool shows them', 'What now?']);
});
