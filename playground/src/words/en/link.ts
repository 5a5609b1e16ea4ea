/** A case shared by link. */
export const link = {
  heading: 'As a link',
  make: 'Copy a link to this case',
  copied: 'The link is copied.',
  copyYourself: 'Copy the link from here:',
  field: 'Link to this case',
  hint: 'Open the link again from where it came, or ask for the case as a file.',
  what: 'The whole case, notes included, stands in the link itself. Whoever has the link can read it; nothing is stored elsewhere.',
  /** `letters` is how long the link is. */
  length: (letters: string) => `${letters} letters long. Some messengers cut links above 2,000: send the file then.`,
  broken: 'The link does not hold a case that can be opened. Nothing here was changed.',
  opened: 'Opened from a link, as a case of its own. What was open before is under Cases.',
  newer: 'It was made by another version of this page, which packs cases in a way this one does not know.',
  damaged: 'It is damaged: cut off, or changed on the way.',
  empty: 'It is cut off: the case that should follow “#case=1.” is missing.',
  large: 'It unfolds into far more than any case is.',
};
