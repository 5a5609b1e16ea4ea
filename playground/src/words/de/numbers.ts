import type { Labels } from '../t.ts';

/** The numbers of the knowledge and questioning them. */
export const numberLabels: Labels['numbers'] = {
  open: 'Die Zahlen prüfen',
  heading: 'Die Zahlen hinter der Rangfolge',
  intro:
    'Jede Zahl hat eine Quelle und eine Spanne. Verschieben Sie eine und sehen Sie, was sich ändern würde: nur zur Probe, der Fall bleibt, wie er ist.',
  effect: 'Mit diesen Änderungen',
  effectNone: 'Noch ist nichts geändert: So steht es.',
  advice: 'Bester nächster Schritt',
  adviceSame: (step) => `${step}, wie zuvor`,
  adviceOther: (step, before) => `${step} statt ${before}`,
  from: (before, now) => `${before} → ${now}`,
  changed: (count) => (count === 1 ? 'Eine Zahl geändert' : `${count} Zahlen geändert`),
  reset: 'Zurücksetzen',
  resetWhat: (what) => `Zurücksetzen: ${what}`,
  resetAll: 'Alle zurücksetzen',
  original: (value) => `ursprünglicher Wert ${value}`,

  matter: 'Welche Zahlen jetzt am meisten zählen',
  matterIntro: (cause) =>
    `Wie weit „${cause}“ ausschlägt, während eine Zahl ihre Spanne durchläuft und alle anderen bleiben.`,
  swing: (low, high) => `„${low}“ am unteren Ende der Spanne, „${high}“ am oberen`,
  flip: (at, cause) => `Bei ${at} läge „${cause}“ vorn.`,
  flipNever: 'Kein Wert von ihr ändert, welche Ursache vorn liegt.',
  flipOutside: (at, cause) => `Erst bei ${at}, außerhalb der Spanne, läge „${cause}“ vorn.`,
  working: 'Wird gerechnet …',
  more: (count) => `${count} weitere`,

  all: 'Alle Zahlen',
  find: 'Eine Zahl nach Ursache, Prüfung oder Reparatur suchen',
  found: (shown, all) => (shown === all ? `${all} gefunden` : `${shown} von ${all} gefunden: noch ein Wort dazu`),
  notFound: 'Keine Zahl heißt so.',
  range: (low, high) => `90-%-Spanne ${low} bis ${high}`,
  worth: (cases) => `so viel wert wie ${cases} Fälle`,
  slider: (what) => `Wert von: ${what}`,
};
