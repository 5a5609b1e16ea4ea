import type { Labels } from '../t.ts';

/** The keys of this page. */
export const helpLabels: Labels['help'] = {
  open: 'Tasten',
  heading: 'Tasten auf dieser Seite',
  intro: 'Alles hier geht mit der Tastatur, mit dem Finger oder mit der Maus.',
  parts: [
    {
      title: 'Überall',
      rows: [
        { keys: ['Tab', 'Umschalt + Tab'], does: 'zum nächsten oder vorigen Bedienelement' },
        { keys: ['Eingabe', 'Leertaste'], does: 'es benutzen' },
        { keys: ['Strg + Z'], does: 'den letzten Schritt des Falls zurücknehmen' },
        { keys: ['Strg + Y', 'Strg + Umschalt + Z'], does: 'ihn wiederherstellen' },
        { keys: ['Esc'], does: 'ein Blatt schließen, den Bericht verlassen' },
        { keys: ['F1'], does: 'diese Tasten zeigen' },
      ],
    },
    {
      title: 'Im Bild, wie sich die Rangfolge bewegte',
      rows: [
        { keys: ['←', '→'], does: 'zum Augenblick davor oder danach' },
        { keys: ['↑', '↓'], does: 'zur Ursache darüber oder darunter' },
        { keys: ['Pos1', 'Ende'], does: 'zum ersten oder letzten Augenblick' },
        { keys: ['Eingabe'], does: 'bei diesem Augenblick bleiben' },
        { keys: ['Esc'], does: 'zurück zum letzten Augenblick' },
      ],
    },
  ],
};
