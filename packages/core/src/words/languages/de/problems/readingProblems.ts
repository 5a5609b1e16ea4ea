import type { readingProblems as english } from '../../en/problems/readingProblems.ts';
import type { Dimension } from '../../../../units/dimension.ts';
import { plural } from '../../../plural.ts';
import { formatNumber } from '../formats/formatNumber.ts';

const lonely = 'der Zylinder mit Aussetzern steht allein';
const noCode = (text: string): string => `„${text}“ ist kein Code`;
const implausible = (p: { value: number; unit: string; low: number; high: number; canonical: string }): string =>
  `gefunden: ${formatNumber(p.value)} ${p.unit}, erwartet: ${formatNumber(p.low)} bis ${formatNumber(p.high)} ${p.canonical}`;

/** Names of what is measured, where a message needs one. */
const dimensions: Readonly<Record<Dimension, string>> = {
  pressure: 'einen Druck',
  percent: 'eine Prozentangabe',
  ratio: 'ein Verhältnis',
  angle: 'einen Winkel',
  length: 'eine Länge',
  time: 'eine Zeit',
  resistance: 'einen Widerstand',
  speed: 'eine Drehzahl',
  temperature: 'eine Temperatur',
  relative: 'diesen Messwert',
};

/** Problems of readings, trouble codes and monitor responses in German, by the keys of English. */
export const readingProblems: typeof english = {
  'reading-not-possible': (p) => [`„${p.test}“ hat keine Messwerte`, `ein Ergebnis angeben: ${p.outcomes.join(', ')}`],
  'kind-unfit': (p) => [
    `„${p.measure}“ von „${p.test}“ wird nicht als „${p.kind}“ gelesen`,
    `angeben als ${p.kinds.join(' oder ')}`,
  ],
  'unit-unknown': (p) => [
    `„${p.unit}“ ist keine Einheit für ${dimensions[p.dimension]}`,
    `möglich: ${p.symbols.join(', ')}`,
  ],
  'reading-implausible': (p) => [implausible(p), 'auf Vorzeichen und Komma achten'],
  'reading-implausible/unit': (p) => [implausible(p), `sind es ${p.other} statt ${p.unit}?`],
  'reading-implausible/gauges': (p) => [
    `${formatNumber(p.pressure)} ${p.unit} gehalten von ${formatNumber(p.supply)} ${p.unit} zugeführt`,
    'sind die beiden Manometer vertauscht?',
  ],
  'reference-zero': () => ['nichts zum Vergleichen da', 'der Vergleichswert liegt über 0'],
  'suspect-missing': (p) => [
    `kein Wert für Zylinder ${p.suspect}, den mit Aussetzern (gelesen: ${p.read.join(', ') || 'keiner'})`,
    'auch diesen Zylinder messen oder einen anderen angeben',
  ],
  'suspect-missing/counts': (p) => [
    `keine Zählung für Zylinder ${p.suspect}, den mit Aussetzern`,
    'auch diesen Zylinder zählen oder einen anderen angeben',
  ],
  'suspect-differs': (p) => [
    `gemessen für Zylinder ${p.read}, aber Zylinder ${p.suspect} hat Aussetzer`,
    'dies oder die Angabe zum Motor berichtigen',
  ],
  'cylinder-unknown': (p) => [
    `keinen Zylinder ${p.cylinder} hat ein Motor mit ${p.cylinders} Zylindern`,
    `Zylinder sind von 1 bis ${p.cylinders} gezählt: dies oder die Angabe zum Motor berichtigen`,
  ],
  'neighbour-missing': () => [lonely, 'mindestens einen anderen Zylinder messen: Erst der Vergleich sagt etwas'],
  'neighbour-missing/counts': () => [lonely, 'mindestens einen anderen Zylinder zählen: Erst der Vergleich sagt etwas'],
  'neighbour-zero': () => ['jeder andere Zylinder zeigt 0', 'das Messgerät prüfen: Es ist nichts zum Vergleichen da'],
  'neighbour-zero/half': (p) => [
    `mindestens die Hälfte der anderen Zylinder zeigt 0 (${p.cylinders.join(', ')}): zu wenige bleiben zum Vergleichen`,
    'noch einmal messen; bleibt es bei 0, ist das ein Fehler für sich: ihm zuerst nachgehen, oder den Wert hier weglassen und mit den übrigen vergleichen',
  ],
  'nominal-zero': () => ['nichts zum Vergleichen', 'die Angabe des Herstellers ist größer als 0'],
  'partner-missing': () => [
    'keine Zählung für den Zylinder, mit dem das Teil getauscht wurde',
    'beide Zylinder zählen',
  ],
  'partner-unfit': () => ['das Teil wurde ersetzt, nicht getauscht', 'den anderen Zylinder weglassen'],
  'count-above-firings': (p) => [
    `gefunden: ${p.count} Aussetzer bei ${formatNumber(p.firings)} Zündungen des Zylinders`,
    'ein Zylinder zündet einmal in zwei Umdrehungen: die Zahl oder den Umfang berichtigen',
  ],

  'code-malformed': (p) => [noCode(p.text), 'ein Code sieht aus wie P0301: P, C, B oder U und vier Ziffern'],
  'code-malformed/repaired': (p) => [noCode(p.text), `ist ${p.code} gemeint?`],
  'code-malformed/length': (p) => [
    noCode(p.text),
    `ein Code hat einen Buchstaben und vier Ziffern, dieser ${p.digits}`,
  ],
  'code-malformed/first-digit': (p) => [noCode(p.text), 'die erste Ziffer eines Codes ist 0 bis 3'],
  'code-malformed/letter': (p) => [noCode(p.text), `fehlt der Buchstabe: P${p.text}?`],
  'list-too-long': (p) => [
    `die Liste hat mehr als ${p.most} Zeichen`,
    'was danach kommt, wurde nicht gelesen: nur die Codes einfügen',
  ],
  'hex-malformed': (p) => [`gefunden: „${p.found}“`, 'nur hexadezimale Ziffern und Leerzeichen'],
  'not-a-monitor-response': (p) => [
    `beginnt mit ${p.byte === '' ? 'nichts' : p.byte}`,
    'eine Antwort auf Dienst $06 beginnt mit 46',
  ],
  'record-cut-short': (p) => [
    `noch ${p.bytes} ${plural('de', p.bytes, { one: 'Byte', other: 'Bytes' })} übrig`,
    'jeder Test nimmt neun Bytes ein: Ist die Antwort vollständig?',
  ],
  'other-monitor': (p) => [`Monitor $${p.byte} ist kein Aussetzermonitor`, 'Aussetzermonitore sind $A1 bis $AD'],
  'other-test': (p) => [`Test $${p.byte} legt der Hersteller fest`, 'Zählungen sind die Tests $0B und $0C'],
  'other-unit': (p) => [`Einheit $${p.byte} ist keine Zählung`, 'Zählungen haben die Einheit $24'],
};
