/** The keys of this page. A list of parts; each row is the keys and what they do. */
export const helpLabels = {
  open: 'Shortcuts',
  heading: 'Keyboard shortcuts',
  intro: 'Everything here can be done by keyboard, by finger or by mouse.',
  parts: [
    {
      title: 'Everywhere',
      rows: [
        { keys: ['Tab', 'Shift + Tab'], does: 'go to the next or previous control' },
        { keys: ['Enter', 'Space'], does: 'activate it' },
        { keys: ['Ctrl + Z'], does: 'undo the last step of the case' },
        { keys: ['Ctrl + Y', 'Ctrl + Shift + Z'], does: 'redo it' },
        { keys: ['Esc'], does: 'close a panel, leave the report' },
        { keys: ['F1'], does: 'show these shortcuts' },
      ],
    },
    {
      title: 'In the chart of the ranking',
      rows: [
        { keys: ['←', '→'], does: 'go to the previous or next step' },
        { keys: ['↑', '↓'], does: 'go to the cause above or below' },
        { keys: ['Home', 'End'], does: 'go to the first or latest step' },
        { keys: ['Enter'], does: 'stay at this step' },
        { keys: ['Esc'], does: 'back to the latest step' },
      ],
    },
  ],
};
