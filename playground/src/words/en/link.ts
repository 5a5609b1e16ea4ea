/** A case shared by link. */
export const linkLabels = {
  heading: 'As a link',
  make: 'Copy a link to this case',
  copied: 'The link is copied.',
  copyYourself: 'Copy the link from here:',
  field: 'Link to this case',
  hint: 'Open the link again from the message it came in, or ask for the case as a file.',
  what: 'The link itself contains the whole case, including notes. Anyone who has the link can read it; nothing is stored elsewhere.',
  /** `letters` is how long the link is. */
  length: (letters: string) =>
    `${letters} characters long. Some messengers cut off links above 2,000: send the file instead.`,
  broken: 'The link does not contain a case that can be opened. Nothing here was changed.',
  opened: 'Opened from a link, as a separate case. The case that was open before is under Cases.',
  newer: 'It was made by another version of this page, in a form that this version cannot read.',
  damaged: 'It is damaged: cut off, or changed on the way.',
  empty: 'It is cut off: the case that should follow “#case=1.” is missing.',
  large: 'Unpacked it is far larger than any case.',
};
