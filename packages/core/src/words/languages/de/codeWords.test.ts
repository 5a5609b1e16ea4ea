import { expect, test } from 'vitest';
import { describeTroubleCode } from '../../../codes/describeTroubleCode.ts';
import { describeCodeMeaning } from '../../sentences/describeCodeMeaning.ts';
import { english } from '../english.ts';
import { german } from './german.ts';

const groups = ['0', '1', '2', '3'];
const digits = [...'0123456789ABCDEF'];
/** Every code of two digits after the group, in steps that reach every meaning. */
const codes = [...'PCBUX'].flatMap((system) =>
  groups.flatMap((group) =>
    digits.flatMap((area) =>
      digits.flatMap((tens) => digits.map((units) => `${system}${group}${area}${tens}${units}`)),
    ),
  ),
);

test('every code there can be is described in both languages, and never alike', () => {
  const meanings = new Map(codes.map((code) => [JSON.stringify(describeTroubleCode(code)), describeTroubleCode(code)]));
  expect(meanings.size).toBeGreaterThan(60);
  const theirWords = new Set<string>();
  const ourWords = new Set<string>();
  for (const meaning of meanings.values()) {
    const [theirs, ours] = [describeCodeMeaning(meaning, english), describeCodeMeaning(meaning, german)];
    expect(`${theirs} ${ours}`).not.toMatch(/undefined/);
    expect(ours).not.toBe(theirs);
    theirWords.add(theirs);
    ourWords.add(ours);
  }
  expect([theirWords.size, ourWords.size]).toEqual([meanings.size, meanings.size]);
});

test.each([
  ['P0303', 'misfire of cylinder 3', 'Aussetzer, Zylinder 3'],
  ['P0171', 'mixture lean, bank 1', 'Gemisch mager, Bank 1'],
  ['P0316', 'misfire just after starting', 'Aussetzer gleich nach dem Start'],
  ['P0420', 'auxiliary emission controls', 'zusätzliche Abgasreinigung'],
])('%s', (code, theirs, ours) => {
  const meaning = describeTroubleCode(code);
  expect([describeCodeMeaning(meaning, english), describeCodeMeaning(meaning, german)]).toEqual([theirs, ours]);
});
