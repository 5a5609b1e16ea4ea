/** Words for looking further ahead: stop or test, what is open, the whole plan, what it would take, two causes at once. */
export const aheadWords = {
  open: 'Look further ahead',
  heading: 'Further ahead',
  working: 'Being worked out …',
  refused: (why: string) => `That could not be worked out: ${why}`,
  exact: 'Exact figures',

  stop: {
    heading: 'Repair now, or one more test?',
    test: (test: string, saving: string) => `One more test pays: “${test}” first saves ${saving} on average.`,
    repair: (repair: string, saving: string) =>
      `Repair now: “${repair}”. One more test would cost ${saving} more than it saves.`,
    repairNoTest: (repair: string) => `Repair now: “${repair}”. No test is left that could help.`,
    refer: 'Hand the case on: neither a test nor a repair here is worth its price.',
    now: 'Repairing now, to a confirmed repair',
    first: (test: string) => `First “${test}”, to a confirmed repair`,
    line: (cause: string) => `How likely “${cause}” must be`,
    summary: (cause: string, test: string) =>
      `Left of the first mark nothing is done about “${cause}”, right of the second it is repaired at once; in between “${test}” is worth its price.`,
    marks: {
      now: 'now',
      testing: 'test from here',
      treating: 'repair from here',
      single: 'repair from here, without the test',
    },
    tableHeads: ['Choice', 'Probability'],
    noThresholds: 'No probability of the leading cause would change what is done first.',
  },

  while: {
    heading: 'While it is open',
    none: 'Nothing is open. Open something and this shows what is worth a look behind it.',
    which: 'What is open',
    pays: 'Worth doing now',
    paysNot: 'Not worth it now',
    nothing: 'No test needs this to be open.',
    now: (price: string, later: string) => `${price} now, ${later} on another visit`,
  },

  plan: {
    heading: 'The whole plan',
    show: 'Work out the whole plan',
    cost: (expected: string) => `Costs ${expected} on average, to a confirmed repair`,
    spread: (median: string, ninety: string, worst: string) =>
      `Half of all cases cost at most ${median}, nine in ten at most ${ninety}, the worst ${worst}.`,
    gap: (share: string) => `At most ${share} dearer than the best possible plan.`,
    gapNone: 'No better plan exists, as far as this knowledge goes.',
    improving: 'A better one is being looked for …',
    reached: (chance: string) => `reached in ${chance}`,
    folded: (count: number) => (count === 1 ? 'one more step' : `${count} more steps`),
    ends: { cured: 'cured: done', 'not-cured': 'the fault stays', referred: 'handed on' },
    fromHere: (cost: string) => `${cost} from here`,
    price: (price: string) => `costs ${price}`,
    text: 'The plan as text',
    refer: 'Hand the case on',
  },

  takes: {
    heading: 'What would it take?',
    choose: 'To open',
    chooseNone: 'Choose …',
    ask: 'Work it out',
    'already-open': 'It is open already.',
    impossible: 'None of the causes behind it is possible here.',
    'already-best': (now: string, threshold: string) =>
      `It is the best next step now: its causes stand at ${now} together; from ${threshold} on it is.`,
    certain: (now: string) => `It is the best next step now: its causes stand at ${now} together.`,
    reachable: (now: string, threshold: string) =>
      `Its causes stand at ${now} together; from ${threshold} on it is the best next step.`,
    never: 'Not even if its causes were certain: something else stays better.',
    line: 'Its causes together',
    now: 'now',
    threshold: 'open from here',
    tests: 'Cheapest tests likely to tell',
    testsUnlikely: 'Tests with the best chance to tell, though less than one in two',
    testsPrice: (price: string) => `${price} together`,
    reachedTrue: (chance: string) => `If it is one of its causes, they get there in ${chance}.`,
    reachedFalse: (chance: string) => `If it is none of them, they get there all the same in ${chance}.`,
    noTests: 'No tests are left that could get it there.',
    causes: (count: number) => `Its causes (${count})`,
    summary: 'Where all causes that would be seen or cured behind it stand together, and from where on opening pays.',
    slow: 'This can take a while; close the sheet to stop it.',
  },

  pairs: {
    heading: 'Two causes at once?',
    show: 'Consider pairs of causes',
    intro: 'The same results, with every pair of causes as a possibility of its own.',
    pair: (a: string, b: string) => `${a} and ${b}`,
    table: 'Causes and pairs of causes, most likely first',
    heads: ['Cause or pair', 'Probability', 'At intake'],
    title: (label: string, chance: string) => `Most likely: “${label}”, ${chance}`,
    summary: 'Pairs are rare at intake; they lead only where no single cause explains everything seen.',
  },
};
