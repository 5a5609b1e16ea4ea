import type { modelProblems as english } from '../../en/problems/modelProblems.ts';
import { formatNumber } from '../formats/formatNumber.ts';
import { problemParts } from './problemParts.ts';

const { nearest } = problemParts;

/** Problems of a model in German, by the keys of English. */
export const modelProblems: typeof english = {
  'two-cause-share-missing': () => [
    'das Modell sagt nicht, wie oft zwei Ursachen zugleich wirken',
    'twoCauseShare angeben, einen Anteil solcher Fehler mit seiner Spanne',
  ],
  'source-unknown/listed': (p) => [
    `nicht bekannt: Quelle „${p.id}“`,
    `unter sources ergänzen oder eine von diesen angeben: ${p.sources.join(', ')}`,
  ],
  'range-disordered': (p) => [
    `best ${formatNumber(p.best)} liegt außerhalb von ${formatNumber(p.low)} bis ${formatNumber(p.high)}`,
    'es gilt low <= best <= high',
  ],
  'range-disordered/cap': (p) => [
    `die Grenze ${formatNumber(p.low)} bis ${formatNumber(p.high)} enthält die 1 nicht, den Faktor einer Ursache, zu der nichts gesagt ist`,
    'es gilt low <= 1 <= high',
  ],
  'range-empty': (p) => [`von ${formatNumber(p.low)} bis ${formatNumber(p.high)}`, 'das untere Ende kommt zuerst'],
  'id-duplicate': (p) => [`„${p.id}“ kommt zweimal vor`, 'Kennungen sind innerhalb ihrer Liste eindeutig'],
  'distribution-parameters': (p) => [
    `eine Verteilung der Art ${p.family} ist durch mean und ${p.needed} gegeben`,
    `„${p.needed}“ angeben, „${p.refused}“ weglassen`,
  ],
  'distribution-parameters/mean': (p) => [
    `gefunden: ${formatNumber(p.mean)}; eine Verteilung der Art ${p.family} hat einen Mittelwert über 0`,
    'eine normale nehmen oder einen anderen Mittelwert',
  ],
  'row-not-one': (p) => [
    `P(${p.of}) hat die Summe ${formatNumber(p.sum)}, erwartet ist 1`,
    `stimmen die anderen Einträge, wäre „${p.last}“ ${formatNumber(p.would)}`,
  ],
  'row-not-one/shares': (p) => [
    `die Summe ist ${formatNumber(p.sum)}, erwartet ist 1`,
    'einen der Anteile berichtigen',
  ],
  'row-key-missing': (p) => [`keine Wahrscheinlichkeit für „${p.state}“`, `„${p.state}“ ergänzen`],
  'row-key-unknown': (p) => [`„${p.state}“ ist hier kein Zustand`, `Zustände sind ${p.states.join(', ')}`],
  'likelihood-certain': (p) => [
    `eine Wahrscheinlichkeit von ${formatNumber(p.probability)} könnte kein Befund je berichtigen`,
    'stattdessen eine kleine oder eine große Zahl nehmen',
  ],
  'default-row-missing': (p) => [
    `„${p.of}“ hat keine Zeile für alle übrigen Fälle`,
    'mit einer Zeile schließen, deren `when` {} ist',
  ],
  'default-row-missing/reading': () => [
    'keine Zeile für alle übrigen Fälle',
    'mit einer Zeile schließen, deren `when` {} ist',
  ],
  'default-row-not-last': () => ['Zeilen nach dieser kommen nie zum Zug', 'die Zeile mit `{}` ans Ende stellen'],
  'mechanism-rows': (p) => [
    `„${p.id}“ braucht entweder eine Zeile für den Hintergrund oder Eltern mit Zeilen`,
    'Wurzeln haben `background`, abhängige Mechanismen `parents` und `rows`',
  ],
  'mechanism-dependent': (p) => [
    `„${p.id}“ hängt von anderen Mechanismen ab, nicht von einer Ursache`,
    'stattdessen die Mechanismen nennen, von denen er abhängt',
  ],
  'mechanism-unknown/here': (p) => [`hier nicht bekannt: Mechanismus „${p.id}“`, nearest(p.nearest)],
  'value-unknown/of-feature': (p) => [`„${p.feature}“ kennt die Antwort „${p.value}“ nicht`, nearest(p.nearest)],
  'state-unknown/of-mechanism': (p) => [`„${p.mechanism}“ kennt den Zustand „${p.state}“ nicht`, nearest(p.nearest)],
  'pair-part-unknown': (p) => [`weder Prüfung noch Frage zum Fahrzeug: „${p.name}“`, nearest(p.nearest)],
  'pair-with-itself': (p) => [
    `„${p.name}“ ist mit sich selbst verbunden`,
    'wie oft sich der Fehler einer Prüfung wiederholt, sagt ihre `repeatability`: das Paar entfernen',
  ],
  'pair-twice': (p) => [`„${p.a}“ und „${p.b}“ sind schon ein Paar`, 'beide zusammenfassen: eine Art, eine Notiz'],
  'pair-no-test': (p) => [
    `„${p.name}“ ist weder eine Prüfung noch eine Frage zum Fahrzeug, die auch eine Prüfung stellt`,
    '`same-fact` verwenden, wo eine Antwort zum Fahrzeug sagt, was eine Prüfung zeigt',
  ],
  'mechanism-cycle': (p) => [
    `ein Mechanismus hängt von sich selbst ab: ${p.circle.join(' -> ')}`,
    'einen dieser Eltern entfernen',
  ],
  'access-cycle': (p) => [
    `ein Zugang setzt sich selbst voraus: ${p.circle.join(' -> ')}`,
    'eine dieser Voraussetzungen entfernen',
  ],
  'follows-cycle': (p) => [
    `eine Prüfung wartet auf sich selbst: ${p.circle.join(' -> ')}`,
    'den ersten Blick nennen, der auf nichts wartet',
  ],
  'renamed-circle': (p) => [
    `Umbenennungen führen im Kreis: ${p.circle.join(' -> ')}`,
    'die letzte nennt den heutigen Namen: die entfernen, die zurückführt',
  ],
  'renamed-twice': (p) => [
    `„${p.name}“ ist zweimal umbenannt`,
    'aus einem früheren Namen ist eines geworden: beide zusammenfassen oder eine entfernen',
  ],
  'renamed-in-use': (p) => [
    `„${p.name}“ ist ein früherer Name, und das Modell verwendet ihn noch`,
    'dem heutigen Teil einen Namen geben, den es noch nie gab, oder die Umbenennung entfernen',
  ],
  'access-too-many': (p) => [
    `gefunden: ${p.count} Zugänge, möglich sind höchstens ${p.most}`,
    'zusammenfassen, was immer zusammen geöffnet wird',
  ],
  'table-too-large': (p) => [
    `„${p.of}“ braucht eine Tabelle mit ${p.entries} Einträgen, möglich sind höchstens ${p.most}`,
    'von weniger Mechanismen abhängen lassen oder von einem, der sie zusammenfasst',
  ],
  'table-too-large/rows': (p) => [
    `„${p.of}“ hat ${p.rows} Zeilen, möglich sind höchstens ${p.most}`,
    'Zeilen zusammenfassen, die dasselbe sagen',
  ],
  'tree-too-wide': (p) => [
    `so vieles hängt zusammen, dass eine Tabelle mit ${p.entries} Einträgen nötig wäre`,
    'weniger Ergebnisse eintragen oder die Prüfungen des Modells von weniger Mechanismen abhängen lassen',
  ],
  'not-computable': (p) => [
    `damit lässt sich nicht rechnen: ${p.found} (${p.code} bei ${p.at})`,
    'das Modell mit parseModel prüfen; wurden seine Zahlen danach verändert?',
  ],
  'multiplier-zero': (p) => [
    `„${p.feature}: ${p.value}“ schließt „${p.cause}“ durch den Faktor 0 aus`,
    'nur wo es das Teil nicht gibt: `"definitional": true` angeben, sonst eine kleine Zahl',
  ],
  'multiplier-zero/handling': (p) => [
    `„${p.test}“ auszuführen würde „${p.cause}“ ausschließen`,
    'die Ursache weglassen, wenn die Prüfung sie nicht herbeiführt',
  ],
  'cause-unreachable': (p) => [
    `keine Prüfung kann für oder gegen „${p.cause}“ sprechen`,
    'einen Mechanismus angeben, den eine Prüfung liest, oder eine Zeile einer Prüfung, die sie nennt',
  ],
  'cause-not-cured': (p) => [`keine Reparatur behebt „${p.cause}“`, 'bei einer Reparatur unter `cures` ergänzen'],
  'not-listed-missing': () => [
    'keine Ursache „not-listed“',
    'jedes Modell muss „etwas, das es nicht kennt“ sagen können',
  ],
  'referral-missing': () => [
    'erwartet: genau eine Reparatur mit `"referral": true`',
    'mit dem Abgeben endet jeder Plan',
  ],
  'number-unknown': () => [
    'hier steht keine Zahl, die geändert werden kann',
    'den Ort eines besten Schätzwerts oder einer Wahrscheinlichkeit in einer Zeile angeben',
  ],
  'number-out-of-range/probability': (p) => [
    `gefunden: ${formatNumber(p.value)}`,
    'eine Wahrscheinlichkeit liegt zwischen 0 und 1',
  ],
  'number-out-of-range/estimate': (p) => [
    `gefunden: ${formatNumber(p.value)}`,
    'ein Schätzwert ist endlich und nicht negativ',
  ],
};
