/** The next steps, repairs and what proves them. */
export const stepsLabels = {
  next: {
    heading: 'Next steps, best first',
    reason: 'Why this one first',
    more: (count: number, hidden: number) =>
      count === hidden ? `${count} more tests` : `${count} more tests, of ${hidden}`,
    fewer: 'Fewer tests',
    done: 'Record something already done',
    find: 'Find a test or repair',
    recorded: (what: string, came: string) => `Recorded: ${came} (${what})`,
    notFound: (words: string) => `Nothing found for “${words}”. Try another term.`,
    opens: 'Opens',
    opensNothing: 'nothing more to open',
    needs: 'Needs',
    /** While nothing can be recorded yet for the step that is proposed. */
    looking: 'Looking several steps ahead. Results can be recorded in a moment.',
    saves: (amount: string) => `saves ${amount} on average`,
    savesLess: (amount: string) => `saves ${amount}, less than it costs`,
    noSaving: 'would not change the next step',
    how: 'How',
    caution: 'Caution',
    moreCautions: (count: number) => (count === 1 ? 'One more caution' : `${count} more cautions`),
    futures: 'Possible results, and what each leads to',
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
    cannotWhich: 'What is missing? Tests that need it are not proposed until you tick it again under Settings.',
    missing: (tool: string) => `No ${tool}`,
    notHere: 'Needs equipment that is not at hand',
    notHereItem: (test: string, tools: string) => `${test}: ${tools}`,
    minutesLabel: 'time',
    priceLabel: 'price',
  },

  repair: {
    heading: 'Stop testing and repair?',
    chance: (chance: string) => `chance to fix it: ${chance}`,
    expected: (amount: string) => `${amount} expected in total if you repair in this order without any further test`,
    order: 'Full order of repairs',
    referred: (chance: string, fee: string) =>
      `With a probability of ${chance} none of these helps and the case goes to a specialist (${fee}).`,
    cured: 'Done: misfire gone',
    stayed: 'Done: misfire still there',
    curedWhat: (repair: string) => `Done: misfire gone after “${repair}”`,
    stayedWhat: (repair: string) => `Done: misfire still there after “${repair}”`,
  },

  proving: {
    heading: 'Confirm the repair',
    done: (repair: string) => `Misfire gone after “${repair}”`,
    /** `days` is 0 when the proof fits into one visit. */
    exposure: (exposure: string, minutes: string, km: number, days: number) =>
      days > 0 ? `${exposure}: ${minutes}, ${km} km, over ${days} days.` : `${exposure}: ${minutes}, ${km} km.`,
    accept: (limit: string) => `Confirmed when: ${limit}.`,
    order: 'In this order',
    step: (number: number, step: string) => `${number}. ${step}`,
  },
};
