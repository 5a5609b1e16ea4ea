/** Words for the questions about the car and what each answer changed. */
export const intakeWords = {
  heading: 'The car',
  intro: 'All optional. Answer what you know: each answer shifts the starting point.',
  first: 'Needed before some causes can be considered',
  telling: 'These can move the ranking most',
  rest: (count: number) => `${count} more questions`,
  notStated: 'Not stated',
  why: 'Why it matters',
  opensUp: (causes: string) => `Only with this answered can these be considered: ${causes}.`,
  changed: 'It changed, at intake:',
  unchanged: 'It changes nothing: this is what the starting point assumes.',
  change: (before: string, after: string) => `${before} → ${after}`,
  answered: (count: number, all: number) => `${count} of ${all} answered`,

  askNext: 'Most worth asking now',
  couldMove: (chance: string) => `could move ${chance} of the ranking`,
  couldBringIn: (count: number) => (count === 1 ? 'brings one more cause in' : `brings ${count} more causes in`),
  couldEnable: (count: number) => (count === 1 ? 'makes one more test fit' : `makes ${count} more tests fit`),

  causesIn: (causes: string) => `Can be considered now: ${causes}.`,
  causesOut: (causes: string) => `Ruled out: ${causes}.`,
  testsIn: (tests: string) => `Tests that fit now: ${tests}.`,
  andMore: (list: string, count: number) => (count === 0 ? list : `${list} and ${count} more`),
  cost: (what: string, factor: string) => `Time and parts of “${what}”: ${factor}`,
  where: 'Where this comes from',
  multiplier: (cause: string, factor: string, low: string, high: string) =>
    `${cause}: odds ${factor} (${low} to ${high})`,
  byDefinition: (cause: string) => `${cause}: cannot be, by definition`,
  factor: (figure: string) => `× ${figure}`,
  source: (kind: string, text: string) => `${kind}: ${text}`,
  kinds: {
    published: 'Published',
    'common-practice': 'Common practice',
    judgement: 'Judgement',
    definition: 'By definition',
  },
};
