import type { Money } from '../../../../cost/money.ts';

/** An amount with its currency: "€1,637" and "€7.50" for a currency code of ISO 4217, "130 units" and "4.8 units" for the model's own
 * unit. Whole numbers from 10 on; below, cents or two significant digits.
 * @example
 * ```ts
 * formatMoney({ amount: 1637.2, currency: 'EUR' }) // '€1,637'
 * formatMoney({ amount: 4.8, currency: 'unit' }) // '4.8 units'
 * ``` */
export function formatMoney({ amount, currency }: Money): string {
  if (isCurrencyCode(currency)) {
    const rounded = round(amount, Math.abs(amount) < 9.995 ? 2 : 0);
    const digits = Number.isInteger(rounded) ? 0 : 2;
    const shape = { minimumFractionDigits: digits, maximumFractionDigits: digits };
    return new Intl.NumberFormat('en', { style: 'currency', currency, ...shape }).format(rounded);
  }
  const rounded = Math.abs(amount) < 9.95 ? Number(round(amount, 2).toPrecision(2)) : round(amount, 0);
  const number = new Intl.NumberFormat('en').format(rounded);
  return currency === 'unit' && rounded !== 1 ? `${number} units` : `${number} ${currency}`;
}

/** Never -0: "-0 units" would be read as a misprint. */
function round(amount: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(amount * scale) / scale + 0;
}

function isCurrencyCode(currency: string): boolean {
  return /^[A-Z]{3}$/.test(currency) && Intl.supportedValuesOf('currency').includes(currency);
}
