import { aheadLabels } from './de/ahead.ts';
import { casesLabels } from './de/cases.ts';
import { savingLabels } from './de/saving.ts';
import { doubtLabels } from './de/doubt.ts';
import { entryLabels } from './de/entry.ts';
import { helpLabels } from './de/help.ts';
import { intakeLabels } from './de/intake.ts';
import { linkLabels } from './de/link.ts';
import { numberLabels } from './de/numbers.ts';
import { offlineLabels } from './de/offline.ts';
import { reportLabels } from './de/report.ts';
import { shiftLabels } from './de/shift.ts';
import { stepsLabels } from './de/steps.ts';
import type { Labels } from './t.ts';

/** Words of the screen in German. What is missing here does not compile. The names of causes, tests and repairs and the cautions belong to
 * the knowledge and stay in its language; the page says so. */
export const germanLabels: Labels = {
  code: 'de',
  rare: '< 0,1 %',
  nearlySure: '> 99,9 %',
  name: 'faultodds',
  tagline: 'Ein Aussetzer an einem Zylinder: woher er am wahrscheinlichsten kommt und was als Nächstes zu tun ist.',

  nav: {
    label: 'Teile dieser Seite',
    now: 'Jetzt',
    next: 'Weiter',
    shift: 'Verlauf',
    notes: 'Notizen',
    car: 'Auto',
  },

  bar: {
    undo: 'Zurück',
    redo: 'Wieder',
    cases: 'Fälle',
    setup: 'Einstellungen',
    theme: (now) => `Hell oder dunkel: ${now}`,
    themes: { auto: 'wie das Gerät', light: 'hell', dark: 'dunkel' },
    title: 'Name dieses Falls',
    newCase: 'Neuer Fall',
  },

  now: {
    heading: 'Jetzt am wahrscheinlichsten',
    was: (chance) => `bei Annahme ${chance}`,
    next: 'Bester nächster Schritt',
    reason: 'Was es zuletzt geändert hat',
    show: 'Zeigen, wie',
    describe: 'Das Fahrzeug beschreiben: jede Antwort zählt',
    record: 'Eintragen, was schon getan ist',
  },

  entry: entryLabels,

  ...stepsLabels,

  doubt: doubtLabels,

  numbers: numberLabels,

  ahead: aheadLabels,

  notes: {
    heading: 'Eingetragen',
    none: 'Noch nichts. Eintragen, was schon getan wurde: Auch ersetzte Teile zählen als Hinweis.',
    showEarlier: (count) => `${count} frühere zeigen`,
    retract: 'Zurücknehmen',
    retractWhat: (what, outcome) => `Zurücknehmen: ${what}, ${outcome}`,
    active: { yes: '', no: 'Aussetzer nicht da', unknown: 'nicht sicher, ob der Aussetzer da war' },
    unclear: 'nicht eindeutig',
    cured: 'Aussetzer weg',
    stayed: 'Aussetzer bleibt',
    open: 'Jetzt offen',
    openHint: 'Was offen ist, ist ohne weitere Kosten erreichbar: jetzt prüfen, was dort wenig kostet.',
    noneOpen: 'Nichts ist offen.',
    close: 'Als geschlossen markieren',
    closeWhat: (what) => `Als geschlossen markieren: ${what}`,
    add: 'Etwas anderes ist offen',
    choose: 'Auswählen …',
    note: 'Notiz',
    notePlaceholder: 'Alles, was zu merken lohnt',
    addNote: 'Notiz hinzufügen',
    warnings: 'Hinweise zu diesen Ergebnissen',
  },

  car: intakeLabels,

  ...shiftLabels,

  cases: casesLabels,

  saving: savingLabels,

  link: linkLabels,

  help: helpLabels,

  offline: offlineLabels,

  report: reportLabels,

  replay: {
    label: 'Ablauf eines erfundenen Falls',
    invented: 'Erfundener Fall',
    step: (step, all) => `${step} von ${all} eingetragen`,
    start: 'Bei der Annahme',
    back: 'Zurück',
    forward: 'Nächstes Ergebnis',
    all: 'Ende',
    leave: 'Allein weitermachen',
    next: (test) => `Als Nächstes: ${test}`,
    cause: (label) => `Die Ursache war: ${label}`,
  },

  setup: {
    heading: 'Einstellungen',
    prices: 'Preise',
    units: 'Einheiten',
    pressure: 'Druckeinheit',
    unitsHint: 'Wird angeboten, wo ein Druck einzugeben ist; jede Eingabe kann eine andere nehmen.',
    chosenOnce: 'Preise und Ausrüstung gelten für diesen Fall und für jeden neuen.',
    looks: 'Aussehen',
    language: 'Sprache',
    knowledgeNote:
      'Das Wissen selbst (Namen von Ursachen, Prüfungen und Reparaturen, Anleitungen, Vorsichtshinweise) ist auf Englisch verfasst und bleibt so.',
    currency: 'Währung',
    currencyHint: 'Ein Kürzel wie EUR oder CHF',
    labour: 'Arbeit je Stunde',
    parts: 'Teilefaktor',
    partsHint: 'Wie viel in Ihrer Währung eine Einheit Teile kostet',
    needless: 'Umsonst geöffnet',
    needlessHint: (amount) =>
      `Was es Sie über den Preis hinaus kostet, den Motor umsonst zu öffnen: Zeit, Risiko, Vertrauen. Es zählt nur, wenn ein Schritt gewählt wird. Leer: ${amount}, eine Einschätzung`,
    needlessWrong: 'Umsonst geöffnet: bitte eine Zahl, null oder mehr',
    apply: 'Diese Preise verwenden',
    equipment: 'Ausrüstung zur Hand',
    equipmentHint: 'Prüfungen, die nicht angehakte Ausrüstung brauchen, werden nicht vorgeschlagen.',
    all: 'Alles zur Hand',
    common: 'Nur das Übliche',
    numberWrong: (label) => `${label}: bitte eine Zahl über null`,
  },

  dialog: {
    close: 'Schließen',
  },

  engines: {
    show: 'Als 1000 Motoren zeigen',
    title: (cause, before, after) => `„${cause}“: vorher ${before} von 1000, nachher ${after}`,
    summary: 'Jeder Punkt ist ein Motor wie dieser. Gefüllte Punkte haben die Ursache.',
    before: (count) => `vorher: ${count} von 1000`,
    after: (count) => `nachher: ${count} von 1000`,
    none: 'weniger als 1',
    all: 'mehr als 999',
    tableCaption: 'Von 1000 solchen Motoren: wie viele welche Ursache haben',
    heads: ['Ursache', 'vorher', 'nachher'],
  },

  figure: {
    asTable: 'Als Tabelle zeigen',
  },

  problem: {
    import: (file) => `„${file}“ lässt sich nicht öffnen. Hier wurde nichts geändert.`,
    notJson: 'Es ist keine JSON-Datei: abgeschnitten oder eine andere Art von Datei.',
    refused: 'Das ließ sich nicht eintragen. Nichts wurde geändert.',
    kept: 'Ein auf diesem Gerät gesicherter Fall ist beschädigt und wurde nicht geöffnet.',
    close: 'Diese Meldung schließen',
    more: (count) => `und ${count} weitere`,
  },

  said: {
    recorded: (what, leader, chance) => `Eingetragen: ${what}. Jetzt vorn: ${leader}, ${chance}`,
    undone: (leader, chance) => `Zurückgenommen. Jetzt vorn: ${leader}, ${chance}`,
    redone: (leader, chance) => `Wiederhergestellt. Jetzt vorn: ${leader}, ${chance}`,
    opened: (title) => `Geöffnet: ${title}`,
  },
};
