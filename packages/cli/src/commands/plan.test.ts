import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { compileModel, parseModel, textIn, beliefOf, type Model } from '@faultodds/core';
import {
  boundedSearch,
  cautionsOfPlan,
  writePlan,
  compileCaseProblem,
  whatWouldItTake,
  type PlanStep,
} from '@faultodds/core/planning';
import { formatMoney, formatProbability } from '@faultodds/core/words/en';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { recordTerminal } from '../../../../tests/fixtures/recordTerminal.ts';
import { loadModel } from '../read/loadModel.ts';
import { run } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-plan-'));
afterAll(() => rmSync(folder, { recursive: true }));

const plain = (text: string): string => text.replace(/\s+/g, ' ');
const textOf = ({ cautions }: Model, id: string): string => textIn(cautions.find((one) => one.id === id)!.text, 'en');

function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(content));
  return path;
}

const ownModel = ['--model', file('pump.json', pumpModel())];
const ownCase = file('case.json', {
  format: 'faultodds-case',
  version: 1,
  id: 'c',
  title: 'Invented pump',
  events: [],
});
const pump = compileModel(parseModel(pumpModel()));
const belief = beliefOf(pump, { context: {}, observations: [] });
const problem = compileCaseProblem(pump, belief, {});
const best = writePlan(problem, boundedSearch.solve(problem, { steps: 40 }));

async function said(...argv: string[]): Promise<{ code: number; out: string; err: string }> {
  const { terminal, out, err } = recordTerminal();
  return { code: await run(['plan', ...argv], terminal), out: out(), err: err() };
}

test('the plan of core with its cost: mean, median, 90th percentile, worst, and the certified bound', async () => {
  const { code, out, err } = await said(ownCase, ...ownModel);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  const { expected, median, ninetiethPercentile, worst } = best.cost;
  for (const money of [expected, median, ninetiethPercentile, worst, best.lowerBound])
    expect(out).toContain(formatMoney(money));
  expect(out).toContain(best.certifiedGap > 0 ? 'above the best possible plan' : 'this is the best there is');
  for (const { probability } of best.root.branches) expect(out).toContain(formatProbability(probability));
  expect(out).toContain("vehicle maker's procedure");
  expect(out).not.toMatch(/NaN|undefined|Infinity|\[object/);
});

test('as data: the plan itself, the case, and how much was examined', async () => {
  const { out } = await said(ownCase, ...ownModel, '--json');
  expect(JSON.parse(out)).toMatchObject({ ...JSON.parse(JSON.stringify(best)), format: 'faultodds-plan', case: 'c' });
});

test('--steps folds what is deeper and says how much that is', async () => {
  const depth = ({ branches }: PlanStep): number =>
    1 + Math.max(0, ...branches.map(({ then }) => (then === undefined ? 0 : depth(then))));
  expect(depth(best.root)).toBeGreaterThan(1);
  const { root } = JSON.parse((await said(ownCase, ...ownModel, '--steps', '1', '--json')).out);
  expect(depth(root)).toBe(1);
  expect(root.folded).toBeGreaterThan(0);
  expect((await said(ownCase, ...ownModel, '--steps', '1')).out).toContain(`… ${root.folded} more steps`);
});

test('as a flowchart, and as a drawing in a file', async () => {
  expect((await said(ownCase, ...ownModel, '--mermaid')).out).toMatch(/^flowchart LR\n {2}s0\["/);
  const path = join(folder, 'plan.svg');
  const { out } = await said(ownCase, ...ownModel, '--svg', path);
  expect(out).toContain(`Drawing written to ${path}.`);
  expect(readFileSync(path, 'utf8')).toMatch(/^<svg .*What to do next: Invented pump.*<\/svg>$/s);
});

test('prices of the place, in text and data', async () => {
  const { out } = await said(ownCase, ...ownModel, '--labour', '85', '--currency', 'EUR', '--json');
  expect(JSON.parse(out).cost.expected.currency).toBe('EUR');
});

test('--minutes and --money: nothing is planned beyond them, which text and data say', async () => {
  const deep = ({ minutes, branches }: PlanStep): number =>
    minutes +
    Math.max(0, ...branches.map(({ then }) => (then === undefined || then.kind === 'refer' ? 0 : deep(then))));
  const free = JSON.parse((await said(ownCase, ...ownModel, '--steps', '20', '--json')).out);
  expect(free.limits).toBeUndefined();
  expect(deep(free.root)).toBeGreaterThan(60);
  const limits = ['--minutes', '60', '--steps', '20'];
  const { root, ...short } = JSON.parse((await said(ownCase, ...ownModel, ...limits, '--json')).out);
  expect(short.limits).toEqual({ minutes: 60 });
  expect(root.kind).not.toBe('refer');
  expect(deep(root)).toBeLessThanOrEqual(60);
  const poor = JSON.parse((await said(ownCase, ...ownModel, '--money', '1', '--json')).out);
  expect(poor).toMatchObject({ limits: { money: 1 }, root: { kind: 'refer' } });
  const text = (await said(ownCase, ...ownModel, '--minutes', '60', '--money', '300')).out;
  expect(text).toContain('At most 1 h of work and 300 units may be spent; beyond that only the referral is left.');
  expect((await said(ownCase, ...ownModel, '--minutes', '90', '--language', 'de')).out).toContain(
    'Höchstens 1 h 30 min Arbeit dürfen aufgewendet werden',
  );
});

test('--equipment: tests that need other equipment are not in the plan', async () => {
  const stepsOf = (step: PlanStep): PlanStep[] => [
    step,
    ...step.branches.flatMap(({ then }) => (then === undefined ? [] : stepsOf(then))),
  ];
  const tools = (id: string): readonly string[] => pump.model.tests.find((one) => one.id === id)!.equipment;
  const testsOf = async (...argv: string[]): Promise<string[]> => {
    const { root } = JSON.parse((await said(ownCase, ...ownModel, '--steps', '20', '--json', ...argv)).out);
    return stepsOf(root).flatMap(({ kind, id }) => (kind === 'test' ? [id] : []));
  };
  expect((await testsOf()).some((id) => tools(id).includes('lamp'))).toBe(true);
  expect((await testsOf('--equipment', 'gauge')).some((id) => tools(id).includes('lamp'))).toBe(false);
  expect(await testsOf('--equipment', ' lamp, gauge ')).toEqual(await testsOf());
  expect((await testsOf('--equipment', '')).every((id) => tools(id).length === 0)).toBe(true);
});

test('--open: when it would be time, and what is worth a look while it is open', async () => {
  const access = pump.model.access.at(-1)!;
  const takes = whatWouldItTake(pump, belief, {}, { kind: 'access', access: access.id });
  const { out } = await said(ownCase, ...ownModel, '--open', access.id);
  expect(out).toContain(`When to open: ${access.label}`);
  if (takes.probability > 0) expect(out).toContain(formatProbability(takes.probability));
  expect(out).toMatch(/While it is open, (worth doing|no test is worth its price)/);
  const document = JSON.parse((await said(ownCase, ...ownModel, '--open', access.id, '--json')).out);
  expect(document.opening).toMatchObject({ access: access.id, takes: { status: takes.status } });
});

test('a demo case: every caution of every step that is written out', async () => {
  const { model } = await loadModel();
  const { root } = JSON.parse((await said('demo-07', '--search', '3', '--json')).out);
  const { out } = await said('demo-07', '--search', '3');
  const cautions = cautionsOfPlan(root);
  expect(cautions.length).toBeGreaterThan(0);
  for (const id of cautions) expect(plain(out)).toContain(textOf(model, id));
});

test.each([
  [['demo-99'], 'no demo case and no file'],
  [['demo-01', '--open', 'valve-cover-of'], "did you mean 'valve-cover-off'?"],
  [['demo-01', '--open', 'bonnet'], 'faultodds list access'],
  [[ownCase, ...ownModel, '--svg', join(folder, 'no', 'plan.svg')], 'cannot write'],
  [['demo-01', '--json', '--mermaid'], 'cannot be used with'],
  [['demo-01', '--search', '0'], 'whole number from 1'],
  [['demo-01', '--minutes', '0'], 'a number above 0'],
  [['demo-01', '--equipment', 'hand-tools,scantool'], "no equipment 'scantool'; did you mean 'scan-tool'?"],
  [['demo-01', '--equipment', 'crystal-ball'], 'faultodds list equipment'],
])('%j: one line, exit code 2', async (argv, message) => {
  const { code, out, err } = await said(...argv);
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toContain(message);
  expect(err.trim().split('\n')).toHaveLength(1);
});

test('--language de: the plan, its bound and the caution in German; data and exit codes the same', async () => {
  const { code, out, err } = await said(ownCase, ...ownModel, '--language', 'de');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(/Erwartete Kosten .* Einheiten/);
  expect(out).toContain('Kein Plan kostet im Mittel weniger als');
  expect(out).toContain('Verfahren des Fahrzeugherstellers');
  expect(out).not.toMatch(/Expected cost|No plan|maker's procedure/);
  expect((await said(ownCase, ...ownModel, '--language', 'de', '--json')).out).toBe(
    (await said(ownCase, ...ownModel, '--json')).out,
  );
  expect(await said(ownCase, '--language', 'xx')).toMatchObject({ code: 2, err: expect.stringContaining('en, de') });
});
