/** The keys of this page. A list of parts; each row is the keys and what they do. */
export const help = {
  open: 'Keys',
  heading: 'Keys on this page',
  intro: 'Everything here can be done by keyboard, by finger or by mouse.',
  parts: [
    {
      title: 'Everywhere',
      rows: [
        { keys: ['Tab', 'Shift + Tab'], does: 'to the next or the previous thing that can be used' },
        { keys: ['Enter', 'Space'], does: 'use it' },
        { keys: ['Ctrl + Z'], does: 'undo the last step of the case' },
        { keys: ['Ctrl + Y', 'Ctrl + Shift + Z'], does: 'bring it back' },
        { keys: ['Esc'], does: 'close a sheet, leave the report' },
        { keys: ['F1'], does: 'show these keys' },
      ],
    },
    {
      title: 'In the picture of how the ranking moved',
      rows: [
        { keys: ['←', '→'], does: 'to the moment before or after' },
        { keys: ['↑', '↓'], does: 'to the cause above or below' },
        { keys: ['Home', 'End'], does: 'to the first or the latest moment' },
        { keys: ['Enter'], does: 'stay at this moment' },
        { keys: ['Esc'], does: 'back to the latest moment' },
      ],
    },
  ],
};
