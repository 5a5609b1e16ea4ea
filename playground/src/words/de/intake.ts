import type { Labels } from '../t.ts';

/** The questions about the car and what each answer changed. */
export const intakeLabels: Labels['car'] = {
  heading: 'Das Fahrzeug',
  intro: 'Alles freiwillig. Beantworten Sie, was Sie wissen: Jede Antwort verschiebt den Ausgangspunkt.',
  engine: 'Der Motor',
  engineHint: 'Steht im Fall: Messwerte mehrerer Zylinder und Fehlercodes werden darauf bezogen.',
  first: 'Nötig, bevor manche Ursachen in Frage kommen',
  telling: 'Diese können die Rangfolge am meisten bewegen',
  rest: (count) => `${count} weitere Fragen`,
  notStated: 'Nicht angegeben',
  why: 'Warum es zählt',
  opensUp: (causes) => `Nur mit dieser Antwort kommen in Frage: ${causes}.`,
  changed: 'Es änderte bei der Annahme:',
  unchanged: 'Es ändert nichts: Davon geht der Ausgangspunkt aus.',
  change: (before, after) => `${before} → ${after}`,
  answered: (count, all) => `${count} von ${all} beantwortet`,

  askNext: 'Jetzt am ehesten zu fragen',
  couldMove: (chance) => `könnte ${chance} der Rangfolge bewegen`,
  couldBringIn: (count) =>
    count === 1 ? 'bringt eine weitere Ursache ins Spiel' : `bringt ${count} weitere Ursachen ins Spiel`,
  couldEnable: (count) =>
    count === 1 ? 'macht eine weitere Prüfung passend' : `macht ${count} weitere Prüfungen passend`,

  causesIn: (causes) => `Kommen nun in Frage: ${causes}.`,
  causesOut: (causes) => `Ausgeschlossen: ${causes}.`,
  testsIn: (tests) => `Prüfungen, die nun passen: ${tests}.`,
  andMore: (list, count) => (count === 0 ? list : `${list} und ${count} weitere`),
  cost: (what, factor) => `Zeit und Teile von „${what}“: ${factor}`,
  where: 'Woher das kommt',
  multiplier: (cause, factor, low, high) => `${cause}: Chancen ${factor} (${low} bis ${high})`,
  byDefinition: (cause) => `${cause}: kann es der Sache nach nicht geben`,
  factor: (figure) => `× ${figure}`,
  source: (kind, text) => `${kind}: ${text}`,
  kinds: {
    published: 'Veröffentlicht',
    'common-practice': 'Übliche Praxis',
    judgement: 'Einschätzung',
    definition: 'Der Sache nach',
  },
};
