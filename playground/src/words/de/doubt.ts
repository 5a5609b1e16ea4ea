import type { Labels } from '../t.ts';

/** How sure the numbers and the advice are, and results that disagree. */
export const doubtLabels: Labels['doubt'] = {
  heading: 'Wie sicher ist das?',
  title: (cause, low, high) => `„${cause}“ liegt zwischen ${low} und ${high}`,
  summary:
    'Der Punkt ist die beste Schätzung; der Strich enthält sie in neun von zehn ebenso glaubhaften Modellen. Schraffiert: beruht auf Einschätzung; durchgezogen: auf Veröffentlichtem oder üblicher Praxis.',
  tableCaption: 'Wahrscheinlichkeit jeder Ursache mit ihrer Spanne über glaubhafte Modelle',
  heads: ['Ursache', 'Jetzt', 'Tief', 'Hoch', 'Vorn in'],
  range: (low, high) => `${low} bis ${high}`,
  leads: (count) => `${count} von 100`,
  working: 'Wird gerechnet …',
  rough: (draws) => `Bisher aus ${draws} glaubhaften Modellen; weitere werden gerechnet.`,
  drawn: (draws) => `Aus ${draws} glaubhaften Modellen.`,
  judgement: 'Einschätzung',
  solid: 'veröffentlicht oder übliche Praxis',

  firm: (count) => `Derselbe Rat in ${count} von 100 glaubhaften Modellen`,
  firmEvery: 'Derselbe Rat in jedem versuchten glaubhaften Modell',
  otherwise: 'Die übrigen würden',
  otherLine: (step, count) => `${step} (${count} von 100)`,
  lessThanOne: 'weniger als 1',
  refer: 'den Fall abgeben',

  conflict: 'Einige Ergebnisse passen schlecht zusammen',
  conflictText: 'Eines kann falsch sein, oder die Ursache ist eine seltene oder steht nicht in der Liste.',
  pair: (a, b) => `„${a}“ und „${b}“ widersprechen sich.`,
  helps: (what) => `Ohne „${what}“ passt das Übrige am besten zusammen.`,
  look: 'Ohne dieses ansehen',
  with: 'mit ihm',
  without: 'ohne es',
  cause: 'Ursache',
  comparison: (what) => `Die Rangfolge mit und ohne „${what}“`,
  bits: (bits) => `${bits} Bit insgesamt; über 0 widersprechen sich Ergebnisse, über 1 lohnt ein Blick.`,
  pairBits: (a, b, bits) => `${a} / ${b}: ${bits} Bit`,
  exact: 'Genaue Zahlen',
  retract: 'Zurücknehmen',
};
