import { cases } from './en/cases.ts';
import { doubtWords } from './en/doubt.ts';
import { entryWords } from './en/entry.ts';
import { intakeWords } from './en/intake.ts';
import { link } from './en/link.ts';
import { offline } from './en/offline.ts';
import { report } from './en/report.ts';

/** Words of the screen, by place. Sentences about belief and advice come from `@faultodds/core/words/en`.
 * Notes for translators: functions receive finished phrases (a chance such as "31 %", a price such as "70 units"); order them freely. */
export const t = {
  /** Language tag, for the page and for how numbers and dates are written. */
  code: 'en',
  /** Name of the project, never translated. */
  name: 'faultodds',
  tagline: 'A misfire on one cylinder: where it most likely comes from, and what to do next.',

  nav: {
    label: 'Parts of this page',
    now: 'Now',
    next: 'Next',
    shift: 'Shift',
    notes: 'Notes',
    car: 'Car',
  },

  bar: {
    undo: 'Undo',
    redo: 'Redo',
    cases: 'Cases',
    setup: 'Set-up',
    theme: (now: string) => `Light or dark: ${now}`,
    themes: { auto: 'as the device', light: 'light', dark: 'dark' },
    title: 'Name of this case',
    newCase: 'New case',
  },

  now: {
    heading: 'Most likely now',
    was: (chance: string) => `at intake ${chance}`,
    next: 'Best next step',
    reason: 'Why it moved last',
    show: 'Show how',
    describe: 'Describe the car: every answer counts',
  },

  next: {
    heading: 'Next steps, best first',
    more: (count: number, hidden: number) =>
      count === hidden ? `${count} more tests` : `${count} more tests, of ${hidden}`,
    fewer: 'Fewer tests',
    done: 'Record something already done',
    find: 'Find a test or repair',
    notFound: (words: string) => `Nothing is called “${words}”. Try another word of the trade.`,
    opens: 'Opens',
    opensNothing: 'nothing more to open',
    needs: 'Needs',
    saves: (amount: string) => `saves ${amount} on average`,
    savesLess: (amount: string) => `saves ${amount}, less than it costs`,
    noSaving: 'would not change what to do',
    how: 'How',
    caution: 'Caution',
    futures: 'What you may see, and where it leads',
    futuresHint: 'Choose what you saw to record it.',
    thenCost: (amount: string) => `${amount} from there to a confirmed repair`,
    /** Stands before the outcome, for screen readers. */
    recordBefore: 'Record: ',
    active: 'Was the misfire present during the test?',
    activeWhy: 'This test only counts in full while the misfire is there.',
    activeYes: 'Yes',
    activeNo: 'No',
    activeUnknown: 'Not sure',
    cannot: 'Can’t do that here',
    cannotWhich: 'What is missing? It stays off the list until you tick it again under Set-up.',
    missing: (tool: string) => `No ${tool}`,
    notHere: 'Needs equipment that is not at hand',
    notHereItem: (test: string, tools: string) => `${test}: ${tools}`,
    minutesLabel: 'time',
    priceLabel: 'price',
  },

  entry: entryWords,

  doubt: doubtWords,

  repair: {
    heading: 'Stop testing and repair?',
    chance: (chance: string) => `cures it in ${chance}`,
    expected: (amount: string) => `${amount} expected in all, if you repaired in this order without any further test`,
    order: 'The whole order of repairs',
    referred: (chance: string, fee: string) =>
      `In ${chance} none of these helps and the case goes to a specialist (${fee}).`,
    cured: 'Done: misfire gone',
    stayed: 'Done: misfire stays',
    curedWhat: (repair: string) => `Done: misfire gone after “${repair}”`,
    stayedWhat: (repair: string) => `Done: misfire stays after “${repair}”`,
  },

  proving: {
    heading: 'Prove the repair',
    done: (repair: string) => `Misfire gone after “${repair}”`,
    /** `days` is 0 when the proof fits into one visit. */
    exposure: (exposure: string, minutes: string, km: number, days: number) =>
      days > 0 ? `${exposure}: ${minutes}, ${km} km, over ${days} days.` : `${exposure}: ${minutes}, ${km} km.`,
    accept: (limit: string) => `Proved when: ${limit}.`,
    order: 'In this order',
    step: (number: number, step: string) => `${number}. ${step}`,
  },

  shift: {
    heading: 'How the ranking moved',
    even: 'Even scale',
    stretched: 'Rare causes enlarged',
    scale: 'Height of the picture',
    save: 'Save the picture as',
    saveAs: (kind: string) => `Save the picture as ${kind}`,
    fileName: (id: string) => `${id}-shift`,
    legendLead: 'Each column is one thing learned, each line one cause, height is probability.',
    tableCaption: 'Probability of each cause after every observation',
    tableCause: 'Cause',
  },

  rankShift: {
    columns: 'Moments of this case: left and right arrows move between them, up and down between causes',
    point: (cause: string, chance: string, moment: string) => `${cause}: ${chance}, ${moment}`,
    earlier: (count: number) => `◂ ${count} earlier`,
    later: (count: number) => `${count} later ▸`,
    anyMark: 'any',
    any: 'any such engine',
    carMark: 'car',
    car: 'this car at intake',
    result: (number: number, test: string, outcome: string) => `${number}: ${test}: ${outcome}`,
    short: (test: string, outcome: string) => `${test}: ${outcome}`,
    spoken: (moment: string, leader: string, chance: string) => `${moment}. Leading: ${leader}, ${chance}`,
    others: (count: number, ceiling: string) =>
      count === 1 ? `Grey: one other cause, at ${ceiling}` : `Grey: ${count} other causes, none above ${ceiling}`,
    leads: (cause: string, chance: string) => `“${cause}” leads with ${chance}`,
    ledBefore: (cause: string, chance: string, before: string, beforeChance: string) =>
      `“${cause}” leads with ${chance}; at intake “${before}” led with ${beforeChance}`,
    rose: (cause: string, chance: string, before: string) =>
      `“${cause}” leads with ${chance}, from ${before} at intake`,
  },

  moment: {
    result: (number: number, what: string) => `${number}. ${what}`,
    any: 'Any such engine',
    anyText:
      'Before anything is known of this car: how often each cause is behind a persistent misfire on one cylinder.',
    car: 'This car, at intake',
    carText: 'After the answers under “The car”, before any test.',
    cause: 'Cause',
    before: 'before',
    after: 'after',
    weight: 'weight',
    seen: 'would show this',
    seenHint:
      'Weight in decibans: ten multiply the odds by ten. “Would show this”: how often an engine with that cause gives this result.',
    retract: 'Take this result back',
  },

  why: {
    heading: 'Why this cause?',
    title: (cause: string, chance: string) => `What speaks for and against “${cause}” (${chance})`,
    choose: 'Cause',
    summary:
      'Each bar is one result: to the right it speaks for this cause, to the left against it. Ten decibans multiply the odds by ten.',
    nothing: 'Nothing is recorded yet that could speak for or against it.',
    tableCaption: 'Weight of evidence of each result for this cause',
    heads: ['Result', 'Weight', 'Before', 'After'],
    intake: 'At intake',
    nowRow: 'Now',
    speaksFor: (weight: string) => `${weight} for`,
    speaksAgainst: (weight: string) => `${weight} against`,
    saysNothing: 'says nothing',
    excludes: 'excludes it',
    onlyThis: 'leaves only this',
    row: (mark: string, label: string) => `${mark}. ${label}`,
    feels: 'The driver notices',
    drivenOn: 'If driven on',
  },

  notes: {
    heading: 'Recorded',
    none: 'Nothing yet. Record what was already done: parts replaced count as evidence.',
    retract: 'Take back',
    retractWhat: (what: string, outcome: string) => `Take back: ${what}, ${outcome}`,
    active: { yes: '', no: 'misfire not present', unknown: 'not sure the misfire was present' },
    unclear: 'not clear-cut',
    cured: 'misfire gone',
    stayed: 'misfire stays',
    open: 'Open now',
    openHint: 'Already open costs nothing more: look at what is cheap while you are there.',
    noneOpen: 'Nothing is open.',
    close: 'Closed again',
    closeWhat: (what: string) => `Closed again: ${what}`,
    add: 'Something else is open',
    choose: 'Choose …',
    note: 'Note',
    notePlaceholder: 'Anything worth remembering',
    addNote: 'Add note',
    warnings: 'Worth knowing about these results',
  },

  car: intakeWords,

  cases,

  link,

  offline,

  report,

  replay: {
    label: 'Replay of an invented case',
    invented: 'Invented case',
    step: (step: number, all: number) => `${step} of ${all} recorded`,
    start: 'At intake',
    back: 'Back',
    forward: 'Next result',
    all: 'End',
    leave: 'Go on by myself',
    next: (test: string) => `Next: ${test}`,
    cause: (label: string) => `The cause was: ${label}`,
  },

  setup: {
    heading: 'Set-up',
    prices: 'Prices here',
    looks: 'Looks',
    currency: 'Currency',
    currencyHint: 'A code such as EUR or USD',
    labour: 'Labour per hour',
    parts: 'Parts factor',
    partsHint: 'How many of your currency one unit of parts costs',
    apply: 'Use these prices',
    equipment: 'Equipment at hand',
    equipmentHint: 'What is not ticked makes tests that need it step back.',
    all: 'Everything at hand',
    common: 'Only the usual tools',
    numberWrong: (label: string) => `${label}: a number above zero, please`,
  },

  dialog: {
    close: 'Close',
  },

  engines: {
    show: 'Drawn as 1000 engines',
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
    asTable: 'The same as a table',
  },

  problem: {
    import: (file: string) => `“${file}” cannot be opened. Nothing here was changed.`,
    notJson: 'It is not a JSON file: it is cut off, or another kind of file.',
    refused: 'That could not be recorded. Nothing was changed.',
    kept: 'A case kept on this device is damaged and was left aside.',
    store: 'This browser does not let the page keep cases: save the case as a file before you leave.',
    close: 'Close this message',
    more: (count: number) => `and ${count} more`,
  },

  said: {
    recorded: (what: string, leader: string, chance: string) => `Recorded: ${what}. Now leading: ${leader}, ${chance}`,
    undone: (leader: string, chance: string) => `Undone. Now leading: ${leader}, ${chance}`,
    redone: (leader: string, chance: string) => `Brought back. Now leading: ${leader}, ${chance}`,
    opened: (title: string) => `Opened: ${title}`,
  },
};
