/** Remarks on what was entered: codes that are not used, a list of codes, the numbers of a reading. Lists arrive joined. */
export const remarkWords = {
  /** `code` with its status where it is not stored: "P0353 pending". */
  unusedCode: (p: { code: string; meaning: string; reason: string }): string => `${p.code} (${p.meaning}): ${p.reason}`,
  unusedBecause: {
    'says-nothing-here': 'says nothing about this fault',
    circumstance: 'worth knowing, but points to no cause',
    'other-cylinder': 'about another cylinder',
    'other-bank': 'about the other bank',
    'cylinder-not-told': 'does not name a cylinder',
    'beyond-the-engine': 'this engine has no such cylinder',
    contradictory: 'another code in the list says the opposite',
  },
  codes: {
    'coil-order-assumed': (codes: string): string =>
      `${codes}: coil A is assumed to fire cylinder 1, B cylinder 2 and so on. The order depends on the maker: check it.`,
    'suspect-not-named': (codes: string): string =>
      `${codes} name other cylinders and none names this one: is it the right one?`,
    'counts-doubtful': (codes: string): string =>
      `${codes}: the crank pattern is not learned, so misfire counts are doubtful until it is.`,
  },
  reading: {
    setAside: (cylinders: string): string =>
      `Left out of the comparison, because far above the others or 0: cylinder ${cylinders}.`,
    beyondRange: (outcome: string): string => `Beyond the usual range: it counts as “${outcome}”.`,
    beyondModel: 'Outside the range that the model covers: it has no effect.',
    elsewhere: 'Another cylinder misfires, or did before: these counts say nothing about this one.',
    exposureUnknown: 'It is not known over how long misfires were counted: only the shares of the cylinders count.',
  },
} as const;
