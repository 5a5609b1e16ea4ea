import type { caseProblems as english } from '../../en/problems/caseProblems.ts';
import { formatNumber } from '../formats/formatNumber.ts';
import { problemParts } from './problemParts.ts';

const { found, nearest } = problemParts;
const ranges = { positive: 'über 0', 'not-negative': 'die nicht negativ ist', share: 'zwischen 0 und 1' } as const;
const takeBack = (observation: string): string => `zuerst „${observation}“ zurücknehmen`;

/** Problems of a case, of its results and of questions about it in German, by the keys of English. */
export const caseProblems: typeof english = {
  'format-unknown': (p) => [
    `${p.format.kind === 'nothing' ? 'kein Format angegeben' : `gefunden: Format ${found(p.format)}`}, erwartet: „faultodds-case“`,
    'einen gespeicherten Fall angeben',
  ],
  'version-unknown': (p) => [
    `${p.version.kind === 'nothing' ? 'keine Version angegeben' : `gefunden: Version ${found(p.version)}`}, erwartet: eine ganze Zahl von 1 bis ${p.newest}`,
    `Versionen sind ganze Zahlen von 1 bis ${p.newest}`,
  ],
  'version-unknown/newer': (p) => [
    `der Fall wurde in Version ${p.version} des Formats gespeichert, dieses Programm liest Versionen bis ${p.newest}`,
    'mit einem neueren faultodds öffnen',
  ],
  'model-other': (p) => [
    `der Fall entstand mit dem Modell „${p.made.id}“, Version ${p.made.version}; hier ist das Modell „${p.here.id}“, Version ${p.here.version}`,
    `mit dem Modell „${p.made.id}“ öffnen`,
  ],
  'key-unsafe': (p) => [`„${p.key}“ ist kein Schlüssel eines Falls`, 'entfernen'],
  'case-full': (p) => [
    `der Fall hat ${p.most} Einträge und nimmt keine mehr auf`,
    'speichern und in einem neuen Fall weitermachen',
  ],
  'id-taken': (p) => [
    `die Kennung „${p.id}“ ist schon vergeben`,
    'jede Beobachtung braucht eine eigene Kennung, auch nach dem Zurücknehmen',
  ],
  'observation-unknown/to-retract': (p) => [`keine Beobachtung „${p.id}“, die zurückzunehmen wäre`, nearest(p.nearest)],
  'context-needed': (p) => [
    `das Ergebnis „${p.observation}“ von „${p.test}“ braucht die Angabe zum Fahrzeug so, wie sie ist`,
    takeBack(p.observation),
  ],
  'cylinder-unknown/engine': (p) => [
    `keinen Zylinder ${p.cylinder} hat ein Motor mit ${p.cylinders} Zylindern`,
    `Zylinder sind von 1 bis ${p.cylinders} gezählt: eine der beiden Zahlen berichtigen`,
  ],
  'engine-differs/suspect': (p) => [
    `Ergebnis „${p.observation}“: gemessen wurde für Zylinder ${p.read}, aber Zylinder ${p.suspect} hat Aussetzer`,
    takeBack(p.observation),
  ],
  'engine-differs/cylinders': (p) => [
    `Ergebnis „${p.observation}“: keinen Zylinder ${p.cylinder} hat ein Motor mit ${p.cylinders} Zylindern`,
    takeBack(p.observation),
  ],
  'test-not-applicable': (p) => [
    `„${p.test}“ kommt bei diesem Fahrzeug nicht in Frage`,
    `nötig ist die Angabe ${p.needs.map((all) => all.join(' und ')).join(', oder ')}`,
  ],
  'test-not-applicable/now': (p) => [
    `„${p.test}“ kommt bei diesem Fahrzeug nicht in Frage`,
    'die Angabe zum Fahrzeug machen, die nötig ist',
  ],
  'outcome-missing': () => ['weder ein Ergebnis noch eine Abstufung noch ein Messwert', 'genau eines davon angeben'],
  'outcome-missing/both': () => ['ein Ergebnis und eine Abstufung zugleich', 'genau eines davon angeben'],
  'outcome-missing/reading': () => [
    'ein Messwert und eine Abstufung zugleich',
    'die Abstufung folgt aus dem Messwert: weglassen',
  ],
  'outcome-contradicts-reading': (p) => [
    `die Zahl heißt nicht „${p.outcome}“${p.called.length > 0 ? `, sondern ${p.called.join(' oder ')}` : ''}`,
    'das Ergebnis weglassen oder die Zahl berichtigen',
  ],
  'likelihood-invalid': (p) => [
    `gefunden: ${formatNumber(p.value)}`,
    `Gewichte einer Abstufung liegen zwischen 0 und ${formatNumber(p.most)}`,
  ],
  'likelihood-invalid/none': () => [
    'kein Ergebnis hat ein Gewicht über 0',
    'angeben, wie stark das Gesehene für jedes Ergebnis spricht, etwa 3 zu 1',
  ],
  'evidence-impossible': () => [
    'keine Ursache dieses Modells kann hervorbringen, was festgehalten ist',
    'das Ergebnis zurücknehmen, dem Sie am wenigsten trauen; auch die Angaben zum Fahrzeug können zu viel ausschließen',
  ],
  'evidence-impossible/context': () => [
    'die Angaben zum Fahrzeug schließen jede Ursache aus',
    'eine davon zurücknehmen oder angeben, was die Ursachen voraussetzen',
  ],
  'belief-of-another-model': (p) => [
    `diese Einschätzung gehört zu einem anderen Modell: sie unterscheiden sich in „${p.id}“`,
    'beliefOf mit diesem Modell und den Angaben des Falls aufrufen',
  ],
  'row-not-one/table': (p) => [
    `Summe ${formatNumber(p.sum)}, erwartet 1`,
    'die Wahrscheinlichkeiten von allem, was sein kann, ergeben zusammen 1',
  ],
  'stakes-invalid': (p) => [
    `gefunden: ${formatNumber(p.value)}, erwartet: eine Zahl ${ranges[p.range]}`,
    `eine endliche Zahl angeben, ${ranges[p.range]}`,
  ],
};
