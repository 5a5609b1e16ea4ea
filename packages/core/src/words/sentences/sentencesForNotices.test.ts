import { expect, test } from 'vitest';
import { pumpModel } from '../../../../../tests/fixtures/pumpModel.ts';
import { compileModel } from '../../compiled/compileModel.ts';
import { modelIdentity } from '../../model/modelIdentity.ts';
import { parseModel } from '../../model/parseModel.ts';
import { loadCase } from '../../caseFile/loadCase.ts';
import { german } from '../languages/de/german.ts';
import { english } from '../languages/english.ts';
import { sentencesForNotices } from './sentencesForNotices.ts';

const compiled = compileModel(parseModel({ ...pumpModel(), contentVersion: 4 }));
const { model } = compiled;
const said = (about: object, ...events: object[]): readonly (readonly string[])[] => {
  const { notices } = loadCase(compiled, {
    format: 'faultodds-case',
    version: 3,
    id: 'c',
    title: 'T',
    ...about,
    events,
  });
  return [english, german].map((language) => sentencesForNotices(model, notices, language));
};
const result = (id: string, test: string, outcome: string) => ({ kind: 'result-recorded', id, test, outcome });

test('nothing is said of a case of this very model, nor of one that names none', () => {
  expect(said({ model: modelIdentity(model) })).toEqual([[], []]);
  expect(said({})).toEqual([[], []]);
});

test('another version: both are named', () => {
  expect(said({ model: { ...modelIdentity(model), version: 3 } })).toEqual([
    [
      'This case was made with the model “pump”, version 3; this is the model “pump”, version 4. The probabilities may differ from those shown then.',
    ],
    [
      'Dieser Fall entstand mit Modell „pump“, Version 3; hier ist Modell „pump“, Version 4. Was damals wahrscheinlich war, muss es heute nicht mehr sein.',
    ],
  ]);
});

test('the same version with other contents: told apart by the hash', () => {
  const [english, german] = said({ model: { ...modelIdentity(model), hash: '0123456789abcdef' } });
  for (const [sentence] of [english!, german!]) {
    expect(sentence).toContain('0123456789abcdef');
    expect(sentence).toContain(modelIdentity(model).hash);
  }
});

test('one entry without a place, named with what is known of it, and why', () => {
  expect(said({}, result('r1', 'hum', 'humms'))).toEqual([
    [
      "One entry is unknown to this model and does not count: “Listen for the hum: humms” (no outcome 'humms' of 'hum'; did you mean 'hums'?). It is kept in the case.",
    ],
    [
      'Ein Eintrag hat in diesem Modell keinen Platz und zählt nicht mit: „Listen for the hum: humms“ (nicht bekannt: Ergebnis „humms“ von „hum“; ist „hums“ gemeint?). Er bleibt im Fall erhalten.',
    ],
  ]);
});

test('several: five are listed, the others counted', () => {
  const many = Array.from({ length: 7 }, (_, at) => result(`r${at}`, `old-test-${at}`, 'x'));
  const [[english], [german]] = said({}, ...many) as [[string], [string]];
  expect(english).toMatch(
    /^7 entries are unknown to this model and do not count: .*old-test-4: x.*; and 2 more\. They are kept/,
  );
  expect(german).toMatch(/^7 Einträge haben .*old-test-4: x.*; und 2 weitere\. Sie bleiben/);
  expect(english).not.toContain('old-test-5');
});

test('intake answers, repairs, access, equipment and the ending of an invented case', () => {
  const [english] = said(
    { demo: { invented: true, trueCause: 'rust', lesson: 'Look.' } },
    { kind: 'context-set', feature: 'filter', value: 'paper' },
    { kind: 'repair-tried', id: 'r1', repair: 'kick-it', cured: false },
    { kind: 'access-opened', access: 'roof-off' },
    { kind: 'equipment-set', equipment: ['lamp', 'stethoscope'] },
  );
  expect(english![0]).toBe('The cause this case names, “rust”, is not in this model.');
  for (const name of ['“Filter: paper”', '“kick-it”', '“roof-off”', '“stethoscope”'])
    expect(english![1]).toContain(name);
});
