import type { Circumstance, StandardClass } from '../../../codes/describeTroubleCode.ts';

/** What trouble codes are about, in phrases. */
export const codeWords = {
  misfire: (cylinder: number | undefined): string =>
    cylinder === undefined ? 'misfire, no cylinder named' : `misfire of cylinder ${cylinder}`,
  coilCircuit: (coil: string | undefined): string =>
    coil === undefined ? 'coil circuit, none named' : `circuit of coil ${coil}`,
  injectorCircuit: (cylinder: number | undefined): string =>
    cylinder === undefined ? 'injector circuit, none named' : `injector circuit of cylinder ${cylinder}`,
  lean: (bank: number): string => `mixture lean, bank ${bank}`,
  rich: (bank: number): string => `mixture rich, bank ${bank}`,
  cam: (bank: number): string => `camshaft, bank ${bank}`,
  circumstance: (circumstance: Circumstance): string => circumstances[circumstance],
  /** Its name is English already. */
  standardClass: (standardClass: StandardClass): string => standardClass,
} as const;

const circumstances: Readonly<Record<Circumstance, string>> = {
  'misfire-with-low-fuel': 'misfire with low fuel',
  'misfire-single-cylinder-not-told': 'misfire of one cylinder, which is not told',
  'misfire-on-start-up': 'misfire just after starting',
  'misfire-fuelling-disabled': 'misfire, fuel cut off to protect the catalyst',
  'crank-pattern-not-learned': 'crank pattern not learned',
  'cylinder-balance': 'balance of a cylinder',
};
