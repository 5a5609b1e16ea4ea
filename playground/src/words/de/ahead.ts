import type { Labels } from '../t.ts';

/** Looking further ahead: stop or test, what is open, the whole plan, what it would take, two causes at once. */
export const aheadWords: Labels['ahead'] = {
  open: 'Weiter vorausschauen',
  heading: 'Weiter voraus',
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
      'Keines von beiden: Die letzte Reparatur scheint geholfen zu haben. Erst fahren und sie bestätigen; die Beträge gelten, falls der Fehler wiederkommt.',
    repairNoTest: (repair) => `Jetzt reparieren: „${repair}“. Es ist keine Prüfung übrig, die helfen könnte.`,
    refer: 'Den Fall abgeben: Weder eine Prüfung noch eine Reparatur ist hier ihren Preis wert.',
    now: 'Jetzt reparieren, bis zur bestätigten Reparatur',
    first: (test) => `Zuerst „${test}“, bis zur bestätigten Reparatur`,
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
    noThresholds: 'Keine Wahrscheinlichkeit der führenden Ursache würde ändern, was zuerst getan wird.',
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
    intro:
      'Was zuerst zu tun ist und was dann, was auch dabei herauskommt. Je länger gesucht wird, desto besser wird er.',
    show: 'Den ganzen Plan ausrechnen',
    examined: (count) => (count === 1 ? '1 Stelle untersucht.' : `${count} Stellen untersucht.`),
    search: 'Wie die Suche verlief',
    searchTitle: 'Der Plan wird billiger, und klarer wird, was kein Plan unterbieten kann',
    searchSummary: 'Der beste Plan liegt zwischen den beiden Linien; sie nähern sich, solange gesucht wird.',
    searchHeads: ['Untersuchte Stellen', 'Bester Plan bisher', 'Kein Plan kostet weniger als'],
    upper: (cost) => `bester Plan bisher: ${cost}`,
    lower: (cost) => `kein Plan kostet weniger als ${cost}`,
    cost: (expected) => `Kostet im Mittel ${expected} bis zur bestätigten Reparatur`,
    spread: (median, ninety, worst) =>
      `Die Hälfte aller Fälle kostet höchstens ${median}, neun von zehn höchstens ${ninety}, der teuerste ${worst}.`,
    gap: (share) => `Der bestmögliche Plan würde davon höchstens ${share} sparen.`,
    gapNone: 'Einen besseren Plan gibt es nicht, soweit dieses Wissen reicht.',
    reached: (chance) => `erreicht in ${chance}`,
    folded: (count) => (count === 1 ? 'ein weiterer Schritt' : `${count} weitere Schritte`),
    ends: { cured: 'behoben: fertig', 'not-cured': 'der Fehler bleibt', referred: 'abgegeben' },
    fromHere: (cost) => `von hier ${cost}`,
    price: (price) => `kostet ${price}`,
    text: 'Der Plan als Text',
    refer: 'Den Fall abgeben',
  },

  takes: {
    heading: 'Was bräuchte es dafür?',
    intro: 'Wie wahrscheinlich die Ursachen dahinter sein müssen, damit das Öffnen der beste nächste Schritt ist.',
    short: (now, threshold) => `jetzt ${now}, ab ${threshold}`,
    best: 'jetzt der beste nächste Schritt',
    done: (count, all) => `${count} von ${all} beantwortet.`,
    others: (count) => `Vorerst nicht zu öffnen (${count})`,
    'already-open': 'Es ist schon offen.',
    impossible: 'Keine der Ursachen dahinter kommt hier in Frage.',
    'already-best': (now, threshold) =>
      `Es ist jetzt der beste nächste Schritt: Seine Ursachen stehen zusammen bei ${now}; ab ${threshold} ist es so.`,
    certain: (now) => `Es ist jetzt der beste nächste Schritt: Seine Ursachen stehen zusammen bei ${now}.`,
    reachable: (now, threshold) =>
      `Seine Ursachen stehen zusammen bei ${now}; ab ${threshold} ist es der beste nächste Schritt.`,
    never: 'Nicht einmal, wenn seine Ursachen sicher wären: Etwas anderes bleibt besser.',
    line: 'Seine Ursachen zusammen',
    now: 'jetzt',
    threshold: 'ab hier öffnen',
    tests: 'Die billigsten Prüfungen, die es wohl entscheiden',
    testsUnlikely: 'Prüfungen mit der besten Aussicht darauf, wenn auch unter eins zu zwei',
    testsPrice: (price) => `Zusammen ${price}.`,
    reachedTrue: (chance) => `Ist es eine seiner Ursachen, führen sie in ${chance} dorthin.`,
    reachedFalse: (chance) => `Ist es keine davon, führen sie trotzdem in ${chance} dorthin.`,
    noTests: 'Es sind keine Prüfungen übrig, die dorthin führen könnten.',
    unexamined: (examined, others) =>
      `${examined} Folgen von Prüfungen wurden betrachtet, ${others} nicht: Es mag eine billigere geben.`,
    causes: (count: number) => `Seine Ursachen (${count})`,
    summary:
      'Wo alle Ursachen zusammen stehen, die dahinter zu sehen oder zu beheben wären, und ab wo sich das Öffnen lohnt.',
  },

  pairs: {
    heading: 'Zwei Ursachen zugleich?',
    show: 'Paare von Ursachen erwägen',
    intro: 'Dieselben Ergebnisse, mit jedem Paar von Ursachen als eigener Möglichkeit.',
    pair: (a, b) => `${a} und ${b}`,
    table: 'Ursachen und Paare von Ursachen, die wahrscheinlichste zuerst',
    heads: ['Ursache oder Paar', 'Wahrscheinlichkeit', 'Bei der Annahme'],
    title: (label, chance) => `Am wahrscheinlichsten: „${label}“, ${chance}`,
    summary:
      'Paare sind bei der Annahme selten; sie liegen nur vorn, wo keine einzelne Ursache alles Gesehene erklärt.',
  },
};
