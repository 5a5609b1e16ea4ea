import type { Labels } from '../t.ts';

/** The list of cases, files and links. */
export const casesLabels: Labels['cases'] = {
  heading: 'Fälle',
  kept: 'Auf diesem Gerät',
  noneKept: 'Bisher nur dieser.',
  find: 'Fall suchen',
  notFound: (words) => `Kein Fall passt zu „${words}“.`,
  remove: 'Löschen',
  removeWhat: (title) => `Löschen: ${title}`,
  removed: (title) => `Gelöscht: „${title}“.`,
  putBack: 'Rückgängig',
  duplicate: 'Kopieren',
  duplicateWhat: (title) => `Kopieren: ${title}`,
  copyOf: (title) => `Kopie von ${title}`,
  rename: 'Umbenennen',
  renameWhat: (title) => `Umbenennen: ${title}`,
  newName: (title) => `Neuer Name für ${title}`,
  renameDone: 'Namen übernehmen',
  more: 'Mehr',
  moreWhat: (title) => `Umbenennen, kopieren oder löschen: ${title}`,
  current: 'jetzt offen',
  standing: (results, cause, chance) =>
    results === 0
      ? `noch kein Ergebnis; vorn: ${cause}, ${chance}`
      : `${results === 1 ? '1 Ergebnis' : `${results} Ergebnisse`}; vorn: ${cause}, ${chance}`,
  changed: (when) => `geändert ${when}`,
  demo: 'Erfundene Fälle zum Nachspielen',
  demoHint: 'Zum Üben ausgedacht: kein wirkliches Fahrzeug. Jeder läuft Ergebnis für Ergebnis ab.',
  file: 'Als Datei',
  export: 'Diesen Fall als Datei sichern',
  import: 'Falldatei öffnen',
  importHint: 'Eine Datei, die nicht lesbar ist, ändert hier nichts.',
  untitled: 'Fall ohne Namen',
  fileName: (id) => `${id}.faultodds.json`,
  private: 'Fälle bleiben auf diesem Gerät. Nichts wird irgendwohin gesendet.',
  elsewhere: 'Dieser Fall wurde in einem anderen Fenster geändert. Dies ist die aktuelle Fassung.',
  clash: (title) =>
    `Dieser Fall wurde im selben Augenblick in einem anderen Fenster geändert. Beide bleiben: Ihrer geht hier weiter als „${title}“.`,
  late: 'Die hier gespeicherten Fälle sind jetzt da: Sie sind unter Fälle aufgelistet. Der begonnene Fall bleibt offen.',
  showMore: (count) => `${count} weitere zeigen`,
  besides: (title) => `${title} (zweites Fenster)`,
};
