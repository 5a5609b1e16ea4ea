import { plural } from '../../plural.ts';

/** The words of a written plan. Money and probabilities arrive formatted. */
export const planWords = {
  expected: (p: { cost: string }): string => `Expected cost ${p.cost}`,
  /** The same where a better plan may exist. */
  expectedWithGap: (p: { cost: string; gap: string }): string =>
    `Expected cost ${p.cost}, at most ${p.gap} of it above the best possible plan`,
  spread: (p: { median: string; ninetieth: string; worst: string }): string =>
    `Half of the time up to ${p.median}, 9 times in 10 up to ${p.ninetieth}, at worst ${p.worst}`,
  /** Steps that follow but are not written out. */
  folded: (count: number): string => `… ${count} more ${plural('en', count, { one: 'step', other: 'steps' })}`,
  /** Beside a step: whether a test would be worth its price there is not known yet. */
  notExamined: 'not looked into yet',
  /** How a step can end that is no test, by the outcome's id. */
  ends: { cured: 'fixed', 'not-cured': 'the fault remains', referred: 'referred' },
  /** Heads the list of all cautions of a plan. */
  cautions: 'Cautions, by the numbers at the steps',
  /** Title of a drawing that is given none. */
  title: 'Plan of the next steps',
  /** Title of a plan of a case. */
  titleOfCase: (title: string): string => `What to do next: ${title}`,
  /** No plan is cheaper on average; `examined` is a number of situations. */
  bound: (p: { bound: string; examined: string }): string =>
    `No plan costs less than ${p.bound} on average (situations examined: ${p.examined}).`,
  /** The same where the plan costs just that. */
  boundReached: (p: { bound: string; examined: string }): string =>
    `No plan costs less than ${p.bound} on average: this plan is the best possible (situations examined: ${p.examined}).`,
  /** Work in a list of what may be spent. */
  workUpTo: (p: { time: string }): string => `${p.time} of work`,
  /** Joins that list. */
  and: ' and ',
  /** What may be spent on the plan; `spent` as made of the entries above. */
  limits: (p: { spent: string }): string => `At most ${p.spent} may be spent; beyond that only the referral is left.`,
} as const;
