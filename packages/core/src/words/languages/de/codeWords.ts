import type { CodeCondition, StandardClass } from '../../../codes/describeTroubleCode.ts';
import type { Language } from '../language.ts';

/** What trouble codes are about in German, by the keys of English. */
export const codeWords: Language['codeWords'] = {
  misfire: (cylinder) => (cylinder === undefined ? 'Aussetzer, ohne Angabe wo' : `Aussetzer, Zylinder ${cylinder}`),
  coilCircuit: (coil) => (coil === undefined ? 'ein Zündspulenkreis' : `Kreis der Zündspule ${coil}`),
  injectorCircuit: (cylinder) =>
    cylinder === undefined ? 'ein Einspritzventilkreis' : `Kreis des Einspritzventils ${cylinder}`,
  lean: (bank) => `Gemisch mager, Bank ${bank}`,
  rich: (bank) => `Gemisch fett, Bank ${bank}`,
  cam: (bank) => `Nockenwelle, Bank ${bank}`,
  circumstance: (circumstance) => circumstances[circumstance],
  standardClass: (standardClass) => classes[standardClass],
};

const circumstances: Readonly<Record<CodeCondition, string>> = {
  'misfire-with-low-fuel': 'Aussetzer bei wenig Kraftstoff',
  'misfire-single-cylinder-not-told': 'Aussetzer an einem Zylinder, ohne Angabe welcher',
  'misfire-on-start-up': 'Aussetzer gleich nach dem Start',
  'misfire-fuelling-disabled': 'Aussetzer, Kraftstoff zum Schutz des Katalysators abgeschaltet',
  'crank-pattern-not-learned': 'Kurbelwellenmuster nicht gelernt',
  'cylinder-balance': 'Gleichlauf eines Zylinders',
};

const classes: Readonly<Record<StandardClass, string>> = {
  'fuel-air-and-emission-controls': 'Kraftstoff- und Luftzumessung und zusätzliche Abgasreinigung',
  'fuel-and-air': 'Kraftstoff- und Luftzumessung',
  'fuel-air-and-injector-circuits': 'Kraftstoff- und Luftzumessung, Einspritzventilkreise',
  'ignition-or-misfire': 'Zündanlage oder Aussetzer',
  'emission-controls': 'zusätzliche Abgasreinigung',
  'speed-idle-and-inputs': 'Geschwindigkeit, Leerlaufregelung und weitere Eingänge',
  'computer-and-outputs': 'Steuergerät und weitere Ausgänge',
  transmission: 'Getriebe',
  'hybrid-propulsion': 'Hybridantrieb',
  'cylinder-deactivation': 'Zylinderabschaltung',
  'powertrain-of-the-maker': 'Antrieb, vom Hersteller festgelegt',
  'powertrain-reserved': 'Antrieb, vorbehalten',
  'body-standard': 'Karosserie, genormt',
  'body-other': 'Karosserie, vom Hersteller festgelegt oder vorbehalten',
  'chassis-standard': 'Fahrwerk, genormt',
  'chassis-other': 'Fahrwerk, vom Hersteller festgelegt oder vorbehalten',
  'network-standard': 'Vernetzung, genormt',
  'network-other': 'Vernetzung, vom Hersteller festgelegt oder vorbehalten',
  'unknown-standard': 'unbekanntes System, genormt',
  'unknown-other': 'unbekanntes System, vom Hersteller festgelegt oder vorbehalten',
};
