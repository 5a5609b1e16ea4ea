/** Words for looking further ahead: stop or test, what is open, the whole plan, what it would take, two causes at once. */
export const aheadLabels = {
  open: 'Look further ahead',
  heading: 'Looking further ahead',
  working: 'Working …',
  seconds: (count: number) => `${count} s`,
  stopped: (count: number) => `Stopped after ${count} s.`,
  halt: 'Stop',
  again: 'Start again',
  refused: (why: string) => `This could not be computed: ${why}`,
  exact: 'Exact figures',

  stop: {
    heading: 'Repair now, or one more test?',
    test: (test: string, saving: string) => `One more test pays off: “${test}” first saves ${saving} on average.`,
    repair: (repair: string, saving: string) =>
      `Repair now: “${repair}”. One more test would cost ${saving} more than it saves.`,
    prove:
      'Neither: the last repair seems to have fixed it. Confirm that with a test drive first; the figures apply if the fault comes back.',
    repairNoTest: (repair: string) => `Repair now: “${repair}”. No test is left that could help.`,
    refer: 'Refer the case to a specialist: neither a test nor a repair here is worth its price.',
    now: 'Repair now: cost to a confirmed repair',
    first: (test: string) => `“${test}” first: cost to a confirmed repair`,
    line: (cause: string) => `How likely “${cause}” must be`,
    summary: (cause: string, test: string) =>
      `Left of the first mark, do nothing about “${cause}”; right of the second, repair it at once; in between, “${test}” is worth its price.`,
    marks: {
      now: 'now',
      testing: 'test from here',
      treating: 'repair from here',
      single: 'repair from here, without the test',
    },
    tableHeads: ['Choice', 'Probability'],
    noThresholds: 'What to do first does not depend on the probability of the leading cause.',
  },

  while: {
    heading: 'While it is open',
    none: 'Nothing is open. Once something is open, this shows which tests behind it are worth doing.',
    which: 'What is open',
    pays: 'Worth doing now',
    paysNot: 'Not worth it now',
    nothing: 'No test needs this to be open.',
    now: (price: string, later: string) => `${price} now, ${later} on another visit`,
  },

  plan: {
    heading: 'The whole plan',
    intro: 'What to do first, and what to do after each result. The plan improves as the search runs.',
    show: 'Compute the whole plan',
    examined: (count: number) => (count === 1 ? '1 situation examined.' : `${count} situations examined.`),
    search: 'How the search went',
    searchTitle: 'The best plan found and the least any plan can cost, as the search runs',
    searchSummary: 'The best possible plan lies between the two lines; they approach each other as the search runs.',
    searchHeads: ['Situations examined', 'Best plan so far', 'No plan costs less than'],
    upper: (cost: string) => `best plan so far: ${cost}`,
    lower: (cost: string) => `no plan costs less than ${cost}`,
    cost: (expected: string) => `Costs ${expected} on average until the repair is confirmed`,
    spread: (median: string, ninety: string, worst: string) =>
      `Half of all cases cost at most ${median}, nine in ten at most ${ninety}, the worst ${worst}.`,
    gap: (share: string) => `The best possible plan would save at most ${share} of that.`,
    gapNone: 'No better plan exists, according to this model.',
    reached: (chance: string) => `reached in ${chance}`,
    notExamined: 'Not looked into yet: this is what would be done without another test.',
    folded: (count: number) => (count === 1 ? 'one more step' : `${count} more steps`),
    ends: { cured: 'fixed: done', 'not-cured': 'the fault remains', referred: 'referred to a specialist' },
    fromHere: (cost: string) => `${cost} from here`,
    price: (price: string) => `costs ${price}`,
    text: 'The plan as text',
    refer: 'Refer the case to a specialist',
  },

  whatItTakes: {
    heading: 'When is opening worth it?',
    intro: 'How likely the causes behind something must be for opening it to become the best next step.',
    short: (now: string, threshold: string) => `now ${now}, worth it from ${threshold}`,
    best: 'best next step now',
    done: (count: number, all: number) => `${count} of ${all} answered.`,
    others: (count: number) => `Not worth opening for now (${count})`,
    'already-open': 'It is open already.',
    impossible: 'None of the causes behind it is possible here.',
    'already-best': (now: string, threshold: string) =>
      `It is the best next step now: its causes together have ${now}, and opening is worth it from ${threshold}.`,
    certain: (now: string) => `It is the best next step now: its causes together have ${now}.`,
    reachable: (now: string, threshold: string) =>
      `Its causes together have ${now}; from ${threshold} it is the best next step.`,
    never: 'Never: even if its causes were certain, another step would be better.',
    line: 'Its causes together',
    now: 'now',
    threshold: 'open from here',
    tests: 'Cheapest tests that probably decide it',
    testsUnlikely: 'Tests with the best chance of deciding it, though below one in two',
    testsPrice: (price: string) => `${price} together.`,
    reachedTrue: (chance: string) =>
      `If one of its causes is present, these tests show it with a probability of ${chance}.`,
    reachedFalse: (chance: string) => `If none is, they point to them by mistake with a probability of ${chance}.`,
    noTests: 'No remaining test could decide it.',
    unexamined: (examined: number, others: number) =>
      `${examined} sequences of tests were examined, ${others} were not: there may be a cheaper one.`,
    causes: (count: number) => `Its causes (${count})`,
    summary:
      'The probability of all causes that could be seen or repaired behind it, and from which probability opening is worth it.',
  },

  pairs: {
    heading: 'Two causes at once?',
    show: 'Consider pairs of causes',
    intro: 'The same results, with every pair of causes as a further possibility.',
    pair: (a: string, b: string) => `${a} and ${b}`,
    table: 'Causes and pairs of causes, most likely first',
    heads: ['Cause or pair', 'Probability', 'At intake'],
    title: (label: string, chance: string) => `Most likely: “${label}”, ${chance}`,
    summary: 'Pairs are rare at intake; they lead only where no single cause explains all results.',
  },
};
