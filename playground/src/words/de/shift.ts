import type { Labels } from '../t.ts';

/** The picture of how the ranking moved, and why. */
export const shiftLabels: Pick<Labels, 'shift' | 'rankShift' | 'moment' | 'why'> = {
  shift: {
    heading: 'Wie sich die Rangfolge änderte',
    even: 'Gleichmäßige Skala',
    stretched: 'Seltene Ursachen vergrößert',
    scale: 'Höhe im Bild',
    scrub: 'Zu jedem Schritt zurück',
    scrubbed: (moment) => `Wie es damals war: ${moment}`,
    latest: 'Zurück zu jetzt',
    without: 'Vergleichen: ohne dieses Ergebnis',
    withoutMark: 'Hohle Marken rechts: die Wahrscheinlichkeit jeder Ursache ohne es.',
    save: 'Das Bild sichern als',
    saveAs: (kind) => `Das Bild sichern als ${kind}`,
    fileName: (id) => `${id}-verlauf`,
    legendLead: 'Jede Spalte ist ein Schritt des Falls, jede Linie eine Ursache; die Höhe ist die Wahrscheinlichkeit.',
    tableCaption: (earlier) =>
      earlier === 0
        ? 'Wahrscheinlichkeit jeder Ursache nach jeder Beobachtung'
        : `Wahrscheinlichkeit jeder Ursache nach jeder Beobachtung, ohne die ${earlier} frühesten`,
    following: (count) => `Die Änderungen der Rangfolge werden berechnet: ${count} Ergebnisse …`,
    tableCause: 'Ursache',
  },

  rankShift: {
    columns:
      'Schritte dieses Falls: Pfeile nach links und rechts wechseln zwischen ihnen, nach oben und unten zwischen Ursachen',
    point: (cause, chance, moment) => `${cause}: ${chance}, ${moment}`,
    earlier: (count) => `◂ ${count} frühere`,
    later: (count) => `${count} spätere ▸`,
    anyMark: 'alle',
    any: 'jeder Motor mit diesem Aussetzer',
    carMark: 'Auto',
    car: 'dieses Fahrzeug bei der Annahme',
    result: (number, test, outcome) => `${number}: ${test}: ${outcome}`,
    short: (test, outcome) => `${test}: ${outcome}`,
    spoken: (moment, leader, chance) => `${moment}. Vorn: ${leader}, ${chance}`,
    others: (count, ceiling) =>
      count === 1
        ? `Grau: eine weitere Ursache, bei ${ceiling}`
        : `Grau: ${count} weitere Ursachen, keine über ${ceiling}`,
    leads: (cause, chance) => `„${cause}“ liegt mit ${chance} vorn`,
    ledBefore: (cause, chance, before, beforeChance) =>
      `„${cause}“ liegt mit ${chance} vorn; bei der Annahme war es „${before}“ mit ${beforeChance}`,
    rose: (cause, chance, before) => `„${cause}“ liegt mit ${chance} vorn, bei der Annahme ${before}`,
  },

  moment: {
    result: (number, what) => `${number}. ${what}`,
    any: 'Jeder Motor mit diesem Aussetzer',
    anyText:
      'Bevor etwas über dieses Fahrzeug bekannt ist: wie oft jede Ursache hinter einem bleibenden Aussetzer an einem Zylinder steckt.',
    car: 'Dieses Fahrzeug bei der Annahme',
    carText: 'Nach den Antworten unter „Das Fahrzeug“, vor jeder Prüfung.',
    cause: 'Ursache',
    before: 'vorher',
    after: 'nachher',
    weight: 'Gewicht',
    seen: 'würde es zeigen',
    seenHint:
      'Gewicht in Deziban: zehn verzehnfachen die Chancen. „Würde es zeigen“: wie oft ein Motor mit dieser Ursache dieses Ergebnis liefert.',
    retract: 'Dieses Ergebnis zurücknehmen',
  },

  why: {
    heading: 'Warum diese Ursache?',
    title: (cause, chance) => `Was für und gegen „${cause}“ spricht (${chance})`,
    choose: 'Ursache',
    summary:
      'Jeder Balken ist ein Ergebnis: nach rechts spricht es für diese Ursache, nach links dagegen. Zehn Deziban verzehnfachen die Chancen.',
    nothing: 'Noch ist nichts eingetragen, was dafür oder dagegen sprechen könnte.',
    lighter: (count) =>
      count === 1
        ? 'Ein weiteres Ergebnis wiegt weniger als diese.'
        : `${count} weitere Ergebnisse wiegen weniger als diese.`,
    tableCaption: 'Gewicht jedes Ergebnisses für diese Ursache',
    heads: ['Ergebnis', 'Gewicht', 'Vorher', 'Nachher'],
    intake: 'Bei der Annahme',
    nowRow: 'Jetzt',
    speaksFor: (weight) => `${weight} dafür`,
    speaksAgainst: (weight) => `${weight} dagegen`,
    saysNothing: 'sagt nichts',
    excludes: 'schließt sie aus',
    onlyThis: 'lässt nur diese Ursache übrig',
    row: (mark, label) => `${mark}. ${label}`,
    feels: 'Am Steuer zu bemerken',
    drivenOn: 'Wenn weitergefahren wird',
  },
};
