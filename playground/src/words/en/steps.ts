/** The next steps, repairs and what proves them. */
export const stepsWords = {
  next: {
    heading: 'Next steps, best first',
    reason: 'Why this one first',
    more: (count: number, hidden: number) =>
      count === hidden ? `${count} more tests` : `${count} more tests, of ${hidden}`,
    fewer: 'Fewer tests',
    done: 'Record something already done',
    find: 'Find a test or repair',
    recorded: (what: string, came: string) => `Recorded: ${came} (${what})`,
    notFound: (words: string) => `Nothing is called “${words}”. Try another word of the trade.`,
    opens: 'Opens',
    opensNothing: 'nothing more to open',
    needs: 'Needs',
    saves: (amount: string) => `saves ${amount} on average`,
    savesLess: (amount: string) => `saves ${amount}, less than it costs`,
    noSaving: 'would not change what to do',
    how: 'How',
    caution: 'Caution',
    moreCautions: (count: number) => (count === 1 ? 'One more caution' : `${count} more cautions`),
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
};
