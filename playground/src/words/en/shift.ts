/** The picture of how the ranking moved, and why. */
export const shiftLabels = {
  shift: {
    heading: 'How the ranking changed',
    even: 'Even scale',
    stretched: 'Rare causes enlarged',
    scale: 'Height of the picture',
    scrub: 'Go back to any step',
    scrubbed: (moment: string) => `As it was then: ${moment}`,
    latest: 'Back to now',
    without: 'Compare: without this result',
    withoutMark: 'Hollow marks on the right: the probability of each cause without it.',
    save: 'Save the picture as',
    saveAs: (kind: string) => `Save the picture as ${kind}`,
    fileName: (id: string) => `${id}-shift`,
    legendLead: 'Each column is one step of the case, each line one cause; height is probability.',
    tableCaption: (earlier: number) =>
      earlier === 0
        ? 'Probability of each cause after every observation'
        : `Probability of each cause after every observation, without the ${earlier} earliest`,
    following: (count: number) => `Computing how the ranking changed: ${count} results …`,
    tableCause: 'Cause',
  },

  rankShift: {
    columns: 'Steps of this case: left and right arrows move between them, up and down between causes',
    point: (cause: string, chance: string, moment: string) => `${cause}: ${chance}, ${moment}`,
    earlier: (count: number) => `◂ ${count} earlier`,
    later: (count: number) => `${count} later ▸`,
    anyMark: 'any',
    any: 'any engine with this misfire',
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
    any: 'Any engine with this misfire',
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
    nothing: 'No result is recorded yet that speaks for or against it.',
    lighter: (count: number) =>
      count === 1 ? 'One other result weighs less than these.' : `${count} other results weigh less than these.`,
    tableCaption: 'Weight of evidence of each result for this cause',
    heads: ['Result', 'Weight', 'Before', 'After'],
    intake: 'At intake',
    nowRow: 'Now',
    speaksFor: (weight: string) => `${weight} for`,
    speaksAgainst: (weight: string) => `${weight} against`,
    saysNothing: 'says nothing',
    excludes: 'rules it out',
    onlyThis: 'leaves only this cause',
    row: (mark: string, label: string) => `${mark}. ${label}`,
    feels: 'The driver notices',
    drivenOn: 'If you keep driving',
  },
};
