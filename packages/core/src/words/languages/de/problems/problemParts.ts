import type { Found } from '../../../../errors/foundIn.ts';

/** Small pieces the German sentences about problems are made of. */
export const problemParts = {
  found: (found: Found): string => {
    switch (found.kind) {
      case 'text':
        return `„${found.text}“`;
      case 'plain':
        return found.text;
      case 'list':
        return `eine Liste mit ${found.length} ${found.length === 1 ? 'Eintrag' : 'Einträgen'}`;
      case 'object':
        return 'ein Objekt';
      case 'function':
        return 'eine Funktion';
      case 'nothing':
        return 'nichts';
    }
  },
  /** What was found where facts have a shape of their own; names of JavaScript types. */
  foundKind: (kind: string): string =>
    ({
      list: 'eine Liste',
      object: 'ein Objekt',
      string: 'ein Text',
      number: 'eine Zahl',
      boolean: 'ein Wahrheitswert',
      function: 'eine Funktion',
    })[kind] ?? kind,
  /** What a place takes, by the name of its JSON type. */
  expected: (type: string): string =>
    ({
      string: 'ein Text',
      number: 'eine Zahl',
      int: 'eine ganze Zahl',
      boolean: 'true oder false',
      array: 'eine Liste',
      object: 'ein Objekt',
      record: 'ein Objekt',
      function: 'eine Funktion',
      set: 'eine Menge',
    })[type] ?? type,
  factsPart: {
    facts: 'ein Objekt mit `context` und `observations`',
    context: 'ein Objekt, Angabe bei der Annahme zu Antwort',
    list: 'eine Liste',
    object: 'ein Objekt',
    cured: 'true oder false',
    kind: '„result“ oder „repair-tried“',
    faultActive: '„yes“, „no“ oder „unknown“',
    likelihood: 'ein Objekt, Ergebnis zu Zahl',
    number: 'eine Zahl',
    string: 'ein Text',
  },
  nearest: (id: string | undefined): string =>
    id === undefined ? 'ergänzen oder den Verweis berichtigen' : `ist „${id}“ gemeint?`,
  or: (parts: readonly string[]): string => parts.join(' oder '),
  /** Nouns of a model and a case. */
  noun: (kind: string): string =>
    ({
      access: 'Zugang',
      category: 'Kategorie',
      cause: 'Ursache',
      caution: 'Vorsichtsmaßnahme',
      distribution: 'Verteilung',
      equipment: 'Ausrüstung',
      feature: 'Angabe zum Fahrzeug',
      group: 'Gruppe',
      measure: 'Messgröße',
      mechanism: 'Mechanismus',
      model: 'Modell',
      observation: 'Beobachtung',
      outcome: 'Ergebnis',
      reading: 'Messwert',
      repair: 'Reparatur',
      source: 'Quelle',
      state: 'Zustand',
      test: 'Prüfung',
      value: 'Antwort',
    })[kind] ?? kind,
} as const;
