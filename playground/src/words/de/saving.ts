import type { Labels } from '../t.ts';

/** Ob das Erfasste auf dem Gerät liegt, und ein Start, der nicht gelingt. */
export const savingLabels: Labels['saving'] = {
  kept: 'Auf diesem Gerät gespeichert.',
  pending: 'Wird gespeichert …',
  notKept: 'Nicht auf diesem Gerät gespeichert.',
  why: {
    refused:
      'Dieses Gerät speichert nichts: Der Browser verweigert der Seite den Speicher. Alles funktioniert, aber den Fall vor dem Verlassen als Datei sichern.',
    full: 'Dieses Gerät speichert nichts mehr: Der Speicher ist voll. Alles funktioniert, aber den Fall vor dem Verlassen als Datei sichern oder Fälle löschen, die nicht mehr gebraucht werden.',
    silent:
      'Dieses Gerät speichert bisher nichts: Der Speicher antwortet nicht. Alles funktioniert und wird gespeichert, sobald er antwortet. Wer die Seite vorher verlässt, sichert den Fall als Datei.',
  },
  reading: 'Die hier gespeicherten Fälle werden gelesen …',
  noKnowledge:
    'Das Wissen dieser Seite über Ursachen und Prüfungen ist nicht angekommen, und ohne es gibt es nichts zu zeigen. Die auf diesem Gerät gespeicherten Fälle sind sicher. Verbindung prüfen und erneut versuchen.',
  retry: 'Erneut versuchen',
};
