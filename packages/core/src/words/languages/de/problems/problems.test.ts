import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesUnder, root } from '../../../../../../../tests/fixtures/filesUnder.ts';
import { CaseError } from '../../../../errors/caseError.ts';
import { foundIn, type Found } from '../../../../errors/foundIn.ts';
import { problemFor, type ProblemKey, type ProblemParts } from '../../../../validation/problemFor.ts';
import { problems as german } from './problems.ts';
import { describeProblem } from '../../../sentences/describeProblem.ts';
import { english as inEnglishWords } from '../../english.ts';
import { german as inGermanWords } from '../german.ts';
import { problems as english } from '../../en/problems/problems.ts';

const text: Found = { kind: 'text', text: '<found>' };
const implausible = { value: 125, unit: '<unit>', low: 7, high: 6000, canonical: '<canonical>' };

/** Parts for every problem there is; a new one without them does not compile. */
const samples: { readonly [Key in ProblemKey]: ProblemParts<Key> } = {
  'key-unknown': { key: '<key>' },
  'value-missing': { expected: 'number' },
  'value-missing/listed': { values: [text, { kind: 'plain', text: '<other>' }] },
  'value-missing/facts': { expected: 'likelihood' },
  'type-wrong': { found: text, expected: 'string' },
  'type-wrong/facts': { found: 'list', expected: 'context' },
  'type-wrong/case': {},
  'value-unknown/listed': { found: text, values: [{ kind: 'plain', text: '<other>' }] },
  'too-small': { found: text, least: '<least>' },
  'too-big': { found: text, most: '<most>' },
  'number-out-of-list': { found: text, most: '3' },
  'id-malformed': { found: text },
  'id-malformed/key': { key: '<key>' },
  'value-invalid': { found: text },
  'kind-unknown': { found: text },
  unknown: { kind: 'test', id: '<id>', of: '<of>', nearest: '<nearest>' },
  'two-cause-share-missing': {},
  'source-unknown/listed': { id: '<id>', sources: ['<one>', '<two>'] },
  'range-disordered': { low: 11, best: 12, high: 13 },
  'range-disordered/cap': { low: 11, high: 13 },
  'range-empty': { low: 11, high: 13 },
  'id-duplicate': { id: '<id>' },
  'distribution-parameters': { family: '<family>', needed: '<needed>', refused: '<refused>' },
  'distribution-parameters/mean': { family: '<family>', mean: 12 },
  'row-not-one': { of: '<of>', sum: 12, last: '<last>', would: 13 },
  'row-not-one/shares': { sum: 12 },
  'row-key-missing': { state: '<state>' },
  'row-key-unknown': { state: '<state>', states: ['<one>', '<two>'] },
  'likelihood-certain': { probability: 1 },
  'default-row-missing': { of: '<of>' },
  'default-row-missing/reading': {},
  'default-row-not-last': {},
  'mechanism-rows': { id: '<id>' },
  'mechanism-dependent': { id: '<id>' },
  'mechanism-unknown/here': { id: '<id>', nearest: '<nearest>' },
  'value-unknown/of-feature': { feature: '<feature>', value: '<value>', nearest: '<nearest>' },
  'state-unknown/of-mechanism': { mechanism: '<mechanism>', state: '<state>', nearest: undefined },
  'pair-part-unknown': { name: '<name>', nearest: '<nearest>' },
  'pair-with-itself': { name: '<name>' },
  'pair-twice': { a: '<a>', b: '<b>' },
  'pair-no-test': { name: '<name>' },
  'mechanism-cycle': { circle: ['<one>', '<two>', '<one>'] },
  'follows-cycle': { circle: ['<one>', '<two>', '<one>'] },
  'access-cycle': { circle: ['<one>', '<two>', '<one>'] },
  'renamed-circle': { circle: ['<one>', '<two>', '<one>'] },
  'renamed-twice': { name: '<name>' },
  'renamed-in-use': { name: '<name>' },
  'access-too-many': { count: 40, most: 31 },
  'table-too-large': { of: '<of>', entries: 2000, most: 1000 },
  'table-too-large/rows': { of: '<of>', rows: 2000, most: 1000 },
  'tree-too-wide': { entries: 2000 },
  'not-computable': { code: '<code>', at: '<at>', found: '<found>' },
  'multiplier-zero': { feature: '<feature>', value: '<value>', cause: '<cause>' },
  'multiplier-zero/handling': { test: '<test>', cause: '<cause>' },
  'cause-unreachable': { cause: '<cause>' },
  'cause-not-cured': { cause: '<cause>' },
  'not-listed-missing': {},
  'referral-missing': {},
  'number-unknown': {},
  'number-out-of-range/probability': { value: 12 },
  'number-out-of-range/estimate': { value: 12 },
  'format-unknown': { format: text },
  'version-unknown': { version: text, newest: 12 },
  'version-unknown/newer': { version: 13, newest: 12 },
  'model-other': {
    made: { id: '<made>', version: 11 },
    here: { id: '<here>', version: 12 },
  },
  'key-unsafe': { key: '<key>' },
  'case-full': { most: 2000 },
  'id-taken': { id: '<id>' },
  'observation-unknown/to-retract': { id: '<id>', nearest: '<nearest>' },
  'context-needed': { observation: '<observation>', test: '<test>' },
  'cylinder-unknown/engine': { cylinder: 12, cylinders: 11 },
  'engine-differs/suspect': { observation: '<observation>', read: 11, suspect: 12 },
  'engine-differs/cylinders': { observation: '<observation>', cylinder: '<cylinder>', cylinders: 11 },
  'test-not-applicable': { test: '<test>', needs: [['<one>', '<two>'], ['<three>']] },
  'test-not-applicable/now': { test: '<test>' },
  'outcome-missing': {},
  'outcome-missing/both': {},
  'outcome-missing/reading': {},
  'outcome-contradicts-reading': { outcome: '<outcome>', called: ['<one>', '<two>'] },
  'likelihood-invalid': { value: 12, most: 11 },
  'likelihood-invalid/none': {},
  'evidence-impossible': {},
  'evidence-impossible/context': {},
  'belief-of-another-model': { id: 'valve-burnt' },
  'row-not-one/table': { sum: 0.9 },
  'stakes-invalid': { value: 12, range: 'not-negative' },
  'reading-not-possible': { test: '<test>', outcomes: ['<one>', '<two>'] },
  'kind-unfit': { measure: '<measure>', test: '<test>', kind: '<kind>', kinds: ['<one>', '<two>'] },
  'unit-unknown': { unit: '<unit>', dimension: 'pressure', symbols: ['<one>', '<two>'] },
  'reading-implausible': implausible,
  'reading-implausible/unit': { ...implausible, other: '<other>' },
  'reading-implausible/gauges': { pressure: 11, supply: 12, unit: '<unit>' },
  'reference-zero': {},
  'suspect-missing': { suspect: 11, read: ['<one>', '<two>'] },
  'suspect-missing/counts': { suspect: 11 },
  'suspect-differs': { read: 11, suspect: 12 },
  'cylinder-unknown': { cylinder: '<cylinder>', cylinders: 11 },
  'neighbour-missing': {},
  'neighbour-missing/counts': {},
  'neighbour-zero': {},
  'neighbour-zero/half': { cylinders: ['1', '2'] },
  'nominal-zero': {},
  'partner-missing': {},
  'partner-unfit': {},
  'count-above-firings': { count: 12, firings: 11 },
  'code-malformed': { text: '<text>' },
  'code-malformed/repaired': { text: '<text>', code: '<code>' },
  'code-malformed/length': { text: '<text>', digits: 11 },
  'code-malformed/first-digit': { text: '<text>' },
  'code-malformed/letter': { text: '<text>' },
  'list-too-long': { most: 1_000_000 },
  'hex-malformed': { found: '<found>' },
  'not-a-monitor-response': { byte: '<byte>' },
  'record-cut-short': { bytes: 11 },
  'other-monitor': { byte: '<byte>' },
  'other-test': { byte: '<byte>' },
  'other-unit': { byte: '<byte>' },
};
type Said = Parameters<typeof describeProblem>[0];
const inEnglish = (problem: Said) => describeProblem(problem, inEnglishWords);
const inGerman = (problem: Said) => describeProblem(problem, inGermanWords);

const keys = Object.keys(samples) as ProblemKey[];
const problemOf = (key: ProblemKey) => problemFor(key, '/somewhere', samples[key] as never);

describe('every problem is worded in both languages', () => {
  test('by the same keys, all of them tried here', () => {
    expect(Object.keys(german)).toEqual(Object.keys(english));
    expect([...keys].sort()).toEqual(Object.keys(english).sort());
    expect(keys.length).toBeGreaterThan(90);
  });

  test.each(keys)('%s', (key) => {
    const problem = problemOf(key);
    expect(inEnglish(problem)).toEqual({ message: problem.message, hint: problem.hint });
    const ours = inGerman(problem);
    expect(ours.message).not.toBe(problem.message);
    expect(ours.hint).not.toBe(problem.hint);
    for (const said of [ours.message, ours.hint, problem.message, problem.hint]) {
      expect(said).toMatch(/\S/);
      expect(said).not.toMatch(/undefined|NaN|\[object/);
    }
    // neither language drops a part the other shows
    const marks = ({ message, hint }: { message: string; hint: string }): unknown[] =>
      [...new Set(`${message} ${hint}`.match(/<\w+>|\b(?:1[123]|40|31|125|6000|2000|1000)\b/g))].sort();
    expect(marks(ours)).toEqual(marks(problem));
  });

  test('no English is left in German', () => {
    const words = /\b(the|this|with|found|expected|needs|give|use|add|of|and|is|are|no|from)\b/i;
    const said = keys.map((key) => Object.values(inGerman(problemOf(key))).join(' | '));
    expect(said.filter((one) => words.test(one.replaceAll(/<\w+>|[„`][^“`]*[“`]/g, '')))).toEqual([]);
  });
});

test('a part of the source that words a problem by hand would be English in every language: there is none', () => {
  const bare = filesUnder('packages/core/src', '.ts')
    .filter((path) => !/\.test\.ts$|\/words\//.test(path))
    .filter((path) => /\bhint: *['"`]|\bhint = *['"`]/.test(readFileSync(join(root, path), 'utf8')));
  expect(bare).toEqual([]);
});

test('numbers of a problem are written as the language writes them', () => {
  const problem = problemFor('reading-implausible', '/value', { ...implausible, value: 12.5 });
  expect(inEnglish(problem).message).toContain('12.5');
  expect(inGerman(problem).message).toContain('12,5');
});

test.each([
  [[1, 2], 'a list of 2', 'eine Liste mit 2 Einträgen'],
  [[1], 'a list of 1', 'eine Liste mit 1 Eintrag'],
  [{}, 'an object', 'ein Objekt'],
  [null, 'null', 'null'],
  [3, '3', '3'],
  [() => 1, 'a function', 'eine Funktion'],
  ['x'.repeat(50), `'${'x'.repeat(40)}…'`, `„${'x'.repeat(40)}…“`],
])('what was found is quoted: %o', (value, theirs, ours) => {
  const problem = problemFor('value-invalid', '', { found: foundIn(value) });
  expect(inEnglish(problem).message).toBe(`found ${theirs}`);
  expect(inGerman(problem).message).toBe(`gefunden: ${ours}`);
});

test('a problem made by hand, or by a newer version, keeps its own words; through JSON nothing is lost', () => {
  const own = { code: 'a', path: '', message: 'mine', hint: 'do it' };
  expect(inGerman(own)).toEqual({ message: 'mine', hint: 'do it' });
  for (const key of ['of-the-future', 'toString', '__proto__']) {
    expect(inGerman({ ...own, wording: { key, parts: {} } })).toEqual({ message: 'mine', hint: 'do it' });
  }
  const problem = problemOf('unknown');
  expect(inGerman(JSON.parse(JSON.stringify(problem)))).toEqual(inGerman(problem));
});

test('a message that quotes at length is cut in every language', () => {
  const problem = problemFor('key-unknown', '', { key: 'x'.repeat(2000) });
  expect(new CaseError([problem]).problems[0]!.message.length).toBeLessThan(510);
  expect(inGerman(problem).message.length).toBeLessThan(510);
});
