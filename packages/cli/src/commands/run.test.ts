import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { caseState, factsOf, loadCase, advise, textIn, beliefOf } from '@faultodds/core';
import { explainCase } from '@faultodds/core/explanation';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { loadModel } from '../read/loadModel.ts';
import { run } from './run.ts';

// Run against the source, in this process; main.test.ts spawns the built program.
const folder = mkdtempSync(join(tmpdir(), 'faultodds-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

async function said(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const { terminal, out, err } = recordTerminal();
  const code = await run(argv, terminal);
  return { code, out: out(), err: err() };
}

const { model, compiled, cases } = await loadModel();
const aCase = {
  format: 'faultodds-case',
  version: 1,
  id: 'c',
  title: 'Invented',
  events: [
    { kind: 'context-set', feature: 'pattern', value: 'load-only' },
    { kind: 'result-recorded', id: 'r1', test: 'coil-swap', outcome: 'stays', note: 'swapped with the next one' },
  ],
};

describe('replay', () => {
  test('every demo case prints: a ranking at intake and after each result, why, what next, and what to be careful of', async () => {
    for (const document of cases) {
      const session = loadCase(compiled, document);
      const facts = factsOf(caseState(session));
      const { code, out, err } = await said('replay', session.start.id);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      for (const part of ['At intake', 'What next', 'An invented case', "vehicle maker's procedure"])
        expect(out).toContain(part);
      expect(out.match(/^\d+\. .+$/gm)).toHaveLength(facts.observations.length);
      expect(out).not.toMatch(/(^|[ (])(0|100)(\.0+)?%/m);
      expect(out).not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
  });

  test('every proposed test and repair stands with all its cautions', async () => {
    for (const at of [1, 4, 6]) {
      const state = caseState(loadCase(compiled, cases[at]));
      const { out } = await said('replay', state.id);
      const advice = advise(compiled, beliefOf(compiled, factsOf(state)), { openAccess: state.openAccess });
      const proposed = [...advice.tests.slice(0, 3), ...advice.repairNow.steps.slice(0, 3)];
      const cautions = proposed.flatMap((step) => step.cautions);
      expect(cautions.length).toBeGreaterThan(0);
      for (const id of cautions)
        expect(out.replace(/\s+/g, ' ')).toContain(
          textIn(model.cautions.find((caution) => caution.id === id)!.text, 'en'),
        );
    }
  });

  test('as data: the numbers of core, every cause, test and repair, and the sentences', async () => {
    const session = loadCase(compiled, cases[6]);
    const facts = factsOf(caseState(session));
    const { out } = await said('replay', 'demo-07', '--json');
    const document = JSON.parse(out);
    const explanation = explainCase(compiled, facts);
    expect(document).toMatchObject({ format: 'faultodds-replay', version: 1, case: { id: 'demo-07', invented: true } });
    expect(document.observations).toHaveLength(facts.observations.length);
    document.observations.forEach(
      (step: { id: string; ranking: { cause: string; probability: number }[] }, at: number) => {
        const ranking = explanation.beliefs[at + 1]!.ranking;
        expect(step.ranking.map(({ cause, probability }) => [cause, probability])).toEqual(
          ranking.map(({ cause, probability }) => [cause, probability]),
        );
      },
    );
    expect(Object.keys(document.advice)).toEqual(
      expect.arrayContaining(['why', 'stopping', 'best', 'expectedCost', 'repairNow', 'tests', 'notNow']),
    );
    expect(document.ending.trueCause).toBe('cam-bridge-cracked');
  });

  test('--top and --steps limit what is shown, in text and data', async () => {
    const { out } = await said('replay', 'demo-01', '--json', '--top', '2', '--steps', '1');
    const document = JSON.parse(out);
    expect(document.intake).toHaveLength(2);
    expect(document.advice.tests).toHaveLength(1);
    const text = await said('replay', 'demo-01', '--top', '1');
    expect(text.out.match(/█|▏/g)!.length).toBeGreaterThan(0);
    expect(text.out.match(/^ {2}[█▏▎▍▌▋▊▉]+ /gm)).toHaveLength(4);
  });

  test('prices of the place: labour and currency show in every amount', async () => {
    const { out } = await said('replay', 'demo-01', '--labour', '85', '--currency', 'EUR');
    expect(out).toMatch(/€\d/);
    expect(out).not.toMatch(/\d units/);
  });

  test('a needless opening that counts for nothing is not named; one that does is, and not with the price', async () => {
    const named = /open the engine for nothing/;
    expect((await said('replay', 'demo-05', '--steps', '12', '--search', '0')).out).toMatch(named);
    const free = await said('replay', 'demo-05', '--steps', '12', '--search', '0', '--needless-opening', '0');
    expect(free.out).not.toMatch(named);
  });

  test('several steps ahead: what stays best or comes first, what others cost more to begin with, as data too', async () => {
    const begun = ['replay', 'demo-03', '--search', '12'];
    const { out } = await said(...begun);
    expect(out.replace(/\s+/g, ' ')).toMatch(/several steps ahead/i);
    expect(out).toMatch(/costs .+ to begin with/);
    const { ahead, tests } = JSON.parse((await said(...begun, '--json')).out).advice;
    expect(ahead).toMatchObject({ steps: 12, isSettled: true });
    expect(ahead.others.length).toBeGreaterThan(tests.length / 2);
    expect(ahead.why).toMatch(/several steps ahead/i);
    const one = JSON.parse((await said('replay', 'demo-03', '--search', '0', '--json')).out).advice;
    expect(one.ahead).toMatchObject({ best: one.best, differs: false, steps: 0, others: [] });
  });

  test('a saved case from a file, with its note', async () => {
    const { code, out } = await said('replay', file('case.json', aCase));
    expect(code).toBe(0);
    expect(out).toContain('Swap the coil with another cylinder: misfire stays');
    expect(out).toContain('Note: swapped with the next one');
    expect(out).not.toContain('invented case');
  });

  test('an entry the model knows no place for does not count and is told, with what may be meant', async () => {
    const typo = file('typo.json', { ...aCase, events: [{ ...aCase.events[1], test: 'coil-swop' }] });
    const sentence =
      /One entry is unknown to this model and does not count: “coil-swop: \S+” \(no test 'coil-swop'; did you mean 'coil-swap'\?\)\. It is kept in the case\./;
    for (const command of [['replay'], ['plan', '--search', '1', '--steps', '1']] as const) {
      const [name, ...options] = command;
      expect((await said(name, typo, ...options)).out).toMatch(sentence);
      const { notices, model } = JSON.parse((await said(name, typo, ...options, '--json')).out);
      expect(notices).toEqual([expect.stringMatching(sentence)]);
      expect(model).toEqual({ id: 'misfire', version: 2, hash: expect.stringMatching(/^[0-9a-f]{16}$/) });
    }
    const checked = await said('check', typo);
    expect(checked.code).toBe(1);
    expect(checked.out).toContain("/events/0/test\n  test-unknown: no test 'coil-swop'");
  });

  test('a case of another version names both; one of another model is refused and names both', async () => {
    const made = { id: 'misfire', version: 999, hash: '0123456789abcdef' };
    const { out } = await said('replay', file('newer-model.json', { ...aCase, version: 3, model: made }));
    expect(out).toMatch(/made with the model “misfire”, version 999; this is the model “misfire”, version 2\./);
    const other = file('other-model.json', { ...aCase, version: 3, model: { ...made, id: 'boiler' } });
    const { code, err } = await said('replay', other);
    expect(code).toBe(2);
    expect(err).toMatch(/made with the model 'boiler', version 999; this is the model 'misfire', version 2/);
  });

  test('a case on a model of your own', async () => {
    const events = [{ kind: 'result-recorded', id: 'r1', test: 'fuse-look', outcome: 'blown' }];
    const { code, out } = await said(
      'replay',
      file('pump-case.json', { ...aCase, events }),
      '--model',
      file('pump.json', pumpModel()),
    );
    expect(code).toBe(0);
    expect(out).toContain('97%  Fuse blown  was 40%');
  });
});

test('a case that no cause of the model can bring about is one line, not a stack', async () => {
  const { tests, ...rest } = pumpModel();
  const never = tests.map((one) =>
    one.id === 'fuse-look' ? { ...one, rows: one.rows.map((row) => ({ ...row, p: { whole: 1, blown: 0 } })) } : one,
  );
  const events = [{ kind: 'result-recorded', id: 'r1', test: 'fuse-look', outcome: 'blown' }];
  const argv = [
    file('never-case.json', { ...aCase, events }),
    '--model',
    file('never.json', { ...rest, tests: never }),
  ];
  for (const command of ['replay', 'plan']) {
    const { code, err } = await said(command, ...argv);
    expect(code).toBe(2);
    expect(err).toMatch(/^faultodds: [^\n]+; [^\n]+\n$/);
  }
});

describe('what is unknown is one line on standard error, and exit code 2', () => {
  test.each([
    [['repaly', 'demo-01'], 'Did you mean replay'],
    [['replay'], "'case'"],
    [['replay', 'demo-01', 'demo-02'], 'too many arguments'],
    [['replay', 'demo7'], "did you mean 'demo-07'?"],
    [['replay', 'no-such.json'], 'faultodds list cases'],
    [['replay', '.'], 'it is a folder'],
    [['replay', file('bad.json', '{ "format": ')], 'is not JSON'],
    [['replay', file('other.json', {})], 'no format is stated'],
    [['replay', file('newer.json', { ...aCase, version: 9 })], 'version 9'],
    [['replay', file('typos.json', { ...aCase, events: [{ kind: 'a' }, { kind: 'b' }] })], 'lists all 2 problems'],
    [['replay', 'demo-01', '--top', '0'], 'whole number from 1'],
    [['replay', 'demo-01', '--top', 'NaN'], 'whole number from 1'],
    [['replay', 'demo-01', '--doubt', '10001'], 'whole number from 1 to 10000'],
    [['plan', 'demo-01', '--search', '-5'], 'whole number from 1'],
    [['plan', 'demo-01', '--steps', '1e9'], 'whole number from 1'],
    [['codes', 'P0301', '--cylinder', '1', '--of', '999999'], 'whole number from 2 to 12'],
    [['codes', 'P0301', '--cylinder', '13', '--of', '12'], 'whole number from 1 to 12'],
    [['replay', 'demo-01', '--labour', '-3'], 'number above 0'],
    [['replay', 'demo-01', '--labour', '1e308'], 'number above 0'],
    [['replay', 'demo-01', '--parts-factor', 'NaN'], 'number above 0'],
    [['replay', 'demo-01', '--needless-opening', '-1'], '0 or a number above it'],
    [['replay', 'demo-01', '--labour', '85', '--currency', 'EUR\nNaN'], 'code of letters'],
    [['replay', 'demo-01', '--currency', 'EUR'], 'needs --labour'],
    [['replay', 'demo-01', '--stpes', '2'], 'Did you mean --steps'],
    [['replay', 'demo-01', '--model', file('empty.json', {})], 'is not a valid model'],
    [['list', 'cuses'], "did you mean 'causes'?"],
    [['list', 'engines'], 'causes, tests, repairs, intake, access, equipment, cases'],
    [['check', 'nowhere'], 'there is no such file'],
    [['ask'], 'needs an interactive terminal'],
  ])('%j', async (argv, part) => {
    const { code, out, err } = await said(...argv);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^faultodds: [^\n]+\n$/);
    expect(err).toContain(part);
  });
});

describe('check', () => {
  test('a valid model, in one file or in parts, and what is suspicious in it', async () => {
    const whole = await said('check', file('valid.json', pumpModel()));
    expect(whole.code).toBe(0);
    expect(whole.out).toMatch(/Valid model 'pump': 5 causes, 2 mechanisms, 5 tests, 5 repairs, 4 access operations; /);
    const { causes, tests, ...rest } = pumpModel();
    file('parts/a/causes.json', { $schema: 'x', causes: causes.slice(0, 2) });
    file('parts/b/causes.json', { causes: causes.slice(2) });
    file('parts/rest.json', { ...rest, tests });
    const inParts = await said('check', join(folder, 'parts'));
    expect(inParts.out).toContain("Valid model 'pump'");
  });

  test('what a model can tell apart and what its numbers rest on, as tables and as data', async () => {
    const path = file('valid.json', pumpModel());
    const { code, out } = await said('check', path, '--tables');
    expect(code).toBe(0);
    expect(out).toContain('Pairs of causes that no affordable test separates');
    expect(out).toMatch(/judgement +\d+ +/);
    const { diagnosability } = JSON.parse((await said('check', path, '--json')).out);
    expect(diagnosability.provenance[0].kind).toBe('judgement');
    expect(Array.isArray(diagnosability.hardPairs)).toBe(true);
  });

  test('every problem, in the file it stands in, with a hint; exit code 1', async () => {
    const { causes, tests, ...rest } = pumpModel();
    const wrong = { ...causes[4]!, group: 'wter', weight: { ...causes[4]!.weight, source: 'nobody' } };
    file('broken/a.json', { causes: causes.slice(0, 4) });
    file('broken/b.json', { causes: [wrong] });
    file('broken/c.json', { ...rest, tests });
    const { code, out, err } = await said('check', join(folder, 'broken'));
    expect(code).toBe(1);
    expect(err).toBe('');
    expect(out).toContain('b.json /causes/0/group');
    expect(out).toContain("hint: did you mean 'water'?");
    expect(out).toContain('b.json /causes/0/weight/source');
    expect(out).toMatch(/broken: 2 problems\n$/);
    const document = JSON.parse((await said('check', join(folder, 'broken'), '--json')).out);
    expect(document).toMatchObject({ format: 'faultodds-check', version: 1, kind: 'model', valid: false });
    expect(document.problems).toHaveLength(2);
  });

  test('a saved case', async () => {
    expect(await said('check', file('ok.json', aCase))).toMatchObject({ code: 0, out: "Valid case 'c': 2 events.\n" });
    const { code, out } = await said('check', file('damaged.json', { ...aCase, format: 'faultodds-cas' }));
    expect(code).toBe(1);
    expect(out).toContain('format-unknown');
  });

  test('the problems in German; codes, places and exit code stay', async () => {
    const path = file('other.json', { ...aCase, format: 'faultodds-cas' });
    const { code, out } = await said('check', path, '--language', 'de');
    expect(code).toBe(1);
    expect(out).toContain('/format\n  format-unknown: gefunden: Format „faultodds-cas“, erwartet: „faultodds-case“');
    expect(out).not.toMatch(/found|expected/);
    const { problems } = JSON.parse((await said('check', path, '--json')).out);
    expect(Object.keys(problems[0])).toEqual(['code', 'path', 'message', 'hint']);
  });

  test('a value given twice is named with its file', async () => {
    file('twice/a.json', { id: 'x' });
    file('twice/b.json', { id: 'y' });
    const { code, err } = await said('check', join(folder, 'twice'));
    expect(code).toBe(2);
    expect(err).toContain('b.json\' gives "id"');
  });
});

describe('list', () => {
  test.each([
    ['causes', model.causes.map(({ id }) => id)],
    ['tests', model.tests.flatMap(({ id, outcomes }) => [id, ...outcomes.map((outcome) => outcome.id)])],
    ['repairs', model.repairs.map(({ id }) => id)],
    ['intake', model.context.map(({ id }) => id)],
    ['access', model.access.map(({ id }) => id)],
    ['cases', ['demo-01', 'demo-12']],
  ])('%s by id and label', async (what, ids) => {
    const { code, out } = await said('list', what);
    expect(code).toBe(0);
    const listed = out.split('\n').map((line) => line.trim().split(' ')[0]);
    for (const id of ids) expect(listed).toContain(id);
    expect(JSON.parse((await said('list', what, '--json')).out).length).toBeGreaterThan(0);
  });
});

test('without a command, and with --help, what there is; --version', async () => {
  for (const argv of [[], ['--help'], ['help']]) {
    const { code, out, err } = await said(...argv);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const command of ['replay', 'ask', 'check', 'list']) expect(out).toContain(command);
  }
  expect(await said('--version')).toMatchObject({ code: 0, out: '0.1.0\n' });
});

test('the README has a row for every command that --help lists, and for no other', async () => {
  const [, commands = ''] = (await said('--help')).out.split(/^(?:Commands|Begin with):/m);
  const listed = [...commands.matchAll(/^ {2}([a-z]+)/gm)].map(([, name]) => name).filter((name) => name !== 'help');
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const rows = [...readme.matchAll(/^\| `faultodds ([a-z]+)/gm)].map(([, name]) => name);
  expect(listed).toContain('replay');
  expect(rows.sort()).toEqual(listed.sort());
});
