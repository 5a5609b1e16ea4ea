/** Words for the questions about the car and what each answer changed. */
export const intakeLabels = {
  heading: 'The car',
  intro: 'All optional. Answer what you know: each answer shifts the starting point.',
  engine: 'The engine',
  engineHint: 'Saved with the case: readings of several cylinders and trouble codes are checked against it.',
  first: 'Needed before some causes can be considered',
  telling: 'These can change the ranking most',
  rest: (count: number) => `${count} more questions`,
  notStated: 'Not stated',
  why: 'Why it matters',
  opensUp: (causes: string) => `These are considered only once this is answered: ${causes}.`,
  changed: 'What this answer changed at intake:',
  unchanged: 'It changes nothing: this answer is assumed from the start.',
  change: (before: string, after: string) => `${before} → ${after}`,
  answered: (count: number, all: number) => `${count} of ${all} answered`,

  askNext: 'Most useful to ask now',
  couldMove: (chance: string) => `could change the ranking by ${chance}`,
  couldBringIn: (count: number) =>
    count === 1 ? 'makes one more cause possible' : `makes ${count} more causes possible`,
  couldEnable: (count: number) =>
    count === 1 ? 'makes one more test applicable' : `makes ${count} more tests applicable`,

  causesIn: (causes: string) => `Now possible: ${causes}.`,
  causesOut: (causes: string) => `Ruled out: ${causes}.`,
  testsIn: (tests: string) => `Tests that now apply: ${tests}.`,
  andMore: (list: string, count: number) => (count === 0 ? list : `${list} and ${count} more`),
  cost: (what: string, factor: string) => `Time and parts of “${what}”: ${factor}`,
  where: 'Where these numbers come from',
  multiplier: (cause: string, factor: string, low: string, high: string) =>
    `${cause}: odds ${factor} (${low} to ${high})`,
  byDefinition: (cause: string) => `${cause}: impossible by definition`,
  factor: (figure: string) => `× ${figure}`,
  source: (kind: string, text: string) => `${kind}: ${text}`,
  kinds: {
    published: 'Published',
    'common-practice': 'Common practice',
    judgement: 'Judgement',
    definition: 'By definition',
  },
};
