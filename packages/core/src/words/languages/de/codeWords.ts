import type { Circumstance, StandardClass } from '../../../codes/describeTroubleCode.ts';
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

const circumstances: Readonly<Record<Circumstance, string>> = {
  'misfire-with-low-fuel': 'Aussetzer bei wenig Kraftstoff',
  'misfire-single-cylinder-not-told': 'Aussetzer an einem Zylinder, ohne Angabe welcher',
  'misfire-on-start-up': 'Aussetzer gleich nach dem Start',
  'misfire-fuelling-disabled': 'Aussetzer, Kraftstoff zum Schutz des Katalysators abgeschaltet',
  'crank-pattern-not-learned': 'Kurbelwellenmuster nicht gelernt',
  'cylinder-balance': 'Gleichlauf eines Zylinders',
};

const classes: Readonly<Record<StandardClass, string>> = {
  'fuel and air metering and auxiliary emission controls':
    'Kraftstoff- und Luftzumessung und zusätzliche Abgasreinigung',
  'fuel and air metering': 'Kraftstoff- und Luftzumessung',
  'fuel and air metering, injector circuits': 'Kraftstoff- und Luftzumessung, Einspritzventilkreise',
  'ignition system or misfire': 'Zündanlage oder Aussetzer',
  'auxiliary emission controls': 'zusätzliche Abgasreinigung',
  'vehicle speed, idle control and auxiliary inputs': 'Geschwindigkeit, Leerlaufregelung und weitere Eingänge',
  'computer and auxiliary outputs': 'Steuergerät und weitere Ausgänge',
  transmission: 'Getriebe',
  'hybrid propulsion': 'Hybridantrieb',
  'cylinder deactivation': 'Zylinderabschaltung',
  'powertrain, defined by the maker': 'Antrieb, vom Hersteller festgelegt',
  'powertrain, reserved': 'Antrieb, vorbehalten',
  'body, standard': 'Karosserie, genormt',
  'body, defined by the maker or reserved': 'Karosserie, vom Hersteller festgelegt oder vorbehalten',
  'chassis, standard': 'Fahrwerk, genormt',
  'chassis, defined by the maker or reserved': 'Fahrwerk, vom Hersteller festgelegt oder vorbehalten',
  'network communication, standard': 'Vernetzung, genormt',
  'network communication, defined by the maker or reserved': 'Vernetzung, vom Hersteller festgelegt oder vorbehalten',
  'unknown system, standard': 'unbekanntes System, genormt',
  'unknown system, defined by the maker or reserved': 'unbekanntes System, vom Hersteller festgelegt oder vorbehalten',
};
