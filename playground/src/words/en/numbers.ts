/** Words for the numbers of the knowledge and for questioning them. */
export const numberLabels = {
  open: 'Check the numbers',
  heading: 'The numbers behind the ranking',
  intro:
    'Every number has a source and a range. Move one and see what it would change: this is only a trial, the case stays as it is.',
  effect: 'With these changes',
  effectNone: 'Nothing is changed yet: this is the case as it is.',
  advice: 'Best next step',
  adviceSame: (step: string) => `${step}, as before`,
  adviceOther: (step: string, before: string) => `${step}, instead of ${before}`,
  from: (before: string, now: string) => `${before} → ${now}`,
  changed: (count: number) => (count === 1 ? 'One number changed' : `${count} numbers changed`),
  reset: 'Reset',
  resetWhat: (what: string) => `Reset: ${what}`,
  resetAll: 'Reset all',
  original: (value: string) => `original value ${value}`,

  matter: 'Which numbers matter most now',
  matterIntro: (cause: string) =>
    `How much “${cause}” changes when one number runs through its range and all others stay the same.`,
  swing: (low: string, high: string) => `${low} at the low end of its range, ${high} at the high end.`,
  flip: (at: string, cause: string) => `At ${at} “${cause}” would lead.`,
  flipNever: 'No value of it changes which cause leads.',
  flipOutside: (at: string, cause: string) => `Only at ${at}, outside its range, would “${cause}” lead.`,
  working: 'Computing …',
  more: (count: number) => `${count} more`,

  all: 'All numbers',
  find: 'Find a number by cause, test or repair',
  found: (shown: number, all: number) => (shown === all ? `${all} found` : `${shown} of ${all} found: add a word`),
  notFound: 'No number matches.',
  range: (low: string, high: string) => `90% range ${low} to ${high}`,
  worth: (cases: string) => `worth as much as ${cases} cases`,
  slider: (what: string) => `Value of: ${what}`,
};
