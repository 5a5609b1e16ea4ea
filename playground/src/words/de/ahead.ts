import type { Labels } from '../t.ts';

/** Looking further ahead: stop or test, what is open, the whole plan, what it would take, two causes at once. */
export const aheadLabels: Labels['ahead'] = {
  open: 'Weiter vorausschauen',
  heading: 'Weiter vorausschauen',
  working: 'Wird gerechnet …',
  seconds: (count) => `${count} s`,
  stopped: (count) => `Nach ${count} s angehalten.`,
  halt: 'Anhalten',
  again: 'Neu beginnen',
  refused: (why) => `Das ließ sich nicht ausrechnen: ${why}`,
  exact: 'Genaue Zahlen',

  stop: {
    heading: 'Jetzt reparieren oder noch eine Prüfung?',
    test: (test, saving) => `Noch eine Prüfung lohnt sich: Zuerst „${test}“ spart im Mittel ${saving}.`,
    repair: (repair, saving) =>
      `Jetzt reparieren: „${repair}“. Noch eine Prüfung würde ${saving} mehr kosten, als sie spart.`,
    prove:
      'Keines von beiden: Die letzte Reparatur scheint geholfen zu haben. Erst das mit einer Probefahrt bestätigen; die Beträge gelten, falls der Fehler wiederkommt.',
    repairNoTest: (repair) => `Jetzt reparieren: „${repair}“. Es ist keine Prüfung übrig, die helfen könnte.`,
    refer: 'Den Fall abgeben: Weder eine Prüfung noch eine Reparatur ist hier ihren Preis wert.',
    now: 'Jetzt reparieren: Kosten bis zur bestätigten Reparatur',
    first: (test) => `Zuerst „${test}“: Kosten bis zur bestätigten Reparatur`,
    line: (cause) => `Wie wahrscheinlich „${cause}“ sein muss`,
    summary: (cause, test) =>
      `Links der ersten Marke geschieht wegen „${cause}“ nichts, rechts der zweiten wird gleich repariert; dazwischen ist „${test}“ seinen Preis wert.`,
    marks: {
      now: 'jetzt',
      testing: 'ab hier prüfen',
      treating: 'ab hier reparieren',
      single: 'ab hier reparieren, ohne die Prüfung',
    },
    tableHeads: ['Wahl', 'Wahrscheinlichkeit'],
    noThresholds: 'Was zuerst zu tun ist, hängt nicht von der Wahrscheinlichkeit der führenden Ursache ab.',
  },

  while: {
    heading: 'Solange es offen ist',
    none: 'Nichts ist offen. Sobald etwas offen ist, steht hier, was dahinter einen Blick lohnt.',
    which: 'Was offen ist',
    pays: 'Lohnt sich jetzt',
    paysNot: 'Lohnt sich jetzt nicht',
    nothing: 'Keine Prüfung braucht das offen.',
    now: (price, later) => `jetzt ${price}, bei einem anderen Besuch ${later}`,
  },

  plan: {
    heading: 'Der ganze Plan',
    intro: 'Was zuerst zu tun ist und was nach jedem Ergebnis. Der Plan wird besser, solange die Suche läuft.',
    show: 'Den ganzen Plan ausrechnen',
    examined: (count) => (count === 1 ? '1 Situation untersucht.' : `${count} Situationen untersucht.`),
    search: 'Wie die Suche verlief',
    searchTitle: 'Der beste gefundene Plan und was jeder Plan mindestens kostet, während die Suche läuft',
    searchSummary: 'Der bestmögliche Plan liegt zwischen den beiden Linien; sie nähern sich, während die Suche läuft.',
    searchHeads: ['Untersuchte Situationen', 'Bester Plan bisher', 'Kein Plan kostet weniger als'],
    upper: (cost) => `bester Plan bisher: ${cost}`,
    lower: (cost) => `kein Plan kostet weniger als ${cost}`,
    cost: (expected) => `Kostet im Mittel ${expected} bis zur bestätigten Reparatur`,
    spread: (median, ninety, worst) =>
      `Die Hälfte aller Fälle kostet höchstens ${median}, neun von zehn höchstens ${ninety}, der teuerste ${worst}.`,
    gap: (share) => `Der bestmögliche Plan würde davon höchstens ${share} sparen.`,
    gapNone: 'Nach diesem Modell gibt es keinen besseren Plan.',
    reached: (chance) => `erreicht in ${chance}`,
    notExamined: 'Noch nicht näher betrachtet: Das wäre ohne weitere Prüfung zu tun.',
    folded: (count) => (count === 1 ? 'ein weiterer Schritt' : `${count} weitere Schritte`),
    ends: { cured: 'behoben: fertig', 'not-cured': 'der Fehler bleibt', referred: 'abgegeben' },
    fromHere: (cost) => `von hier ${cost}`,
    price: (price) => `kostet ${price}`,
    text: 'Der Plan als Text',
    refer: 'Den Fall abgeben',
  },

  whatItTakes: {
    heading: 'Wann lohnt sich das Öffnen?',
    intro: 'Wie wahrscheinlich die Ursachen dahinter sein müssen, damit das Öffnen der beste nächste Schritt ist.',
    short: (now, threshold) => `jetzt ${now}, lohnt sich ab ${threshold}`,
    best: 'jetzt der beste nächste Schritt',
    done: (count, all) => `${count} von ${all} beantwortet.`,
    others: (count) => `Vorerst nicht zu öffnen (${count})`,
    'already-open': 'Es ist schon offen.',
    impossible: 'Keine der Ursachen dahinter kommt hier in Frage.',
    'already-best': (now, threshold) =>
      `Es ist jetzt der beste nächste Schritt: Seine Ursachen haben zusammen ${now}, und das Öffnen lohnt sich ab ${threshold}.`,
    certain: (now) => `Es ist jetzt der beste nächste Schritt: Seine Ursachen haben zusammen ${now}.`,
    reachable: (now, threshold) =>
      `Seine Ursachen haben zusammen ${now}; ab ${threshold} ist es der beste nächste Schritt.`,
    never: 'Nie: Selbst wenn seine Ursachen sicher wären, wäre ein anderer Schritt besser.',
    line: 'Seine Ursachen zusammen',
    now: 'jetzt',
    threshold: 'ab hier öffnen',
    tests: 'Die billigsten Prüfungen, die es wohl entscheiden',
    testsUnlikely: 'Prüfungen mit der besten Aussicht darauf, wenn auch unter eins zu zwei',
    testsPrice: (price) => `Zusammen ${price}.`,
    reachedTrue: (chance) =>
      `Liegt eine seiner Ursachen vor, zeigen diese Prüfungen es mit einer Wahrscheinlichkeit von ${chance}.`,
    reachedFalse: (chance) =>
      `Liegt keine vor, weisen sie mit einer Wahrscheinlichkeit von ${chance} fälschlich darauf hin.`,
    noTests: 'Keine übrige Prüfung könnte es entscheiden.',
    unexamined: (examined, others) =>
      `${examined} Folgen von Prüfungen wurden betrachtet, ${others} nicht: Es mag eine billigere geben.`,
    causes: (count: number) => `Seine Ursachen (${count})`,
    summary:
      'Die Wahrscheinlichkeit aller Ursachen, die dahinter zu sehen oder zu beheben wären, und ab wann sich das Öffnen lohnt.',
  },

  pairs: {
    heading: 'Zwei Ursachen zugleich?',
    show: 'Paare von Ursachen erwägen',
    intro: 'Dieselben Ergebnisse, mit jedem Paar von Ursachen als weiterer Möglichkeit.',
    pair: (a, b) => `${a} und ${b}`,
    table: 'Ursachen und Paare von Ursachen, die wahrscheinlichste zuerst',
    heads: ['Ursache oder Paar', 'Wahrscheinlichkeit', 'Bei der Annahme'],
    title: (label, chance) => `Am wahrscheinlichsten: „${label}“, ${chance}`,
    summary:
      'Paare sind bei der Annahme selten; sie liegen nur vorn, wo keine einzelne Ursache alles Gesehene erklärt.',
  },
};
