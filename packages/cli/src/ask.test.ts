import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { contextEffects, questionsToAsk } from '@faultodds/core';
import { recordTerminal } from '../../../tests/fixtures/recordTerminal.ts';
import { loadKnowledge } from './loadKnowledge.ts';
import type { Choice, Prompter } from './prompter.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-ask-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { model, compiled } = loadKnowledge();

type Answer = string | readonly string[] | boolean | undefined;

interface Script {
  readonly prompter: Prompter;
  readonly questions: string[];
  /** What was said of lines that were refused. */
  readonly refusals: string[];
  /** What stood in each field before it was typed in. */
  readonly suggestions: string[];
  readonly left: () => number;
}

/** Answers in order; fails when a choice is not offered, when a question comes too many, and keeps the questions. A list of lines is
 * typed one after the other into one field: all but the last must be refused. */
function script(answers: readonly Answer[]): Script {
  const waiting = [...answers];
  const questions: string[] = [];
  const refusals: string[] = [];
  const suggestions: string[] = [];
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
    type: async (question, suggestion, refuse) => {
      const answer = next(question);
      const typed = (Array.isArray(answer) ? answer : [answer]) as (string | undefined)[];
      const last = typed.at(-1);
      for (const wrong of typed.slice(0, -1)) refusals.push(refuse?.(wrong ?? '') ?? 'accepted');
      if (last !== undefined) expect(refuse?.(last), question).toBeUndefined();
      suggestions.push(suggestion);
      return last;
    },
    paste: async (question, suggestion) => {
      suggestions.push(suggestion);
      return next(question) as string | undefined;
    },
    confirm: async (question) => next(question) as boolean | undefined,
  };
  return { prompter, questions, refusals, suggestions, left: () => waiting.length };
}

async function work(
  answers: readonly Answer[],
  ...argv: string[]
): Promise<Omit<Script, 'prompter' | 'left'> & { out: string }> {
  const { terminal, out, err } = recordTerminal();
  const { prompter, left, ...kept } = script(answers);
  expect(await run(['ask', ...argv], terminal, prompter)).toBe(0);
  expect(err()).toBe('');
  expect(left()).toBe(0);
  return { out: out(), ...kept };
}

test('intake, a result, a tried repair, saved to a file that replays', async () => {
  const path = join(folder, 'saved.json');
  const { out } = await work([
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
  const { out, questions } = await work([
    '#enough',
    'intake',
    'pattern',
    'load-only',
    'best-test',
    undefined,
    'leave',
    true,
  ]);
  const coilSwap = model.tests.find(({ id }) => id === 'coil-swap')!;
  expect(out).toContain(coilSwap.how);
  for (const id of coilSwap.cautions) expect(out).toContain(model.cautions.find((caution) => caution.id === id)!.text);
  expect(questions.at(-1)).toBe('Leave without saving?');
});

test('a result by degree, and one while the fault may have slept', async () => {
  const path = join(folder, 'degree.json');
  await work(['#enough', 'test', 'coil-swap', '', 'stays', 'follows', '3', 'unknown', 'save', path, 'leave']);
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
    undefined,
  ]);
  expect(readFileSync(path, 'utf8')).toBe('mine');
  expect(out).toContain('Not saved');
  expect(existsSync(join(folder, 'no'))).toBe(false);
});

const engine = ['4', '3'];
const saved = (path: string): { kind: string; [key: string]: unknown }[] =>
  JSON.parse(readFileSync(path, 'utf8')).events;

test('intake questions come in the order of what they could do, and every answer says what it changed', async () => {
  const first = questionsToAsk(compiled, { context: {}, observations: [] });
  const [waiting, next] = first.map(({ feature }) => model.context.find(({ id }) => id === feature)!);
  const { out, questions } = await work(['fitted', '#not-known', '#enough', 'leave', true]);
  expect(questions[0]).toContain(waiting!.question);
  expect(questions[0]).toMatch(/\(could move \d.*waits? for it\)$/);
  expect(questions[1]).toContain(next!.question);
  expect(questions[2]).not.toBe(questions[1]);
  const [effect] = contextEffects(compiled, { [waiting!.id]: 'fitted' });
  for (const cause of effect!.causesIn) {
    expect(out).toContain(`Now possible: “${model.causes.find(({ id }) => id === cause)!.label}”`);
  }
  expect(out).toContain('Can now be tested: ');
});

test('an answer that moves chances says which and how far', async () => {
  const { out } = await work(['#enough', 'intake', 'plug-age', 'overdue', 'leave', true]);
  expect(out).toMatch(/Before any result: “[^”]+” [\d.]+% to [\d.]+%/);
});

test('compression is typed as it was read; a slip is pointed out at its cylinder and nothing is lost', async () => {
  const path = join(folder, 'compression.json');
  const { out, questions, refusals } = await work([
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
  expect(out).toMatch(/Rule of thumb \(“Lowest at least 75 % of highest.*broken/);
});

test('leak-down as two pressures, with what was heard where the number leaves it open', async () => {
  const path = join(folder, 'leak.json');
  const { out, refusals } = await work([
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
  expect(refusals[2]).toContain("where 'soon' stands");
  expect(suggestions).toEqual(['', '', '', '118 2', '', '', 'case-1.json']);
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
  expect(suggestions).toEqual(['', '', '3000 rev', '3000 rev']);
});

test('pasted trouble codes: malformed ones are pointed out, silent ones named, the list can be corrected before it counts', async () => {
  const path = join(folder, 'codes.json');
  const list = 'P0303\nP0353 pending\nP03O1, P0420, P0304';
  const { out, suggestions } = await work([
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
    'save',
    path,
    'leave',
  ]);
  expect(out).toContain("'P03O1' at character 21 is no code: did you mean P0301?");
  expect(out).toContain('P0420: auxiliary emission controls; says nothing about this misfire');
  expect(out).toContain('is on record already');
  expect(suggestions[3]).toBe(list);
  expect(saved(path)).toMatchObject([
    { id: 'r1-read-misfire-codes', test: 'read-misfire-codes', outcome: 'one-cylinder-only', note: 'P0303' },
    { test: 'read-circuit-codes', outcome: 'coil-circuit', note: 'P0353 pending' },
  ]);
});

test('raw monitor bytes become counts of every cylinder; bytes that are none are pointed out', async () => {
  const path = join(folder, 'monitors.json');
  const record = (monitor: string, count: string): string => `${monitor} 0C 24 ${count} 00 00 FF FF`;
  const hex = `46 ${record('A2', '00 02')} ${record('A3', '00 00')} ${record('A4', '00 76')} ${record('A5', '00 01')}`;
  const { out } = await work([
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

test('results that do not fit together are said to, with the one to look at first', async () => {
  const { out } = await work([
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
  expect(out).toMatch(/Look first at “[^”]+”: without it (the others fit together|[\d.]+ bits are left)/);
});
