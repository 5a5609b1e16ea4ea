import type { shapeProblems as english } from '../../en/problems/shapeProblems.ts';
import { problemParts } from './problemParts.ts';

const { found, foundKind, expected, factsPart, nearest, noun, or } = problemParts;
const idHint = 'Kennungen bestehen aus Kleinbuchstaben, Ziffern, - und _, nicht „constructor“';

/** Problems of shape in German, by the keys of English. */
export const shapeProblems: typeof english = {
  'key-unknown': (p) => [`unbekannte Eigenschaft „${p.key}“`, 'die Schreibweise prüfen oder sie entfernen'],
  'value-missing': (p) => [`fehlt, erwartet: ${expected(p.expected)}`, 'ergänzen'],
  'value-missing/listed': (p) => [`fehlt, erwartet: ${or(p.values.map(found))}`, 'einen der genannten Werte angeben'],
  'value-missing/facts': (p) => [`fehlt, erwartet: ${factsPart[p.expected]}`, 'ergänzen'],
  'type-wrong': (p) => [
    `gefunden: ${found(p.found)}, erwartet: ${expected(p.expected)}`,
    `hier gehört hin: ${expected(p.expected)}`,
  ],
  'type-wrong/facts': (p) => [
    `gefunden: ${foundKind(p.found)}, erwartet: ${factsPart[p.expected]}`,
    `hier gehört hin: ${factsPart[p.expected]}`,
  ],
  'type-wrong/case': () => ['das ist kein Objekt', 'einen gespeicherten Fall angeben, als gelesenes JSON'],
  'value-unknown/listed': (p) => [
    `gefunden: ${found(p.found)}, erwartet: ${or(p.values.map(found))}`,
    'einen der genannten Werte angeben',
  ],
  'too-small': (p) => [`gefunden: ${found(p.found)}, erwartet: mindestens ${p.least}`, 'erhöhen oder ergänzen'],
  'too-big': (p) => [`gefunden: ${found(p.found)}, erwartet: höchstens ${p.most}`, 'verringern oder kürzen'],
  'number-out-of-list': (p) => [
    `gefunden: ${found(p.found)}, erwartet: eine Stelle von 0 bis ${p.most}`,
    'von 0 an zählen',
  ],
  'id-malformed': (p) => [`gefunden: ${found(p.found)}`, idHint],
  'id-malformed/key': (p) => [`der Schlüssel „${p.key}“ ist keine Kennung`, idHint],
  'value-invalid': (p) => [`gefunden: ${found(p.found)}`, 'mit dem JSON-Schema dieses Formats vergleichen'],
  'kind-unknown': (p) => [`gefunden: ${found(p.found)}`, 'eine der beschriebenen Arten angeben'],
  unknown: (p) => [
    `nicht bekannt: ${noun(p.kind)} „${p.id}“${p.of === undefined ? '' : ` von „${p.of}“`}`,
    nearest(p.nearest),
  ],
};
