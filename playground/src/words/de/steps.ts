import type { Labels } from '../t.ts';

/** The next steps, repairs and what proves them. */
export const stepsLabels: Pick<Labels, 'next' | 'repair' | 'proving'> = {
  next: {
    heading: 'Nächste Schritte, beste zuerst',
    reason: 'Warum dieser zuerst',
    more: (count, hidden) =>
      count === hidden ? `${count} weitere Prüfungen` : `${count} weitere Prüfungen von ${hidden}`,
    fewer: 'Weniger Prüfungen',
    done: 'Etwas schon Getanes eintragen',
    find: 'Prüfung oder Reparatur suchen',
    recorded: (what, came) => `Eingetragen: ${came} (${what})`,
    notFound: (words) => `Nichts gefunden zu „${words}“. Ein anderes Wort versuchen.`,
    opens: 'Öffnet',
    opensNothing: 'nichts weiter zu öffnen',
    needs: 'Braucht',
    looking: 'Sieht mehrere Schritte voraus. Ergebnisse lassen sich gleich eintragen.',
    saves: (amount) => `spart im Mittel ${amount}`,
    savesLess: (amount) => `spart ${amount}, weniger als es kostet`,
    noSaving: 'würde am Vorgehen nichts ändern',
    how: 'Wie',
    caution: 'Vorsicht',
    moreCautions: (count) => (count === 1 ? 'Ein weiterer Warnhinweis' : `${count} weitere Warnhinweise`),
    futures: 'Was zu sehen sein kann, und wohin es führt',
    futuresHint: 'Wählen, was zu sehen war, um es einzutragen.',
    thenCost: (amount) => `von dort ${amount} bis zur bestätigten Reparatur`,
    recordBefore: 'Eintragen: ',
    active: 'War der Aussetzer während der Prüfung da?',
    activeWhy: 'Diese Prüfung zählt nur voll, solange der Aussetzer da ist.',
    activeYes: 'Ja',
    activeNo: 'Nein',
    activeUnknown: 'Nicht sicher',
    cannot: 'Geht hier nicht',
    cannotWhich: 'Was fehlt? Es bleibt von der Liste, bis es unter Einstellungen wieder angehakt ist.',
    missing: (tool) => `Fehlt: ${tool}`,
    notHere: 'Braucht Ausrüstung, die nicht zur Hand ist',
    notHereItem: (test, tools) => `${test}: ${tools}`,
    minutesLabel: 'Zeit',
    priceLabel: 'Preis',
  },

  repair: {
    heading: 'Nicht weiter prüfen, sondern reparieren?',
    chance: (chance) => `Aussicht, dass es hilft: ${chance}`,
    expected: (amount) =>
      `${amount} insgesamt zu erwarten, wenn ohne weitere Prüfung in dieser Reihenfolge repariert würde`,
    order: 'Vollständige Reihenfolge der Reparaturen',
    referred: (chance, fee) =>
      `Mit einer Wahrscheinlichkeit von ${chance} hilft nichts davon und der Fall geht an Spezialisten (${fee}).`,
    cured: 'Getan: Aussetzer weg',
    stayed: 'Getan: Aussetzer bleibt',
    curedWhat: (repair) => `Getan: Aussetzer weg nach „${repair}“`,
    stayedWhat: (repair) => `Getan: Aussetzer bleibt nach „${repair}“`,
  },

  proving: {
    heading: 'Die Reparatur bestätigen',
    done: (repair) => `Aussetzer weg nach „${repair}“`,
    exposure: (exposure, minutes, km, days) =>
      days > 0 ? `${exposure}: ${minutes}, ${km} km, an ${days} Tagen.` : `${exposure}: ${minutes}, ${km} km.`,
    accept: (limit) => `Bestätigt, wenn: ${limit}.`,
    order: 'In dieser Reihenfolge',
    step: (number, step) => `${number}. ${step}`,
  },
};
