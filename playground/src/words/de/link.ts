import type { Labels } from '../t.ts';

/** A case shared by link. */
export const linkLabels: Labels['link'] = {
  heading: 'Als Link',
  make: 'Link zu diesem Fall kopieren',
  copied: 'Der Link ist kopiert.',
  copyYourself: 'Den Link von hier kopieren:',
  field: 'Link zu diesem Fall',
  hint: 'Den Link noch einmal von dort öffnen, wo er herkam, oder um den Fall als Datei bitten.',
  what: 'Der Link selbst enthält den ganzen Fall samt Notizen. Wer den Link hat, kann ihn lesen; sonst wird nichts abgelegt.',
  length: (letters) =>
    `${letters} Zeichen lang. Manche Nachrichtendienste kürzen Links über 2.000: dann die Datei schicken.`,
  broken: 'Der Link enthält keinen Fall, der sich öffnen lässt. Hier wurde nichts geändert.',
  opened: 'Aus einem Link geöffnet, als eigener Fall. Was vorher offen war, steht unter Fälle.',
  newer: 'Er stammt von einer anderen Fassung dieser Seite, in einer Form, die diese nicht lesen kann.',
  damaged: 'Er ist beschädigt: abgeschnitten oder unterwegs verändert.',
  empty: 'Er ist abgeschnitten: Der Fall, der auf „#case=1.“ folgen müsste, fehlt.',
  large: 'Entpackt wäre er weit größer als jeder Fall.',
};
