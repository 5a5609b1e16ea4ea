// SAE J1979 / ISO 15031-5, service $06 on CAN; monitor ids as in published check F8 (cylinder n is $A1 + n), average as in F3.
import { describe, expect, test } from 'vitest';
import { countsOfMonitors } from './countsOfMonitors.ts';
import { decodeMonitorResponse } from './decodeMonitorResponse.ts';
import { storedAverage } from './storedAverage.ts';

const limits = { atLeast: 0, atMost: 65535 };

test('a response with both counts of cylinder 1', () => {
  const { counts, problems } = decodeMonitorResponse('46 A2 0B 24 00 0C 00 00 FF FF A2 0C 24 01 5E 00 00 FF FF');
  expect(problems).toEqual([]);
  expect(counts).toEqual([
    { cylinder: 1, covers: 'average', misfires: 12, ...limits },
    { cylinder: 1, covers: 'last-cycle', misfires: 350, ...limits },
  ]);
});

test.each([
  ['A1', 'all'],
  ['A2', 1],
  ['A5', 4],
  ['AD', 12],
])('monitor $%s is cylinder %s', (id, cylinder) => {
  expect(decodeMonitorResponse(`46${id}0C2400000000FFFF`).counts[0]?.cylinder).toBe(cylinder);
});

test('several responses, one per line, become the counts of a reading', () => {
  const { counts, problems } = decodeMonitorResponse(
    '46 A2 0B 24 00 01 00 00 FF FF A2 0C 24\n00 02 00 00 FF FF\r\n46 A3 0C 24\n46 46 00 00 FF FF\n46A40C2400000000FFFF',
  );
  expect(problems).toEqual([]);
  expect(countsOfMonitors(counts, 'last-cycle')).toEqual({ 1: 2, 2: 0x4646, 3: 0 });
  expect(countsOfMonitors(counts, 'average')).toEqual({ 1: 1 });
});

test('frames of ISO 15765-2 with response addresses are joined, whatever their order of modules', () => {
  const text = `7E8 10 13 46 A2 0B 24 00 02
7E9 07 46 A3 0C 24 00 00 00
7E8 21 00 00 FF FF A2 0C 24
7E8 22 00 09 00 00 FF FF AA`;
  const { counts, problems } = decodeMonitorResponse(text);
  expect(countsOfMonitors(counts)).toEqual({ 1: 9 });
  expect(countsOfMonitors(counts, 'average')).toEqual({ 1: 2 });
  expect(problems.map(({ code }) => code)).toEqual(['record-cut-short']); // the single frame cannot hold nine bytes
});

describe('what is no misfire count is pointed out', () => {
  test.each([
    ['46 01 81 0A 00 05 00 00 FF FF', 'other-monitor', '/1'],
    ['46 A2 80 24 00 05 00 00 FF FF', 'other-test', '/2'],
    ['46 A2 0C 01 00 05 00 00 FF FF', 'other-unit', '/3'],
    ['46 A2 0C 24 00 05', 'record-cut-short', '/1'],
    ['7F 06 12', 'not-a-monitor-response', '/0'],
    ['46 A2 0X', 'hex-malformed', '/7'],
  ])('%s: %s at %s', (hex, code, path) => {
    const { counts, problems } = decodeMonitorResponse(hex);
    expect(counts).toEqual([]);
    expect(problems).toMatchObject([{ code, path }]);
  });

  test('filler bytes after the last record are none', () => {
    expect(decodeMonitorResponse('46 A2 0C 24 00 05 00 00 FF FF AA AA AA').problems).toEqual([]);
  });

  test('nothing is nothing', () => {
    expect(decodeMonitorResponse('')).toEqual({ counts: [], problems: [] });
  });
});

// published check F3, tolerance 1e-12
test('ten cycles of a new level are in to 65 %, ten clean ones leave 35 % of the old', () => {
  const level = (cycles: number): number => storedAverage(Array.from({ length: cycles }, () => 100));
  for (const [cycles, expected] of [
    [1, 10],
    [5, 40.951],
    [10, 65.13215599],
    [20, 87.84233454094307],
  ] as const) {
    expect(level(cycles)).toBeCloseTo(expected, 10);
  }
  expect(
    storedAverage(
      Array.from({ length: 10 }, () => 0),
      1,
    ),
  ).toBeCloseTo(0.3486784401, 12);
});
