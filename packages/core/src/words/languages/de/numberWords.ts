import type { Language } from '../language.ts';

/** What the numbers of a model are, in German. */
export const numberWords: Language['numberWords'] = {
  weight: (cause) => `Wie häufig „${cause}“ ist`,
  activeFraction: (cause) => `Wie oft sich „${cause}“ in der Werkstatt zeigt`,
  entry: (what, state, condition) => `„${what}: ${state}“ ${condition}`,
  background: 'bei jeder anderen Ursache',
  asleep: 'während der Fehler schläft',
  when: (conditions) => `wenn ${conditions.join(' und ')}`,
  otherwise: 'in allen anderen Fällen',
  ifCause: (causes) => `die Ursache ${quoted(causes)} ist`,
  ifMechanism: (mechanism, states) => `„${mechanism}“ ${quoted(states)} ist`,
  repeatability: (test) => `Wie oft eine Wiederholung von „${test}“ denselben Fehler macht`,
  multiplier: (question, answer, cause) => `Wie sehr „${question} ${answer}“ für „${cause}“ spricht`,
  cures: (repair, cause) => `Wie sicher „${repair}“ „${cause}“ behebt`,
  goneWithoutCure: () => 'Wie oft der Fehler geht, obwohl die Reparatur ihn nicht behoben hat',
  presentIfNotNoted: () => 'Wie oft der Fehler bei einer Prüfung da war, bei der es niemand notiert hat',
  leastRepairMinutes: () => 'Minuten, die eine Reparatur mindestens dauert, auch wenn alles offen ist',
  needlessOpening: () => 'Was es über den Preis hinaus kostet, den Motor umsonst zu öffnen',
};

function quoted(labels: readonly string[]): string {
  return labels.map((label) => `„${label}“`).join(' oder ');
}
