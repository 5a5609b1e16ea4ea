import type { Language } from '../language.ts';
import { plural } from '../../plural.ts';

/** The sentences in German, by the keys of English. Labels come from the model in its own language and stand in quotation marks. */
export const messages: Language['messages'] = {
  bothCauses: (p) => `${p.first} und ${p.second}`,
  engine: (p) => `Zylinder ${p.suspect} von ${p.cylinders} hat Aussetzer`,
  engineOnBank: (p) => `${p.engine}, Bank ${p.bank}`,
  result: (p) => (p.test.endsWith('?') ? `${p.test} ${p.outcome}` : `${p.test}: ${p.outcome}`),
  resultByDegree: (p) => `${p.test}: abgestuft, ${p.shares}`,
  share: (p) => `„${p.outcome}“ ${p.weight}`,
  sharesTogether: (shares) => shares.join(' zu '),
  resultByNumbers: (p) => `${p.test}: ${p.numbers}`,
  numbersAndOutcome: (p) => `${p.numbers}, ${p.outcome}`,
  onCylinders: (p) => `${p.value} an Zylinder ${p.suspect}, ${p.others} an den übrigen`,
  onCylinderAlone: (p) => `${p.value} an Zylinder ${p.suspect}`,
  range: (p) => `${p.low} bis ${p.high}`,
  against: (p) => `${p.value} gegenüber ${p.reference}`,
  trims: (p) => `kurzfristig ${p.short}, langfristig ${p.long}`,
  counted: (p) => `${p.count} Aussetzer an Zylinder ${p.suspect}, ${p.others} an allen übrigen zusammen`,
  beforeAfter: (p) => `${p.before} Aussetzer vorher, ${p.after} nachher`,
  swapped: (p) => `${p.before} Aussetzer vorher; nachher ${p.after} an diesem Zylinder und ${p.partner} am anderen`,
  whileAsleep: (heading) => `${heading} (während der Fehler nicht da war)`,
  perhapsAsleep: (heading) => `${heading} (unbekannt, ob der Fehler da war)`,
  repairHelped: (p) => `„${p.repair}“ versucht: Der Aussetzer ist weg`,
  repairDidNotHelp: (p) => `„${p.repair}“ versucht: Der Aussetzer bleibt`,

  moved: (p) => `Von 1000 solchen Motoren hatten ${p.before} vor diesem Ergebnis „${p.cause}“ und ${p.after} danach.`,
  hardlyMoved: (p) =>
    `Es bewegt sich kaum etwas: Von 1000 solchen Motoren hatten ${p.after} vor und nach diesem Ergebnis „${p.cause}“.`,
  alsoMoved: (p) => `„${p.cause}“ ging von ${p.before} auf ${p.after}.`,
  speaksFor: (p) => `Das Ergebnis ist mit dieser Ursache ${p.times} so wahrscheinlich wie mit jeder anderen.`,
  speaksAgainst: (p) => `Das Ergebnis ist mit jeder anderen Ursache ${p.times} so wahrscheinlich wie mit dieser.`,
  speaksHardly: () => 'Das Ergebnis ist mit dieser Ursache etwa so wahrscheinlich wie mit jeder anderen.',
  excludesOthers: () => 'Keine andere Ursache bringt dieses Ergebnis hervor.',
  excludesIt: () => 'Diese Ursache kann das Ergebnis nicht hervorbringen.',
  saysNothing: () => 'Der Fehler war nicht da; über seine Ursache sagt das nichts.',
  movesNothing: () => 'Das bewegt nichts.',

  withoutItTheSame: (p) => `Ohne dieses Ergebnis läge „${p.cause}“ genauso vorn, mit ${p.now}.`,
  withoutItSameLeader: (p) => `Ohne dieses Ergebnis läge „${p.cause}“ ebenfalls vorn, mit ${p.without} statt ${p.now}.`,
  withoutItOtherLeader: (p) =>
    `Ohne dieses Ergebnis läge „${p.cause}“ vorn, mit ${p.without}; jetzt ist es „${p.leader}“ mit ${p.now}.`,

  bestIsLook: (p) =>
    `Als Nächstes: „${p.test}“, ${p.price}, ${p.minutes}. Das liegt auf dem Weg zu „${p.repair}“: erst das Teil ansehen, dann ein neues kaufen.`,
  bestIsTest: (p) =>
    `Als Nächstes: „${p.test}“, ${p.price}, ${p.minutes}. Sofort zu reparieren würde im Mittel ${p.repairNow} kosten, mit dieser Prüfung zuvor ${p.withIt}, ihr Preis eingerechnet: Sie spart ${p.saving}.`,
  bestIsRepair: (p) =>
    `Als Nächstes: reparieren. „${p.repair}“, ${p.price}, ${p.minutes}; hilft mit einer Wahrscheinlichkeit von: ${p.cures}.`,
  thenRepair: (p) => `Bleibt der Aussetzer, folgt „${p.repair}“.`,
  thenReferral: () => 'Bleibt der Aussetzer, den Fall an Spezialisten abgeben.',
  bestIsReferral: (p) =>
    `Als Nächstes: den Fall an Spezialisten abgeben. Hier lohnt sich keine Prüfung oder Reparatur mehr; das Abgeben ist mit ${p.fee} angesetzt.`,
  bestIsProof: (p) =>
    `Als Nächstes: die Reparatur bestätigen. „${p.repair}“ scheint geholfen zu haben. ${p.exposure}: ${p.minutes}, ${p.km}${p.days > 0 ? `, an ${p.days} Tagen` : ''}. Bestätigt, wenn: ${p.accept}. Kommt der Aussetzer wieder, ist er einzutragen; die Schritte unten gelten für diesen Fall.`,
  expectedCost: (p) => `Von hier bis zur bestätigten Reparatur: im Mittel ${p.cost}.`,
  opens: (p) => `Dafür zu öffnen: ${p.access}.`,
  opensNothing: () => 'Dafür ist nichts weiter zu öffnen.',

  testingPays: (p) => `Prüfen lohnt sich noch: „${p.test}“ spart ${p.saving} mehr, als es kostet.`,
  testingStops: (p) =>
    `Nicht weiter prüfen: Auch die beste verbleibende Prüfung, „${p.test}“, kostet ${p.price} und spart nur ${p.saves}.`,
  testingSavesNothing: () =>
    'Nicht weiter prüfen: Kein Ergebnis einer verbleibenden Prüfung würde etwas am Vorgehen ändern.',
  nothingToTest: () => 'Nicht weiter prüfen: Es ist keine Prüfung übrig, die hier in Frage kommt.',

  testSaves: (p) => `${p.price}, ${p.minutes}; spart ${p.saving} mehr, als es kostet`,
  inOneGo: (p) =>
    `In einem Zug, ${p.price}, ${p.minutes} zusammen: ${p.before === '' ? 'dies' : `zuerst ${p.before}, dann dies`}${p.after === '' ? '' : `, danach ${p.after}`}.`,
  onceMore: (p) =>
    `Falls der Fehler dabei schläft (${p.chance}): hervorrufen und noch einmal, ${p.price}, ${p.minutes}`,
  thenPerhaps: (p) => `Falls sich etwas zeigt (${p.chance}): ${p.price} mehr für „${p.test}“`,
  aheadDiffers: (p) =>
    `Mehrere Schritte voraus: zuerst ${p.best}. Das spart im Mittel ${p.saving} gegenüber dem, was einen Schritt voraus am besten aussieht: ${p.oneStep}.`,
  aheadAgrees: () => 'Auch mehrere Schritte voraus ist das der beste Schritt.',
  nowBetter: (p) => `Inzwischen um ${p.by} besser: ${p.best}`,
  beginsDearer: (p) => `damit zu beginnen kostet ${p.more} mehr`,
  beginsAlike: () => 'damit zu beginnen kostet etwa gleich viel',
  handingOn: () => 'an einen Spezialisten abgeben',
  countsNeedless: (p) =>
    `Der Motor wird dafür vielleicht umsonst geöffnet: Über den Preis hinaus zählt das ${p.counted}`,
  testCosts: (p) => `${p.price}, ${p.minutes}; kostet ${p.loss} mehr, als es spart`,

  needsEquipment: (p) => `„${p.test}“ braucht, was nicht zur Hand ist: ${p.missing}.`,
  notApplicable: (p) => `„${p.test}“ kommt nur in Frage, wenn dies so beantwortet ist: ${p.missing}.`,
  nothingToFollow: (p) => `„${p.test}“ sieht genauer hin, wo ${p.looks} etwas zeigte: Zuerst muss sich etwas zeigen.`,
  alreadyDone: (p) => `„${p.test}“ ist erledigt.`,
  engineApart: (p) => `„${p.test}“ geht erst wieder, wenn der Motor zusammengebaut ist; offen ist ${p.open}.`,
  sameQuestion: (p) => `„${p.test}“ fragt, was ${p.by} schon beantwortet hat.`,

  pairSameQuestion: (p) =>
    `${p.items} stellen dieselbe Frage${inBrackets(p.shared)}: Zusammen zählen sie kaum mehr als eines.`,
  pairSameFact: (p) =>
    `${p.items} sagen dasselbe${inBrackets(p.shared)}, und es zählt doppelt: Nur eines davon eingeben.`,
  pairSharedError: (p) =>
    `Ein Versehen kann ${p.items} zugleich verfälschen${inBrackets(p.shared)}: Das zweite bestätigt das erste weniger, als die Rangfolge daraus macht.`,
  repeated: (p) =>
    `„${p.test}“ wurde ${p.times}-mal gemacht: Eine Wiederholung zählt nur für das, was der erste Durchgang nicht sagte.`,
  asleep: (p) => `„${p.test}“ wurde gemacht, während der Fehler nicht da war: Es sagt nichts.`,
  lookMissing: (p) =>
    `„${p.test}“ ist eingetragen, aber nicht, was es genauer ansieht: Zuerst eintragen, was zu sehen war (${p.looks}).`,

  madeWithOtherVersion: (p) =>
    `Dieser Fall entstand mit ${p.made}; hier ist ${p.here}. Was damals wahrscheinlich war, muss es heute nicht mehr sein.`,
  modelVersion: (p) => `Modell „${p.model}“, Version ${p.version}`,
  madeWithOtherContents: (p) =>
    `Dieser Fall entstand mit Modell „${p.model}“, Version ${p.version}, als darin andere Zahlen oder Texte standen (${p.made} damals, ${p.here} jetzt). Was damals wahrscheinlich war, muss es heute nicht mehr sein.`,
  causeUnknown: (p) => `Die Ursache, die dieser Fall nennt, „${p.cause}“, kennt dieses Modell nicht.`,
  unplaced: (p) =>
    `${plural('de', p.count, { one: 'Ein Eintrag hat', other: `${p.count} Einträge haben` })} in diesem Modell keinen Platz und ${plural('de', p.count, { one: 'zählt', other: 'zählen' })} nicht mit: ${p.items}${p.more > 0 ? `; und ${p.more} weitere` : ''}. ${plural('de', p.count, { one: 'Er bleibt', other: 'Sie bleiben' })} im Fall erhalten.`,
  unplacedItem: (p) => `„${p.what}“ (${p.message}; ${p.hint})`,

  count: (engines) => (engines < 1 ? 'weniger als 1' : engines > 999 ? 'mehr als 999' : String(engines)),
  quoted: (label) => `„${label}“`,
  inTurn: (parts) => parts.join(', dann '),
  or: (parts) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} oder ${parts.at(-1)}`),
  and: (parts) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} und ${parts.at(-1)}`),
};

function inBrackets(text: string): string {
  return text === '' ? '' : ` (${text})`;
}
