import type { Dimension } from './dimension.ts';

/** A unit: canonical value = factor times value plus offset. */
export interface Unit {
  readonly symbol: string;
  /** Other spellings that are understood; letter case does not matter. */
  readonly also: readonly string[];
  readonly factor: number;
  readonly offset?: number;
}

// Exact by definition (NIST Special Publication 811, 2008, appendix B): pound in kg, standard gravity in m/s², inch in m, and the
// conventional density of mercury in kg/m³ behind the manometer units.
const POUND = 0.45359237;
const GRAVITY = 9.80665;
const INCH = 0.0254;
const MERCURY = 13595.1;

const unit = (symbol: string, factor: number, also: readonly string[] = [], offset?: number): Unit => ({
  symbol,
  also,
  factor,
  ...(offset === undefined ? {} : { offset }),
});

const RATIO = unit('ratio', 1, ['1', 'x']);

/** The units of a dimension, the canonical one first: kPa, %, ratio, crank degrees, mm, ms, ohm, rpm, degrees C. Readings that only
 * count against each other (`relative`) are taken in any unit their instrument shows.
 * @example unitsOf('temperature').map(({ symbol }) => symbol) // ['degC', 'degF', 'K'] */
export function unitsOf(dimension: Dimension): readonly [Unit, ...Unit[]] {
  switch (dimension) {
    case 'pressure':
      return [
        unit('kPa', 1),
        unit('bar', 100),
        unit('psi', (POUND * GRAVITY) / INCH ** 2 / 1000, ['lbf/in2', 'lb/in2', 'psig']),
        unit('MPa', 1000),
        unit('mbar', 0.1, ['hPa']),
        unit('Pa', 0.001),
        unit('kgf/cm2', (GRAVITY * 1e4) / 1000, ['kg/cm2', 'at']),
        unit('inHg', (MERCURY * GRAVITY * INCH) / 1000, ['in.Hg', 'in Hg']),
        unit('mmHg', (MERCURY * GRAVITY) / 1e6, ['mm Hg']),
      ];
    case 'percent':
      return [unit('%', 1, ['percent', 'per cent']), unit('ratio', 100)];
    case 'ratio':
      return [RATIO, unit('%', 0.01, ['percent', 'per cent'])];
    case 'angle':
      return [unit('deg', 1, ['°', 'deg crank', '°CA']), unit('deg cam', 2, ['°cam'])];
    case 'length':
      return [unit('mm', 1), unit('in', INCH * 1000, ['inch', '"']), unit('um', 0.001, ['µm'])];
    case 'time':
      return [unit('ms', 1), unit('us', 0.001, ['µs']), unit('s', 1000)];
    case 'resistance':
      return [unit('ohm', 1, ['Ω', 'ohms']), unit('kohm', 1000, ['kΩ']), unit('mohm', 0.001, ['mΩ'])];
    case 'speed':
      return [unit('rpm', 1, ['1/min', 'r/min'])];
    case 'temperature':
      return [unit('degC', 1, ['°C', 'C']), unit('degF', 5 / 9, ['°F', 'F'], -160 / 9), unit('K', 1, [], -273.15)];
    case 'relative':
      return [RATIO, ...['A', 'mA', 'V', 'mV', '%', 'div'].map((symbol) => unit(symbol, 1))];
  }
}
