import { expect, test } from 'vitest';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { run } from './run.ts';

async function said(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const { terminal, out, err } = recordTerminal();
  return { code: await run(['codes', ...argv], terminal), out: out(), err: err() };
}

const third = ['--cylinder', '3', '--of', '4'];

test('results, codes that say nothing here with the reason, malformed pieces, what to bear in mind', async () => {
  const list = ['P0303', 'P0353', 'pending', 'P03O1', 'P0420', 'P0302'];
  const { code, out } = await said(...list, ...third);
  expect(code).toBe(0);
  expect(out).toContain('Read misfire codes (P0300-P0312): ');
  expect(out).toContain('coil circuit code (P0353 pending)');
  expect(out).toContain("'P03O1' at character 21 is not a code: did you mean P0301?");
  expect(out).toContain('P0420 (auxiliary emission controls): says nothing about this fault');
  expect(out).toContain('P0353: coil A is assumed to fire cylinder 1');
});

test('as data, the observations a case file takes', async () => {
  const { out } = await said('P0303 P0171', ...third, '--bank', '2', '--json');
  expect(JSON.parse(out)).toMatchObject({
    format: 'faultodds-codes',
    version: 1,
    cylinder: 3,
    of: 4,
    observations: [{ kind: 'result', test: 'read-misfire-codes', outcome: 'one-cylinder-only', note: 'P0303' }],
    kept: [{ reason: 'other-bank', what: 'P0171 (mixture lean, bank 1): about the other bank' }],
    malformed: [],
  });
});

test('a complete list makes findings of what is missing', async () => {
  const some = JSON.parse((await said('P0303', ...third, '--json')).out).observations;
  const all = JSON.parse((await said('P0303', ...third, '--complete', '--json')).out).observations;
  expect(some.map(({ test: id }: { test: string }) => id)).toEqual(['read-misfire-codes']);
  expect(all.length).toBeGreaterThan(some.length);
  expect(all).toContainEqual(expect.objectContaining({ test: 'read-circuit-codes', outcome: 'none' }));
});

test.each([
  [['P0303', '--cylinder', '5', '--of', '4'], 'there is no cylinder 5 among 4'],
  [['P0303', '--of', '4'], "required option '--cylinder <n>'"],
  [['misfiring', ...third], "'misfiring' at character 1 is not a code"],
  [['', ...third], 'with --complete that is a result'],
  [['P0303', '--bank', '3', ...third], 'Allowed choices are 1, 2'],
  [third, "missing required argument 'codes'"],
])('%j: one line, exit code 2', async (argv, message) => {
  const { code, out, err } = await said(...argv);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(message);
  expect(err.trim().split('\n')).toHaveLength(1);
});
