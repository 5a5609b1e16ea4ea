import { aheadLabels } from './en/ahead.ts';
import { casesLabels } from './en/cases.ts';
import { doubtLabels } from './en/doubt.ts';
import { entryLabels } from './en/entry.ts';
import { helpLabels } from './en/help.ts';
import { savingLabels } from './en/saving.ts';
import { intakeLabels } from './en/intake.ts';
import { linkLabels } from './en/link.ts';
import { numberLabels } from './en/numbers.ts';
import { offlineLabels } from './en/offline.ts';
import { reportLabels } from './en/report.ts';
import { stepsLabels } from './en/steps.ts';
import { shiftLabels } from './en/shift.ts';

/** Words of the screen, by place. Sentences about belief and advice come from `@faultodds/core/words`.
 * Notes for translators: functions receive finished phrases (a chance such as "31 %", a price such as "70 units"); order them freely. */
export const englishLabels = {
  /** Language tag, for the page and for how numbers and dates are written. */
  code: 'en',
  /** Where room is short: beyond one in a thousand only the side is said. */
  rare: '< 0.1%',
  nearlySure: '> 99.9%',
  /** Name of the project, never translated. */
  name: 'faultodds',
  tagline: 'A misfire on one cylinder: where it most likely comes from, and what to do next.',

  nav: {
    label: 'Parts of this page',
    now: 'Now',
    next: 'Next',
    shift: 'History',
    notes: 'Notes',
    car: 'Car',
  },

  bar: {
    undo: 'Undo',
    redo: 'Redo',
    cases: 'Cases',
    setup: 'Settings',
    theme: (now: string) => `Light or dark: ${now}`,
    themes: { auto: 'same as device', light: 'light', dark: 'dark' },
    title: 'Name of this case',
    newCase: 'New case',
  },

  now: {
    heading: 'Most likely now',
    was: (chance: string) => `at intake ${chance}`,
    next: 'Best next step',
    reason: 'What changed it last',
    show: 'Show how',
    describe: 'Describe the car: every answer counts',
    record: 'Record what has already been done',
  },

  entry: entryLabels,

  ...stepsLabels,

  doubt: doubtLabels,

  numbers: numberLabels,

  ahead: aheadLabels,

  notes: {
    heading: 'Recorded',
    none: 'Nothing yet. Record what has already been done: replaced parts count as evidence.',
    showEarlier: (count: number) => `Show ${count} earlier`,
    retract: 'Take back',
    retractWhat: (what: string, outcome: string) => `Take back: ${what}, ${outcome}`,
    active: { yes: '', no: 'misfire not present', unknown: 'not sure the misfire was present' },
    unclear: 'not clear-cut',
    cured: 'misfire gone',
    stayed: 'misfire still there',
    open: 'Open now',
    openHint: 'What is open costs nothing more to reach: do cheap checks there now.',
    noneOpen: 'Nothing is open.',
    close: 'Mark as closed',
    closeWhat: (what: string) => `Mark as closed: ${what}`,
    add: 'Something else is open',
    choose: 'Choose …',
    note: 'Note',
    notePlaceholder: 'Anything worth remembering',
    addNote: 'Add note',
    warnings: 'Notes on these results',
  },

  car: intakeLabels,

  ...shiftLabels,

  cases: casesLabels,

  saving: savingLabels,

  link: linkLabels,

  help: helpLabels,

  offline: offlineLabels,

  report: reportLabels,

  replay: {
    label: 'Replay of an invented case',
    invented: 'Invented case',
    step: (step: number, all: number) => `${step} of ${all} recorded`,
    start: 'At intake',
    back: 'Back',
    forward: 'Next result',
    all: 'End',
    leave: 'Continue from here myself',
    next: (test: string) => `Next: ${test}`,
    cause: (label: string) => `The cause was: ${label}`,
  },

  setup: {
    heading: 'Settings',
    prices: 'Prices',
    units: 'Units',
    pressure: 'Pressure unit',
    unitsHint: 'Selected first wherever you enter a pressure; you can still choose another unit there.',
    chosenOnce: 'Prices and equipment apply to this case and to every new one.',
    looks: 'Appearance',
    language: 'Language',
    /** Said where this language is not that of the knowledge; empty in English. */
    knowledgeNote: '',
    currency: 'Currency',
    currencyHint: 'A code such as EUR or USD',
    labour: 'Labour per hour',
    parts: 'Parts factor',
    partsHint: 'What one unit of parts costs in your currency',
    needless: 'Needless opening',
    needlessHint: (amount: string) =>
      `What opening the engine for nothing costs you beyond its price: time, risk, trust. It only weighs when steps are chosen. Empty: ${amount}, a judgement`,
    needlessWrong: 'Needless opening: enter a number, zero or more',
    apply: 'Use these prices',
    equipment: 'Equipment at hand',
    equipmentHint: 'Tests that need equipment you have not ticked are not proposed.',
    all: 'Everything at hand',
    common: 'Only the usual tools',
    numberWrong: (label: string) => `${label}: enter a number above zero`,
  },

  dialog: {
    close: 'Close',
  },

  engines: {
    show: 'Show as 1000 engines',
    title: (cause: string, before: string, after: string) => `“${cause}”: ${before} of 1000 before, ${after} after`,
    summary: 'Each dot is one engine like this one. Filled dots have the cause.',
    before: (count: string) => `before: ${count} of 1000`,
    after: (count: string) => `after: ${count} of 1000`,
    none: 'fewer than 1',
    all: 'more than 999',
    tableCaption: 'Of 1000 engines like this, how many have each cause',
    heads: ['Cause', 'before', 'after'],
  },

  figure: {
    asTable: 'Show as a table',
  },

  problem: {
    import: (file: string) => `“${file}” cannot be opened. Nothing here was changed.`,
    notJson: 'It is not a JSON file: it is cut off, or another kind of file.',
    refused: 'That could not be recorded. Nothing was changed.',
    kept: 'A case saved on this device is damaged and was not opened.',
    close: 'Close this message',
    more: (count: number) => `and ${count} more`,
  },

  said: {
    recorded: (what: string, leader: string, chance: string) => `Recorded: ${what}. Now leading: ${leader}, ${chance}`,
    undone: (leader: string, chance: string) => `Undone. Now leading: ${leader}, ${chance}`,
    redone: (leader: string, chance: string) => `Redone. Now leading: ${leader}, ${chance}`,
    opened: (title: string) => `Opened: ${title}`,
  },
};
