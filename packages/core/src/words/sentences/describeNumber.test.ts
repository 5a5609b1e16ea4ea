import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { modelNumbers } from '../../doubt/modelNumbers.ts';
import { numberAt } from '../../model/numberAt.ts';
import { parseModel } from '../../model/parseModel.ts';
import { german } from '../languages/de/german.ts';
import { english } from '../languages/english.ts';
import { describeNumber } from './describeNumber.ts';

const model = parseModel(misfire);
const numbers = modelNumbers(model);

test.each([
  ['English', english],
  ['German', german],
])('every number of the misfire model is described in %s, none like another', (_, language) => {
  const phrases = numbers.map(({ path }) => describeNumber(model, path, language));
  expect(numbers.length).toBeGreaterThan(500);
  for (const [at, phrase] of phrases.entries()) {
    expect(phrase).not.toBe(numbers[at]!.path);
    expect(phrase).not.toMatch(/undefined|\[object/);
  }
  // two rows of one test may name the same conditions only where the first of them never matches
  expect(new Set(phrases).size).toBeGreaterThan(0.98 * phrases.length);
});

test('the value of every number stands at its path', () => {
  for (const { path, value, low, high } of numbers) {
    expect(numberAt(model, path)).toBe(value);
    expect(low).toBeLessThanOrEqual(high);
  }
  expect(numberAt(model, '/causes/0/label')).toBeUndefined();
  expect(numberAt(model, '/causes/constructor/length')).toBeUndefined();
});

test('one of each kind, read aloud', () => {
  const say = (start: RegExp): string =>
    describeNumber(model, numbers.find(({ path }) => start.test(path))!.path, english);
  expect(say(/weight/)).toMatch(/^How common “.+” is$/);
  expect(say(/activeFraction/)).toMatch(/^How often “.+” shows on a visit$/);
  expect(say(/states/)).toMatch(/^“.+: .+” if the cause is “.+”$/);
  expect(say(/background/)).toMatch(/^“.+: .+” with every other cause$/);
  expect(say(/tests\/\d+\/rows\/0/)).toMatch(/^“.+: .+” if .+ is “.+”/);
  expect(say(/repeatability/)).toMatch(/^How often a repeat of “.+” makes the same error$/);
  expect(say(/multipliers/)).toMatch(/^How much “.+\? .+” speaks for “.+”$/);
  expect(say(/cures/)).toMatch(/^How surely “.+” cures “.+”$/);
  expect(say(/goneWithoutCure/)).toBe('How often the fault goes though the repair did not cure it');
  expect(say(/leastRepairMinutes/)).toBe('Minutes a repair takes at least, with all its access open');
  expect(say(/needlessOpening/)).toBe('What opening the engine for nothing costs beyond its price');
  expect(describeNumber(model, '/tests/9999/rows/0/p/x', english)).toBe('/tests/9999/rows/0/p/x');
  expect(describeNumber(model, '/labourPerHour/best', english)).toBe('/labourPerHour/best');
});
