/** What a code of SAE J2012 / ISO 15031-6 is about. Cylinder numbers and banks are the maker's. */
export type CodeMeaning =
  /** Misfire of a cylinder; without one, of several or of one that was not told apart. */
  | { readonly kind: 'misfire'; readonly cylinder?: number }
  | { readonly kind: 'coil-circuit'; readonly coil?: string }
  | { readonly kind: 'injector-circuit'; readonly cylinder?: number }
  | { readonly kind: 'mixture'; readonly direction: 'lean' | 'rich'; readonly bank: 1 | 2 }
  | { readonly kind: 'cam'; readonly bank: 1 | 2 }
  /** Known, says nothing about the cause here, but a reader should know. */
  | { readonly kind: 'circumstance'; readonly circumstance: CodeCondition }
  /** Says nothing here: named by the class the standard puts it in. */
  | { readonly kind: 'other'; readonly standardClass: StandardClass };

/** The class of a code that says nothing here, after the groups of SAE J2012; `other` codes of a system are the maker's or reserved. A
 * name: `describeCodeMeaning` words it. */
export type StandardClass =
  | 'fuel-air-and-emission-controls'
  | 'fuel-and-air'
  | 'fuel-air-and-injector-circuits'
  | 'ignition-or-misfire'
  | 'emission-controls'
  | 'speed-idle-and-inputs'
  | 'computer-and-outputs'
  | 'transmission'
  | 'hybrid-propulsion'
  | 'cylinder-deactivation'
  | 'powertrain-of-the-maker'
  | 'powertrain-reserved'
  | `${CodeSystem}-${'standard' | 'other'}`;

type CodeSystem = 'body' | 'chassis' | 'network' | 'unknown';

/** Conditions of a misfire that a code states without naming a cause. */
export type CodeCondition =
  | 'misfire-with-low-fuel'
  | 'misfire-single-cylinder-not-told'
  | 'misfire-on-start-up'
  | 'misfire-fuelling-disabled'
  | 'crank-pattern-not-learned'
  | 'cylinder-balance';

const CIRCUMSTANCES = new Map<string, CodeCondition>([
  ['P0313', 'misfire-with-low-fuel'],
  ['P0314', 'misfire-single-cylinder-not-told'],
  ['P0315', 'crank-pattern-not-learned'],
  ['P0316', 'misfire-on-start-up'],
  ['P0363', 'misfire-fuelling-disabled'],
]);

/** What a code means. Meanings of P0300-P0316, P0350-P0363, P0200-P0212, P0171 and P0016-P0019 were checked against published copies of
 * the list; P0261-P0296 for the first cylinders; the others (P0172, P0174, P0175, P0010-P0015, P0020-P0025, P0340-P0349, P0365-P0369,
 * P0390-P0394, P2300-P2335) and the classes are from memory of SAE J2012.
 * @param code upper case, as `parseTroubleCodes` gives it.
 * @example describeTroubleCode('P0303') // { kind: 'misfire', cylinder: 3 } */
export function describeTroubleCode(code: string): CodeMeaning {
  const circumstance = CIRCUMSTANCES.get(code);
  if (circumstance !== undefined) return { kind: 'circumstance', circumstance };
  const number = /^P\d{4}$/.test(code) ? Number(code.slice(1)) : NaN;
  return (Number.isNaN(number) ? undefined : known(number)) ?? { kind: 'other', standardClass: classOf(code) };
}

function known(number: number): CodeMeaning | undefined {
  const within = (first: number, last: number): boolean => number >= first && number <= last;
  if (number === 300) return { kind: 'misfire' };
  if (within(301, 312)) return { kind: 'misfire', cylinder: number - 300 };
  if (number === 350) return { kind: 'coil-circuit' };
  if (within(351, 362)) return { kind: 'coil-circuit', coil: letter(number - 351) };
  // primary control low and high of each coil; the third code of each is about the secondary side
  if (within(2300, 2335) && (number - 2300) % 3 < 2)
    return { kind: 'coil-circuit', coil: letter(Math.floor((number - 2300) / 3)) };
  if (number === 200) return { kind: 'injector-circuit' };
  if (within(201, 212)) return { kind: 'injector-circuit', cylinder: number - 200 };
  if (within(261, 296)) {
    // low, high, contribution/balance of each cylinder in turn; balance says nothing about the circuit
    return (number - 261) % 3 === 2
      ? { kind: 'circumstance', circumstance: 'cylinder-balance' }
      : { kind: 'injector-circuit', cylinder: Math.floor((number - 261) / 3) + 1 };
  }
  if (number === 171 || number === 174) return { kind: 'mixture', direction: 'lean', bank: number === 171 ? 1 : 2 };
  if (number === 172 || number === 175) return { kind: 'mixture', direction: 'rich', bank: number === 172 ? 1 : 2 };
  if (within(10, 17) || within(340, 344) || within(365, 369)) return { kind: 'cam', bank: 1 };
  if (within(18, 25) || within(345, 349) || within(390, 394)) return { kind: 'cam', bank: 2 };
  return undefined;
}

function letter(at: number): string {
  return 'ABCDEFGHIJKL'[at]!;
}

// Third character of powertrain codes of groups 0 and 2, from memory of SAE J2012
const POWERTRAIN: Readonly<Record<string, StandardClass>> = {
  0: 'fuel-air-and-emission-controls',
  1: 'fuel-and-air',
  2: 'fuel-air-and-injector-circuits',
  3: 'ignition-or-misfire',
  4: 'emission-controls',
  5: 'speed-idle-and-inputs',
  6: 'computer-and-outputs',
  7: 'transmission',
  8: 'transmission',
  9: 'transmission',
  A: 'hybrid-propulsion',
  B: 'hybrid-propulsion',
  C: 'hybrid-propulsion',
};
const SYSTEM: Readonly<Record<string, CodeSystem>> = { B: 'body', C: 'chassis', U: 'network' };

function classOf(code: string): StandardClass {
  const [system = '', group = '', area = ''] = code;
  if (system !== 'P') {
    return `${SYSTEM[system] ?? 'unknown'}-${group === '0' ? 'standard' : 'other'}`;
  }
  if (group === '1' || (group === '3' && area < '4')) return 'powertrain-of-the-maker';
  if (group === '3') return area === '4' ? 'cylinder-deactivation' : 'powertrain-reserved';
  return POWERTRAIN[area] ?? 'powertrain-reserved';
}
