// Meanings after SAE J2012 / ISO 15031-6; published check F9 names which were verified in published copies of the list.
import { expect, test } from 'vitest';
import { describeTroubleCode } from './describeTroubleCode.ts';

test.each([
  ['P0300', { kind: 'misfire' }],
  ['P0301', { kind: 'misfire', cylinder: 1 }],
  ['P0312', { kind: 'misfire', cylinder: 12 }],
  ['P0313', { kind: 'circumstance', circumstance: 'misfire-with-low-fuel' }],
  ['P0314', { kind: 'circumstance', circumstance: 'misfire-single-cylinder-not-told' }],
  ['P0315', { kind: 'circumstance', circumstance: 'crank-pattern-not-learned' }],
  ['P0316', { kind: 'circumstance', circumstance: 'misfire-on-start-up' }],
  ['P0363', { kind: 'circumstance', circumstance: 'misfire-fuelling-disabled' }],
  ['P0350', { kind: 'coil-circuit' }],
  ['P0351', { kind: 'coil-circuit', coil: 'A' }],
  ['P0362', { kind: 'coil-circuit', coil: 'L' }],
  ['P2303', { kind: 'coil-circuit', coil: 'B' }],
  ['P0200', { kind: 'injector-circuit' }],
  ['P0201', { kind: 'injector-circuit', cylinder: 1 }],
  ['P0261', { kind: 'injector-circuit', cylinder: 1 }],
  ['P0263', { kind: 'circumstance', circumstance: 'cylinder-balance' }],
  ['P0265', { kind: 'injector-circuit', cylinder: 2 }],
  ['P0295', { kind: 'injector-circuit', cylinder: 12 }],
  ['P0296', { kind: 'circumstance', circumstance: 'cylinder-balance' }],
  ['P0171', { kind: 'mixture', direction: 'lean', bank: 1 }],
  ['P0175', { kind: 'mixture', direction: 'rich', bank: 2 }],
  ['P0016', { kind: 'cam', bank: 1 }],
  ['P0019', { kind: 'cam', bank: 2 }],
  ['P0344', { kind: 'cam', bank: 1 }],
  ['P0345', { kind: 'cam', bank: 2 }],
  ['P0420', { kind: 'other', standardClass: 'emission-controls' }],
  ['P1234', { kind: 'other', standardClass: 'powertrain-of-the-maker' }],
  ['P0A80', { kind: 'other', standardClass: 'hybrid-propulsion' }],
  ['P3401', { kind: 'other', standardClass: 'cylinder-deactivation' }],
  ['U0100', { kind: 'other', standardClass: 'network-standard' }],
  ['B1234', { kind: 'other', standardClass: 'body-other' }],
])('%s', (code, meaning) => {
  expect(describeTroubleCode(code)).toEqual(meaning);
});
