import { expect, test } from 'vitest';
import { parseTroubleCodes } from './parseTroubleCodes.ts';

const codesIn = (text: string): string[] =>
  parseTroubleCodes(text).codes.map(({ code, status }) => (status === 'stored' ? code : `${code} ${status}`));

test.each([
  ['P0301, p0351 pending, P0016', ['P0301', 'P0351 pending', 'P0016']],
  ['p0301;P0300\nU0100', ['P0301', 'P0300', 'U0100']],
  ['Pending: P0301 P0302\nP0420', ['P0301 pending', 'P0302 pending', 'P0420']],
  ['P0301 (pending) P0171 [permanent]', ['P0301 pending', 'P0171 permanent']],
  ['- P0301 - P0A1F.', ['P0301', 'P0A1F']],
  ['DTCs: P0301 and P0302', ['P0301', 'P0302']],
  ['', []],
])('%j holds %j', (text, expected) => {
  expect(codesIn(text)).toEqual(expected);
  expect(parseTroubleCodes(text).malformed).toEqual([]);
});

test('a code that stands twice is kept once, with the stronger status', () => {
  expect(codesIn('P0301 pending, P0301')).toEqual(['P0301']);
  expect(codesIn('P0301, Pending: P0301')).toEqual(['P0301']);
});

test('the failure type byte of later issues is kept beside the code', () => {
  expect(parseTroubleCodes('P0301-1A').codes).toEqual([{ code: 'P0301', status: 'stored', failureType: '1A' }]);
});

test.each([
  ['P0301, P03O2', 'P03O2', 7, 'did you mean P0302?'],
  ['P030', 'P030', 0, 'a code has a letter and four digits, this one 3'],
  ['P03011', 'P03011', 0, 'a code has a letter and four digits, this one 5'],
  ['P4301', 'P4301', 0, 'the first digit of a code is 0 to 3'],
  ['0301', '0301', 0, 'is the letter missing: P0301?'],
  ['X0301', 'X0301', 0, 'a code looks like P0301: P, C, B or U, and four digits'],
])('in %j, %j at %d is pointed out: %s', (text, piece, at, hint) => {
  expect(parseTroubleCodes(text).malformed).toMatchObject([{ text: piece, at, hint }]);
});

test('a long list of anything is read without harm', () => {
  const list = parseTroubleCodes(`${'__proto__ constructor P0301 '.repeat(2000)}`);
  expect(list.codes).toEqual([{ code: 'P0301', status: 'stored' }]);
  expect(list.malformed).toHaveLength(4000);
});

// each of them took time in the square of its length: 33 s for eighty thousand signs, weeks for these
test.each(['.', "'", '"', ':!', '-', 'P', '1', 'x'])('two million times %j is one piece, read at once', (sign) => {
  const { codes, malformed } = parseTroubleCodes(`${sign.repeat(2_000_000)}x`);
  expect(codes).toEqual([]);
  expect(malformed).toHaveLength(1);
  expect(malformed[0]!.text.length).toBeLessThanOrEqual(61);
});

test('signs around a code are no part of it, signs alone are nothing', () => {
  expect(codesIn(`"'-*•P0301"'.:!`)).toEqual(['P0301']);
  expect(codesIn('... "" P0301 :::')).toEqual(['P0301']);
});

test('a list longer than a book is read to its millionth character, and that is said', () => {
  const list = parseTroubleCodes(`P0301 ${' '.repeat(1_000_000)} P0302 P0303`);
  expect(list.codes.map(({ code }) => code)).toEqual(['P0301']);
  expect(list.malformed).toMatchObject([{ text: 'P0302', at: 1_000_007, wording: { key: 'list-too-long' } }]);
});
