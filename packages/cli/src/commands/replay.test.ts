import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { caseState, compileModel, factsOf, loadCase, rankCauses } from '@faultodds/core';
import { credibleRanking, evidenceConflict, leaderSensitivity } from '@faultodds/core/doubt';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { loadModel } from '../read/loadModel.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-replay-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { model, compiled, cases } = await loadModel();

function caseFile(name: string, events: readonly object[]): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify({ format: 'faultodds-case', version: 1, id: 'c', title: 'Invented', events }));
  return path;
}

async function said(...argv: string[]): Promise<string> {
  const { terminal, out, err } = recordTerminal();
  expect({ code: await run(argv, terminal), err: err() }).toEqual({ code: 0, err: '' });
  return out();
}

const reading = {
  kind: 'per-cylinder',
  measure: 'pressure',
  unit: 'bar',
  suspect: 3,
  values: { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 },
};
const compression = { kind: 'result-recorded', id: 'r1', test: 'cranking-compression' };

test('a reading stands with its value and unit, what it would be called, and the rule of thumb beside', async () => {
  const path = caseFile('reading.json', [{ ...compression, reading }]);
  const out = await said('replay', path);
  expect(out).toContain('9.2 bar on cylinder 3, 12.1 to 12.5 bar on the others');
  expect(out).toContain('Compared value: 0.736.');
  expect(out).toMatch(/Rule of thumb \(“Lowest at least 75 %[^”]*”\): not met\./);
  const { observations } = JSON.parse(await said('replay', path, '--json'));
  expect(observations[0].reading).toEqual(reading);
  expect(observations[0].readingSays[0]).toBe('Compared value: 0.736.');
});

test('a repair that cured is proved first: how to drive, in what order, and what to do if the fault comes back', async () => {
  const path = caseFile('cured.json', [{ kind: 'repair-tried', id: 'r1', repair: 'replace-plug-set', cured: true }]);
  const { order, accept } = model.verification;
  for (const out of [await said('replay', path), await said('plan', path, '--search', '1')]) {
    const text = out.replace(/\s+/g, ' ');
    expect(text).toContain('Next: confirm the repair.');
    expect(text).toContain(`Confirmed when: ${accept.monitorRun}.`);
  }
  const advised = (await said('replay', path)).replace(/\s+/g, ' ');
  order.forEach((step, at) => expect(advised).toContain(`${at + 1}. ${step}`));
});

test('counts say whose they are, and what is not known of them', async () => {
  const counts = { kind: 'counts', measure: 'counts', suspect: 3, counts: { 1: 2, 2: 0, 3: 118, 4: 1 } };
  const path = caseFile('counts.json', [{ ...compression, test: 'misfire-counters', reading: counts }]);
  const out = await said('replay', path);
  expect(out).toContain('118 misfires on cylinder 3, 3 on the others together');
  expect(out).toContain('It is not known over how long misfires were counted');
});

test('results that do not fit together are said to, with the one whose removal helps most; others are not', async () => {
  const path = caseFile('conflict.json', [
    { ...compression, outcome: 'near-zero' },
    { ...compression, id: 'r2', test: 'leak-down', outcome: 'tight' },
  ]);
  const observations = [
    { kind: 'result', id: 'r1', test: 'cranking-compression', outcome: 'near-zero' },
    { kind: 'result', id: 'r2', test: 'leak-down', outcome: 'tight' },
  ] as const;
  const { totalBits, helpsMost } = evidenceConflict(compiled, { context: {}, observations });
  const { conflict } = JSON.parse(await said('replay', path, '--json'));
  expect(conflict[0]).toContain(`(${totalBits.toFixed(1)} bits of conflict)`);
  const label = model.tests.find(
    ({ id }) => helpsMost?.observation.kind === 'result' && id === helpsMost.observation.test,
  )!.label;
  expect(await said('replay', path)).toContain(`Check first: “${label}`);
  expect(JSON.parse(await said('replay', 'demo-01', '--json')).conflict).toEqual([]);
});

test('--doubt: the ranges of core over so many draws, the share that advises the same, the numbers that would flip the leader', async () => {
  const facts = factsOf(caseState(loadCase(compiled, cases[0])));
  const { doubt } = JSON.parse(await said('replay', 'demo-01', '--doubt', '12', '--json'));
  expect(doubt.ranking).toEqual(JSON.parse(JSON.stringify(credibleRanking(compiled, facts, { draws: 12 }))));
  expect(doubt.advice).toMatchObject({ draws: 12, best: { kind: 'repair', repair: 'replace-coil' } });
  const flipping = leaderSensitivity(compiled, facts).functions.filter(({ flip }) => flip !== undefined);
  expect(doubt.flips).toHaveLength(flipping.length);
  for (const { path, what } of doubt.flips) expect(what, path).not.toMatch(/^\/|undefined/);
  const out = await said('replay', 'demo-01', '--doubt', '12', '--top', '2');
  expect(out).toContain('Range of each cause over 12 plausible models (5 to 95 %):');
  expect(out).toMatch(/Ignition coil weak or failed: \d+% to \d+%, best estimate \d+%; leads in all/);
  expect(out).toMatch(/Same advice in (all|[\d.]+%) of 12 plausible models: repair “Replace the coil”\./);
  expect(out).toMatch(
    /How common “[^”]+” is: (above|below) [\d.]+ \(now \d+, plausible \d+ to \d+\), then “[^”]+” leads/,
  );
  expect(out).not.toMatch(/NaN|undefined|Infinity|\[object/);
});

test('--two: pairs of causes are ranked as core ranks them, and named', async () => {
  const two = compileModel(model, { atMost: 2 });
  const { ranking } = rankCauses(two, factsOf(caseState(loadCase(two, cases[0]))));
  const document = JSON.parse(await said('replay', 'demo-01', '--two', '--json', '--top', '4'));
  expect(document.observations.at(-1).ranking.map(({ cause }: { cause: string }) => cause)).toEqual(
    ranking.slice(0, 4).map(({ cause }) => cause),
  );
  const pair = ranking.find(({ cause }) => cause.includes(' + '))!;
  const [first, second] = pair.cause.split(' + ').map((id) => model.causes.find((cause) => cause.id === id)!.label);
  const out = await said('replay', 'demo-01', '--two', '--top', '4');
  expect(out).toContain('Two causes at once are considered as well.');
  expect(out).toContain(`${first} and ${second!.charAt(0).toLowerCase()}${second!.slice(1)}`);
});
