import { plural } from '../../plural.ts';

/** The sentences of this language, by key. Each takes ready-formatted parts; labels come from the model and stand in quotation marks,
 * because they are titles ("Spark plug worn or fouled") and cannot be declined. A translation replaces this file and the formats.
 * Counts are whole engines of 1000 ("3"), or words when it is fewer than 1 or more than 999. */
export const messages = {
  /** Two causes at once, named together. */
  bothCauses: (p: { first: string; second: string }): string => `${p.first} and ${lowerFirst(p.second)}`,
  /** Which cylinder of how many misfires. */
  engine: (p: { suspect: string; cylinders: string }): string => `Cylinder ${p.suspect} of ${p.cylinders} misfires`,
  /** The same with the bank of the cylinder. `engine` as made by the entry above. */
  engineOnBank: (p: { engine: string; bank: string }): string => `${p.engine}, bank ${p.bank}`,
  /** Heads an observation. `outcome` is the outcome's label; some tests are labelled with a question. */
  result: (p: { test: string; outcome: string }): string =>
    p.test.endsWith('?') ? `${p.test} ${p.outcome}` : `${p.test}: ${lowerFirst(p.outcome)}`,
  /** A result entered by degree; `shares` as in "“weak” 3 to “strong” 1". */
  resultByDegree: (p: { test: string; shares: string }): string => `${p.test}: not clear-cut, ${p.shares}`,
  /** One part of `shares`. */
  share: (p: { outcome: string; weight: string }): string => `“${lowerFirst(p.outcome)}” ${p.weight}`,
  /** Heads a result that was entered as numbers; `numbers` as made by the entries below. */
  resultByNumbers: (p: { test: string; numbers: string }): string => `${p.test}: ${p.numbers}`,
  /** Numbers with the outcome noted beside them: 42 %, and where it was heard. */
  numbersAndOutcome: (p: { numbers: string; outcome: string }): string => `${p.numbers}, ${lowerFirst(p.outcome)}`,
  /** One quantity on several cylinders. `others` is a range, or one value. */
  onCylinders: (p: { suspect: string; value: string; others: string }): string =>
    `${p.value} on cylinder ${p.suspect}, ${p.others} on the others`,
  onCylinderAlone: (p: { suspect: string; value: string }): string => `${p.value} on cylinder ${p.suspect}`,
  range: (p: { low: string; high: string }): string => `${p.low} to ${p.high}`,
  /** A reading and the one it is held against. */
  against: (p: { value: string; reference: string }): string => `${p.value} against ${p.reference}`,
  trims: (p: { short: string; long: string }): string => `short-term ${p.short}, long-term ${p.long}`,
  /** Misfire counts: of the suspect, and of all other cylinders together. */
  counted: (p: { suspect: string; count: string; others: string }): string =>
    `${p.count} ${misfires(p.count)} on cylinder ${p.suspect}, ${p.others} on the others together`,
  /** Misfire counts of this cylinder before and after its part was replaced. */
  beforeAfter: (p: { before: string; after: string }): string =>
    `${p.before} ${misfires(p.before)} before, ${p.after} after`,
  /** The same where the part went to another cylinder. */
  swapped: (p: { before: string; after: string; partner: string }): string =>
    `${p.before} ${misfires(p.before)} before; after, ${p.after} on this cylinder and ${p.partner} on the other`,
  /** Appended to a heading: the misfire was not there during the test. */
  whileAsleep: (heading: string): string => `${heading} (while the fault was not present)`,
  /** Appended to a heading. */
  perhapsAsleep: (heading: string): string => `${heading} (not known whether the fault was present)`,
  /** Heads a tried repair. */
  repairHelped: (p: { repair: string }): string => `Tried “${p.repair}”: the misfire is gone`,
  repairDidNotHelp: (p: { repair: string }): string => `Tried “${p.repair}”: the misfire is still there`,

  /** What a result did to the cause it moved most. */
  moved: (p: { cause: string; before: string; after: string }): string =>
    `Of 1000 engines like this, ${p.before} had “${p.cause}” before this result and ${p.after} after it.`,
  /** The count is the same before and after. */
  hardlyMoved: (p: { cause: string; after: string }): string =>
    `Hardly anything changes: of 1000 engines like this, ${p.after} had “${p.cause}” before this result and after it.`,
  /** Follows `moved`: the cause that moved most the other way. */
  alsoMoved: (p: { cause: string; before: string; after: string }): string =>
    `“${p.cause}” went from ${p.before} to ${p.after}.`,
  /** Why: the result speaks for the cause named in `moved`. `times` as in "8.4 times". */
  speaksFor: (p: { times: string }): string => `The result is ${p.times} as likely with that cause as with any other.`,
  /** Why: the result speaks against it. */
  speaksAgainst: (p: { times: string }): string =>
    `The result is ${p.times} as likely with any other cause as with that one.`,
  speaksHardly: (): string => 'The result is about as likely with that cause as with any other.',
  /** The result can only come of that cause, or cannot come of it. */
  excludesOthers: (): string => 'No other cause gives this result.',
  excludesIt: (): string => 'That cause cannot give this result.',
  /** The test was run while the fault slept. */
  saysNothing: (): string => 'The fault was not present, so this says nothing about its cause.',
  movesNothing: (): string => 'This changes nothing.',

  /** Leave-one-out: nothing that shows would be different. */
  withoutItTheSame: (p: { cause: string; now: string }): string =>
    `Without this result “${p.cause}” would lead just the same, at ${p.now}.`,
  /** Same leader, another probability. */
  withoutItSameLeader: (p: { cause: string; without: string; now: string }): string =>
    `Without this result “${p.cause}” would lead as well, at ${p.without} instead of ${p.now}.`,
  withoutItOtherLeader: (p: { cause: string; without: string; leader: string; now: string }): string =>
    `Without this result “${p.cause}” would lead, at ${p.without}; now it is “${p.leader}”, at ${p.now}.`,

  /** The best next step is a test. `saving` is what it saves on average after its own price. */
  /** A look on the way to a repair, before its part is bought. */
  bestIsLook: (p: { test: string; price: string; minutes: string; repair: string }): string =>
    `Next: “${p.test}”, ${p.price}, ${p.minutes}. It lies on the way to “${p.repair}”: look at the part before a new one is bought.`,
  bestIsTest: (p: {
    test: string;
    price: string;
    minutes: string;
    repairNow: string;
    withIt: string;
    saving: string;
  }): string =>
    `Next: “${p.test}”, ${p.price}, ${p.minutes}. Repairing straight away would cost ${p.repairNow} on average, with this test first ${p.withIt}, its price included: it saves ${p.saving}.`,
  bestIsRepair: (p: { repair: string; price: string; minutes: string; cures: string }): string =>
    `Next: repair. “${p.repair}”, ${p.price}, ${p.minutes}; chance that it fixes the fault: ${p.cures}.`,
  /** Follows `bestIsRepair` when the sequence has a second step. */
  thenRepair: (p: { repair: string }): string => `If the misfire is still there, “${p.repair}” is next.`,
  /** The same when it has none. */
  thenReferral: (): string => 'If the misfire is still there, refer it to a specialist.',
  bestIsReferral: (p: { fee: string }): string =>
    `Next: refer it to a specialist. No test or repair here is worth its price any more; a referral is estimated at ${p.fee}.`,
  /** The fault seems to be gone; `days` is 0 when the drive fits into one visit. */
  bestIsProof: (p: {
    repair: string;
    exposure: string;
    minutes: string;
    km: string;
    days: number;
    accept: string;
  }): string =>
    `Next: confirm the repair. “${p.repair}” seems to have fixed the fault. ${p.exposure}: ${p.minutes}, ${p.km}${p.days > 0 ? `, over ${p.days} days` : ''}. Confirmed when: ${p.accept}. If the misfire comes back, record it; the steps below are for that case.`,
  /** Average cost from here to a confirmed repair. */
  expectedCost: (p: { cost: string }): string => `From here to a confirmed repair: ${p.cost} on average.`,
  /** Access still to be opened for a step, in order. */
  opens: (p: { access: string }): string => `Opens: ${p.access}.`,
  /** Everything it needs is open. */
  opensNothing: (): string => 'Nothing more to open.',

  testingPays: (p: { test: string; saving: string }): string =>
    `Another test is still worth it: “${p.test}” saves ${p.saving} more than it costs.`,
  testingStops: (p: { test: string; price: string; saves: string }): string =>
    `Stop testing: even the best remaining test, “${p.test}”, costs ${p.price} and saves only ${p.saves}.`,
  /** The best remaining test would change nothing. */
  testingSavesNothing: (): string => 'Stop testing: no result of any remaining test would change what to do.',
  nothingToTest: (): string => 'Stop testing: no test is left that applies here.',

  /** One test in a list. */
  testSaves: (p: { price: string; minutes: string; saving: string }): string =>
    `${p.price}, ${p.minutes}; saves ${p.saving} more than it costs`,
  /** Beside the price of a look: what its result may call for. */
  /** Steps that share an opening or a set-up; `before` and `after` the step it stands beside may be empty. */
  inOneGo: (p: { price: string; minutes: string; before: string; after: string }): string =>
    `In one go, ${p.price}, ${p.minutes} in all: ${p.before === '' ? 'this' : `first ${p.before}, then this`}${p.after === '' ? '' : `, then ${p.after}`}.`,
  /** A run that finds the fault asleep is made again. */
  onceMore: (p: { chance: string; price: string; minutes: string }): string =>
    `If the fault sleeps meanwhile (${p.chance}): make it show, and once more, ${p.price}, ${p.minutes}`,
  thenPerhaps: (p: { price: string; chance: string; test: string }): string =>
    `If something is seen (${p.chance}): ${p.price} more, for “${p.test}”`,
  /** What looking several steps ahead makes of what one step says. */
  aheadDiffers: (p: { best: string; saving: string; oneStep: string }): string =>
    `Several steps ahead: first ${p.best}. That saves ${p.saving} on average against ${p.oneStep}, the best one step ahead.`,
  aheadAgrees: (): string => 'Several steps ahead too, this is the best step.',
  nowBetter: (p: { by: string; best: string }): string => `Now better by ${p.by}: ${p.best}`,
  beginsDearer: (p: { more: string }): string => `costs ${p.more} more to begin with`,
  beginsAlike: (): string => 'costs about the same to begin with',
  handingOn: (): string => 'refer it to a specialist',
  /** Beside the price of a step that opens the engine: what weighs in the choice and is paid to nobody. */
  countsNeedless: (p: { counted: string }): string =>
    `It may open the engine for nothing: ${p.counted} counts against it beyond its price`,
  testCosts: (p: { price: string; minutes: string; loss: string }): string =>
    `${p.price}, ${p.minutes}; costs ${p.loss} more than it saves`,

  /** Why a test is not proposed. */
  needsEquipment: (p: { test: string; missing: string }): string =>
    `“${p.test}” needs equipment that is not at hand: ${p.missing}.`,
  notApplicable: (p: { test: string; missing: string }): string =>
    `“${p.test}” applies only with this answer: ${p.missing}.`,
  nothingToFollow: (p: { test: string; looks: string }): string =>
    `“${p.test}” looks closer at something found by ${p.looks}: first something has to be found.`,
  alreadyDone: (p: { test: string }): string => `“${p.test}” has been done.`,
  engineApart: (p: { test: string; open: string }): string =>
    `“${p.test}” has to wait until the engine is back together; open is ${p.open}.`,
  sameQuestion: (p: { test: string; by: string }): string =>
    `“${p.test}” asks the same as ${p.by}, which has been answered.`,

  /** Two pieces of evidence ask one question; `shared` is the model's name for what they have in common, or nothing. */
  pairSameQuestion: (p: { items: string; shared: string }): string =>
    `${p.items} ask the same question${inBrackets(p.shared)}: together they count little more than one.`,
  /** They tell one fact. */
  pairSameFact: (p: { items: string; shared: string }): string =>
    `${p.items} state the same fact${inBrackets(p.shared)}, and it counts twice: enter only one of them.`,
  /** They can be wrong for one reason. */
  pairSharedError: (p: { items: string; shared: string }): string =>
    `One mistake can make ${p.items} wrong together${inBrackets(p.shared)}: the second confirms the first less than the ranking assumes.`,
  repeated: (p: { test: string; times: number }): string =>
    `“${p.test}” was done ${p.times} times: a repeat counts only for what it adds to the first run.`,
  asleep: (p: { test: string }): string => `“${p.test}” was done while the fault was not present: it has no effect.`,
  lookMissing: (p: { test: string; looks: string }): string =>
    `“${p.test}” is on record without what it looks closer at: enter what was seen first (${p.looks}).`,

  /** The case was made with another version of the model, or with the model under another name. */
  madeWithOtherVersion: (p: { made: string; here: string }): string =>
    `This case was made with ${p.made}; this is ${p.here}. The probabilities may differ from those shown then.`,
  modelVersion: (p: { model: string; version: number }): string => `the model “${p.model}”, version ${p.version}`,
  /** Same version, other hash. */
  madeWithOtherContents: (p: { model: string; version: number; made: string; here: string }): string =>
    `This case was made with the model “${p.model}”, version ${p.version}, when it had other numbers or words (${p.made} then, ${p.here} now). The probabilities may differ from those shown then.`,
  /** An invented case ends with a cause the model does not have. */
  causeUnknown: (p: { cause: string }): string => `The cause this case names, “${p.cause}”, is not in this model.`,
  /** Entries that do not count; `items` as made by the next entry, `more` are not listed. */
  unplaced: (p: { count: number; items: string; more: number }): string =>
    `${plural('en', p.count, { one: 'One entry is', other: `${p.count} entries are` })} unknown to this model and ${plural('en', p.count, { one: 'does', other: 'do' })} not count: ${p.items}${p.more > 0 ? `; and ${p.more} more` : ''}. ${plural('en', p.count, { one: 'It is', other: 'They are' })} kept in the case.`,
  /** `message` and `hint` are those of the problem. */
  unplacedItem: (p: { what: string; message: string; hint: string }): string => `“${p.what}” (${p.message}; ${p.hint})`,

  /** Of 1000 engines. */
  count: (engines: number): string =>
    engines < 1 ? 'fewer than 1' : engines > 999 ? 'more than 999' : String(engines),
  quoted: (label: string): string => `“${label}”`,
  /** Parts as made by `share`. */
  sharesTogether: (shares: readonly string[]): string => shares.join(' to '),
  /** What is opened one after the other. */
  inTurn: (parts: readonly string[]): string => parts.join(', then '),
  or: (parts: readonly string[]): string =>
    parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} or ${parts.at(-1)}`,
  and: (parts: readonly string[]): string =>
    parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`,
} as const;

function inBrackets(text: string): string {
  return text === '' ? '' : ` (${text})`;
}

function misfires(count: string): string {
  return plural('en', Number(count), { one: 'misfire', other: 'misfires' });
}

/** Labels start with a capital; inside a sentence the first word drops it, unless it is an abbreviation ("EGR", "P0301"). */
function lowerFirst(label: string): string {
  return /^[A-Z][a-z]/.test(label) || label.startsWith('A ') ? label.charAt(0).toLowerCase() + label.slice(1) : label;
}
