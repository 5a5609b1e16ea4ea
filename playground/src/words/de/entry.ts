import type { Labels } from '../t.ts';

/** Entering a result by numbers, by trouble codes, or by degree. */
export const entryLabels: Labels['entry'] = {
  ways: 'Anders eintragen',
  numbers: 'Zahlen eingeben',
  codes: 'Fehlercodes einfügen',
  monitor: 'Rohe Zählungen aus $06 einfügen',
  unsure: 'Nicht sicher, welches',

  engine: {
    cylinders: 'Zylinder',
    suspect: 'Setzt aus an',
    choose: 'Auswählen …',
    cylinder: (number) => `Zylinder ${number}`,
    short: (number) => `Zyl. ${number}`,
    needed: 'Zuerst angeben, welcher Zylinder aussetzt.',
  },

  measure: 'Was gemessen wurde',
  kind: 'Wie es notiert wurde',
  kinds: {
    'per-cylinder': 'je Zylinder',
    single: 'ein Wert',
    pair: 'zwei Werte',
    trim: 'Gemischkorrekturen',
    counts: 'Zählungen',
    'part-counts': 'Zählungen',
  },
  unit: 'Einheit',
  units: { revolutions: 'Umdrehungen', firings: 'Zündungen je Zylinder' },
  suspectMark: 'setzt aus',
  optional: 'falls bekannt',

  field: {
    value: 'Messwert',
    reference: 'Verglichen mit',
    short: 'Kurzzeitkorrektur',
    long: 'Langzeitkorrektur',
    nominal: 'Herstellerwert',
    temperature: (cylinder) => `Wärme, Zyl. ${cylinder}`,
    exposure: 'Gezählt über',
    suspect: 'Dieser Zylinder',
    partner: 'Der Tauschpartner',
    before: 'Vorher',
    after: 'Nachher',
  },
  extras: 'Herstellerwert und Temperaturen',

  says: 'Was diese Zahlen sagen',
  saysLittle: 'Zu wenig, um eines vom anderen zu unterscheiden.',
  compared: (value) => `Verglichener Wert: ${value}`,
  called: (outcome) => `Das hieße: ${outcome}`,
  whichOne: 'Die Zahl lässt offen, welches. Was haben Sie noch gesehen?',
  neither: 'Nicht nachgesehen',
  fits: { well: 'passt gut', open: 'passt weniger gut', badly: 'passt schlecht', hardly: 'passt kaum' },
  factor: (number) => `× ${number}`,
  factorTiny: '× < 0,001',
  factors: 'Genaue Zahlen',
  factorHint:
    'Wie stark die Zahlen jeden Zustand stützen. Bei Messgeräten sagt 1 nichts; bei Zählungen ist 1 die beste Übereinstimmung.',
  rule: 'Faustregel',
  verdict: { kept: 'Eingehalten', broken: 'Verletzt', 'not-computable': 'Aus dieser Eingabe nicht zu berechnen' },
  ruleLine: (verdict, text) => `${verdict}. ${text}`,
  record: 'Diese Zahlen eintragen',
  mend: 'Noch nicht eingetragen: siehe die markierten Felder unten.',

  remark: (remark, outcome) => {
    switch (remark.kind) {
      case 'set-aside':
        return `Weit über den übrigen oder bei 0, und nicht zum Vergleich genommen: Zylinder ${remark.cylinders.join(', ')}.`;
      case 'beyond-range':
        return outcome === ''
          ? 'Jenseits dessen, was das Wissen abdeckt: Es sagt nichts.'
          : `Jenseits des üblichen Bereichs: Es zählt als „${outcome}“.`;
      case 'elsewhere':
        return 'Ein anderer Zylinder setzt aus oder tat es vorher: Diese Zählungen sagen über diesen nichts.';
      case 'exposure-unknown':
        return 'Ohne zu wissen, worüber gezählt wurde, sprechen nur die Anteile.';
    }
  },

  degree: {
    about: 'Etwa',
    odds: (times) => `${times} zu 1`,
    that: 'dass es war',
    rather: 'und nicht',
    anyOther: 'etwas anderes',
    same: 'Zwei verschiedene Ausgänge wählen.',
    record: 'So eintragen',
    share: (weight, outcome) => `${weight} „${outcome}“`,
    to: ' zu ',
  },

  codesText: 'Fehlercodes, wie das Auslesegerät sie zeigt',
  codesPlaceholder: 'P0301, P0351 pending',
  complete: 'Das sind alle Codes, die in den Steuergeräten stehen',
  bank: 'Bank dieses Zylinders',
  bankUnknown: 'Unbekannt',
  bankNumber: (bank) => `Bank ${bank}`,
  malformed: 'Kein Code',
  malformedAt: (text, at, hint) => `„${text}“ (Zeichen ${at}): ${hint}`,
  becomes: 'Wird eingetragen',
  becomesLine: (test, outcome) => `${test}: ${outcome}`,
  already: 'schon eingetragen',
  keptCodes: 'Behalten, sagen hier aber nichts',
  keptLine: (code, meaning, reason) => `${code} (${meaning}): ${reason}`,
  nothingRead: 'Kein Code hier spricht über diesen Zylinder.',
  recordCodes: (count) => (count === 1 ? 'Dieses Ergebnis eintragen' : `Diese ${count} Ergebnisse eintragen`),
  reason: {
    'says-nothing-here': 'sagt nichts über diesen Fehler',
    circumstance: 'gut zu wissen, weist aber auf keine Ursache',
    'other-cylinder': 'betrifft einen anderen Zylinder',
    'other-bank': 'betrifft die andere Bank',
    'cylinder-not-told': 'sagt nicht, welcher Zylinder',
    'beyond-the-engine': 'diesen Zylinder hat der Motor nicht',
    contradictory: 'ein anderer Code der Liste sagt das Gegenteil',
  },
  codeRemark: ({ kind, codes }) => {
    const list = codes.join(', ');
    switch (kind) {
      case 'coil-order-assumed':
        return `${list}: angenommen, dass Spule A Zylinder 1 zündet, B Zylinder 2 und so fort. Die Reihenfolge legt der Hersteller fest: nachsehen.`;
      case 'suspect-not-named':
        return `${list} nennen andere Zylinder und keiner diesen: Ist es der richtige?`;
      case 'counts-doubtful':
        return `${list}: Das Kurbelwellenmuster ist nicht gelernt; bis dahin sind Aussetzerzählungen zweifelhaft.`;
    }
  },

  hexText: 'Antwort auf Dienst $06, hexadezimal',
  hexPlaceholder: '46 A2 0C 24 00 05 00 00 FF FF',
  covers: 'Welche Zählungen',
  coversNames: { 'last-cycle': 'diese oder die letzte Fahrt', average: 'Mittel über Fahrten' },
  byte: (at, message, hint) => `Byte ${at}: ${message}; ${hint}`,
  decoded: (cylinder, count) => `Zylinder ${cylinder}: ${count}`,
  decodedHead: 'Gezählte Aussetzer',
  noCounts: 'Keine Aussetzerzählungen darin gefunden.',
};
