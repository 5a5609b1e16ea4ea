import type { Language } from '../language.ts';

/** Remarks on what was entered, in German. */
export const remarkWords: Language['remarkWords'] = {
  unusedCode: (p) => `${p.code} (${p.meaning}): ${p.reason}`,
  unusedBecause: {
    'says-nothing-here': 'sagt nichts über diesen Fehler',
    circumstance: 'gut zu wissen, weist aber auf keine Ursache',
    'other-cylinder': 'betrifft einen anderen Zylinder',
    'other-bank': 'betrifft die andere Bank',
    'cylinder-not-told': 'nennt keinen Zylinder',
    'beyond-the-engine': 'diesen Zylinder hat der Motor nicht',
    contradictory: 'ein anderer Code der Liste sagt das Gegenteil',
  },
  codes: {
    'coil-order-assumed': (codes) =>
      `${codes}: angenommen, dass Spule A Zylinder 1 zündet, B Zylinder 2 und so fort. Die Reihenfolge legt der Hersteller fest: nachsehen.`,
    'suspect-not-named': (codes) => `${codes} nennen andere Zylinder und keiner diesen: Ist es der richtige?`,
    'counts-doubtful': (codes) =>
      `${codes}: Das Kurbelwellenmuster ist nicht gelernt; bis dahin sind Aussetzerzählungen zweifelhaft.`,
  },
  reading: {
    setAside: (cylinders) => `Nicht zum Vergleich genommen, weil weit über den übrigen oder 0: Zylinder ${cylinders}.`,
    beyondRange: (outcome) => `Jenseits des üblichen Bereichs: Es zählt als „${outcome}“.`,
    beyondModel: 'Außerhalb des Bereichs, den das Modell abdeckt: ohne Wirkung.',
    elsewhere: 'Ein anderer Zylinder setzt aus oder tat es vorher: Diese Zählungen sagen über diesen nichts.',
    exposureUnknown: 'Worüber gezählt wurde, ist nicht bekannt: Nur die Anteile der Zylinder zählen.',
  },
};
