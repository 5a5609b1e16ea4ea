import type { Language } from '../language.ts';
import { plural } from '../../plural.ts';

/** The words of a written plan in German, by the keys of English. */
export const planWords: Language['planWords'] = {
  expected: (p) => `Erwartete Kosten ${p.cost}`,
  expectedWithGap: (p) => `Erwartete Kosten ${p.cost}, davon höchstens ${p.gap} über dem bestmöglichen Plan`,
  spread: (p) =>
    `In der Hälfte der Fälle bis ${p.median}, 9-mal von 10 bis ${p.ninetieth}, schlimmstenfalls ${p.worst}`,
  folded: (count) => `… ${count} ${plural('de', count, { one: 'weiterer Schritt', other: 'weitere Schritte' })}`,
  notExamined: 'noch nicht näher betrachtet',
  ends: { cured: 'behoben', 'not-cured': 'der Fehler bleibt', referred: 'abgegeben' },
  cautions: 'Gefahren, nach den Nummern an den Schritten',
  title: 'Plan der nächsten Schritte',
  titleOfCase: (title) => `Was als Nächstes zu tun ist: ${title}`,
  bound: (p) => `Kein Plan kostet im Mittel weniger als ${p.bound} (untersuchte Situationen: ${p.examined}).`,
  boundReached: (p) =>
    `Kein Plan kostet im Mittel weniger als ${p.bound}: Dieser Plan ist der bestmögliche (untersuchte Situationen: ${p.examined}).`,
  workUpTo: (p) => `${p.time} Arbeit`,
  and: ' und ',
  limits: (p) => `Höchstens ${p.spent} dürfen aufgewendet werden; darüber hinaus bleibt nur, den Fall abzugeben.`,
};
