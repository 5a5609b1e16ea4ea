import type { CodeRemark, UnusedCode, ReadingRemark } from '@faultodds/core';

/** Words for entering a result by numbers, by trouble codes, or by degree.
 * Notes for translators: numbers arrive as finished phrases with their unit. */
export const entryLabels = {
  ways: 'Other ways to record it',
  numbers: 'Enter the numbers',
  codes: 'Paste trouble codes',
  monitor: 'Paste raw $06 counts',
  unsure: 'Not sure which',

  engine: {
    cylinders: 'Cylinders',
    suspect: 'Misfires on',
    choose: 'Choose …',
    cylinder: (number: number) => `Cylinder ${number}`,
    /** Where room is short. */
    short: (number: number) => `Cyl. ${number}`,
    needed: 'First choose which cylinder misfires.',
  },

  measure: 'What was measured',
  kind: 'How it was recorded',
  kinds: {
    'per-cylinder': 'each cylinder',
    single: 'one number',
    pair: 'two readings',
    trim: 'fuel trims',
    counts: 'counts',
    'part-counts': 'counts',
  },
  unit: 'Unit',
  units: { revolutions: 'revolutions', firings: 'firings of each cylinder' },
  suspectMark: 'misfires',
  optional: 'if known',

  field: {
    value: 'Reading',
    reference: 'Compared with',
    short: 'Short-term trim',
    long: 'Long-term trim',
    nominal: 'Maker’s figure',
    temperature: (cylinder: number) => `Temperature, cyl. ${cylinder}`,
    exposure: 'Counted over',
    suspect: 'This cylinder',
    partner: 'The cylinder it was swapped with',
    before: 'Before',
    after: 'After',
  },
  extras: 'Maker’s figure and temperatures',

  says: 'What these numbers say',
  saysLittle: 'These numbers hardly distinguish between the states.',
  compared: (value: string) => `Compared value: ${value}`,
  called: (outcome: string) => `This counts as: ${outcome}`,
  whichOne: 'The number fits more than one result. What else did you see?',
  neither: 'Not checked',
  fits: { well: 'fits well', open: 'fits less well', badly: 'fits badly', hardly: 'hardly fits' },
  factor: (number: string) => `× ${number}`,
  factorTiny: '× < 0.001',
  factors: 'Exact figures',
  factorHint: 'How strongly the numbers support each state. For gauges 1 says nothing; for counts 1 is the best fit.',
  rule: 'Rule of thumb',
  verdict: { kept: 'Met', broken: 'Not met', 'not-computable': 'Cannot be computed from these numbers' },
  ruleLine: (verdict: string, text: string) => `${verdict}. ${text}`,
  record: 'Record these numbers',
  mend: 'Not recorded yet: see the fields marked below.',

  remark: (remark: ReadingRemark, outcome: string): string => {
    switch (remark.kind) {
      case 'set-aside':
        return `Left out of the comparison, because far above the others or 0: cylinder ${remark.cylinders.join(', ')}.`;
      case 'beyond-range':
        return outcome === ''
          ? 'Outside the range that the model covers: it has no effect.'
          : `Beyond the usual range: it counts as “${outcome}”.`;
      case 'elsewhere':
        return 'Another cylinder misfires, or did before: these counts say nothing about this one.';
      case 'exposure-unknown':
        return 'It is not known over how long misfires were counted: only the shares of the cylinders count.';
    }
  },

  degree: {
    about: 'About',
    odds: (times: number) => `${times} to 1`,
    that: 'that it was',
    rather: 'rather than',
    anyOther: 'anything else',
    same: 'Choose two different outcomes.',
    record: 'Record this',
    share: (weight: number, outcome: string) => `${weight} “${outcome}”`,
    to: ' to ',
  },

  codesText: 'Trouble codes, as the scan tool shows them',
  codesPlaceholder: 'P0301, P0351 pending',
  complete: 'This is every code the modules hold',
  bank: 'Bank of this cylinder',
  bankUnknown: 'Not known',
  bankNumber: (bank: number) => `Bank ${bank}`,
  malformed: 'Not a code',
  malformedAt: (text: string, at: number, hint: string) => `“${text}” (character ${at}): ${hint}`,
  becomes: 'Will be recorded',
  becomesLine: (test: string, outcome: string) => `${test}: ${outcome}`,
  already: 'already recorded',
  keptCodes: 'Not used here',
  keptLine: (code: string, meaning: string, reason: string) => `${code} (${meaning}): ${reason}`,
  nothingRead: 'No code in the list concerns this cylinder.',
  recordCodes: (count: number) => (count === 1 ? 'Record this result' : `Record these ${count} results`),
  reason: {
    'says-nothing-here': 'says nothing about this fault',
    circumstance: 'worth knowing, but points to no cause',
    'other-cylinder': 'about another cylinder',
    'other-bank': 'about the other bank',
    'cylinder-not-told': 'does not name a cylinder',
    'beyond-the-engine': 'this engine has no such cylinder',
    contradictory: 'another code in the list says the opposite',
  } satisfies Record<UnusedCode['reason'], string>,
  codeRemark: ({ kind, codes }: CodeRemark): string => {
    const list = codes.join(', ');
    switch (kind) {
      case 'coil-order-assumed':
        return `${list}: coil A was taken to fire cylinder 1, B cylinder 2 and so on. The order is the maker’s: check it.`;
      case 'suspect-not-named':
        return `${list} name other cylinders and none names this one: is it the right one?`;
      case 'counts-doubtful':
        return `${list}: the crank pattern is not learned, so misfire counts are doubtful until it is.`;
    }
  },

  hexText: 'Response to service $06, in hexadecimal',
  hexPlaceholder: '46 A2 0C 24 00 05 00 00 FF FF',
  covers: 'Which counts',
  coversNames: { 'last-cycle': 'this or the last drive', average: 'average over drives' },
  byte: (at: string, message: string, hint: string) => `Byte ${at}: ${message}; ${hint}`,
  decoded: (cylinder: string, count: number) => `Cylinder ${cylinder}: ${count}`,
  decodedHead: 'Misfires counted',
  noCounts: 'No misfire counts found in it.',
};
