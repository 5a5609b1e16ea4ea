import { expect, test } from 'vitest';
import { pumpModel } from '../../../../../../tests/fixtures/pumpModel.ts';
import { beliefOf } from '../../../belief/beliefOf.ts';
import { advise } from '../../../advice/advise.ts';
import { explainCase } from '../../../explanation/explainCase.ts';
import { compileModel } from '../../../compiled/compileModel.ts';
import { parseModel } from '../../../model/parseModel.ts';
import * as inGerman from '../../../entries/words/de.ts';
import * as inEnglish from '../../../entries/words/en.ts';
import { describeReading, sentenceForAdvice, sentenceForObservation } from '../../../entries/words/sentences.ts';
import { english } from '../english.ts';
import { german } from './german.ts';

const compiled = compileModel(parseModel(pumpModel()));
const facts = {
  context: { filter: 'fitted' },
  observations: [{ kind: 'result', id: 'r1', test: 'wheel-look', outcome: 'dirty' }],
} as const;

test('both languages export the same names and fill the same keys', () => {
  const besides = (entry: object, language: string): string[] =>
    Object.keys(entry)
      .filter((name) => name !== language)
      .sort();
  expect(besides(inGerman, 'german')).toEqual(besides(inEnglish, 'english'));
  expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort());
  expect(Object.keys(german.messages).sort()).toEqual(Object.keys(english.messages).sort());
});

test('no sentence is the English one, or drops a part it is given', () => {
  const parts = new Proxy({} as Record<string, string>, { get: (_, key) => `<${String(key)}>` });
  type Maker = (parts: unknown) => string;
  // made of the parts alone, the same in both
  const neutral = new Set(['resultByNumbers', 'numbersAndOutcome', 'result']);
  for (const [key, make] of Object.entries(english.messages)) {
    if (
      ['and', 'or', 'inTurn', 'sharesTogether', 'count', 'quoted', 'whileAsleep', 'perhapsAsleep', 'result'].includes(
        key,
      )
    )
      continue;
    const ours = (german.messages[key as keyof typeof german.messages] as unknown as Maker)(parts);
    const theirs = (make as unknown as Maker)(parts);
    expect([...ours.matchAll(/<\w+>/g)].map(String).sort(), key).toEqual(
      [...theirs.matchAll(/<\w+>/g)].map(String).sort(),
    );
    if (!neutral.has(key)) expect(ours, key).not.toBe(theirs);
  }
});

test('a result and the advice are told in German with German numbers', () => {
  const belief = beliefOf(compiled, facts);
  const step = explainCase(compiled, facts).observations[0]!;
  expect(sentenceForObservation(compiled.model, step, german)).toMatch(
    /^Von 1000 solchen Motoren hatten \d+ vor diesem Ergebnis „.+“ und \d+ danach\./,
  );
  const prices = { currency: 'EUR', labourPerHour: 80, partsFactor: 1 };
  expect(sentenceForAdvice(compiled.model, advise(compiled, belief, { prices }), german)).toMatch(
    /^Als Nächstes: .*\d\s€/,
  );
});

test.each([
  [inGerman.formatMoney({ amount: 1637.2, currency: 'EUR' }), '1.637 €'],
  [inGerman.formatMoney({ amount: 7.5, currency: 'EUR' }), '7,50 €'],
  [inGerman.formatMoney({ amount: 4.84, currency: 'unit' }), '4,8 Einheiten'],
  [inGerman.formatProbability(0.0312), '3,1 %'],
  [inGerman.formatProbability(0.9961), '99,6 %'],
  [inGerman.formatProbability(0.00001), 'weniger als 1 von 1000'],
  [inGerman.formatTimes(8.42), '8,4-mal'],
  [inGerman.formatMinutes(90), '1 h 30 min'],
  [
    describeReading(
      {
        kind: 'per-cylinder',
        measure: 'm',
        unit: 'bar',
        suspect: 3,
        values: { 1: 12.1, 2: 12.5, 3: 9.2 },
      },
      german,
    ),
    '9,2 bar an Zylinder 3, 12,1 bis 12,5 bar an den übrigen',
  ],
])('%s', (written, expected) => {
  expect(written.replaceAll('\u00a0', ' ')).toBe(expected);
});
