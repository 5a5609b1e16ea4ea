import type { CodeCondition, StandardClass } from '../../../codes/describeTroubleCode.ts';

/** What trouble codes are about, in phrases. */
export const codeWords = {
  misfire: (cylinder: number | undefined): string =>
    cylinder === undefined ? 'misfire, no cylinder named' : `misfire of cylinder ${cylinder}`,
  coilCircuit: (coil: string | undefined): string =>
    coil === undefined ? 'coil circuit, no coil named' : `circuit of coil ${coil}`,
  injectorCircuit: (cylinder: number | undefined): string =>
    cylinder === undefined ? 'injector circuit, no cylinder named' : `injector circuit of cylinder ${cylinder}`,
  lean: (bank: number): string => `mixture lean, bank ${bank}`,
  rich: (bank: number): string => `mixture rich, bank ${bank}`,
  cam: (bank: number): string => `camshaft, bank ${bank}`,
  circumstance: (circumstance: CodeCondition): string => circumstances[circumstance],
  standardClass: (standardClass: StandardClass): string => classes[standardClass],
} as const;

const circumstances: Readonly<Record<CodeCondition, string>> = {
  'misfire-with-low-fuel': 'misfire with low fuel',
  'misfire-single-cylinder-not-told': 'misfire of one cylinder that is not named',
  'misfire-on-start-up': 'misfire just after starting',
  'misfire-fuelling-disabled': 'misfire, fuel cut off to protect the catalyst',
  'crank-pattern-not-learned': 'crank pattern not learned',
  'cylinder-balance': 'balance of a cylinder',
};

const classes: Readonly<Record<StandardClass, string>> = {
  'fuel-air-and-emission-controls': 'fuel and air metering and auxiliary emission controls',
  'fuel-air-and-injector-circuits': 'fuel and air metering, injector circuits',
  'fuel-and-air': 'fuel and air metering',
  'ignition-or-misfire': 'ignition system or misfire',
  'emission-controls': 'auxiliary emission controls',
  'speed-idle-and-inputs': 'vehicle speed, idle control and auxiliary inputs',
  'computer-and-outputs': 'computer and auxiliary outputs',
  'hybrid-propulsion': 'hybrid propulsion',
  'cylinder-deactivation': 'cylinder deactivation',
  'powertrain-of-the-maker': 'powertrain, defined by the maker',
  'powertrain-reserved': 'powertrain, reserved',
  transmission: 'transmission',
  'body-standard': 'body, standard',
  'body-other': 'body, defined by the maker or reserved',
  'chassis-standard': 'chassis, standard',
  'chassis-other': 'chassis, defined by the maker or reserved',
  'network-standard': 'network communication, standard',
  'network-other': 'network communication, defined by the maker or reserved',
  'unknown-standard': 'unknown system, standard',
  'unknown-other': 'unknown system, defined by the maker or reserved',
};
