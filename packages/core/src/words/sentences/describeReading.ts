import type { PerCylinderReading, Reading } from '../../reading/reading.ts';
import type { Language } from '../languages/language.ts';

/** Numbers as they were read, in a phrase: "9.2 bar on cylinder 3, 12.1 to 12.5 bar on the others".
 * @example
 * ```ts
 * const values = { 1: 12.4, 2: 12.1, 3: 9.2, 4: 12.5 };
 * const said = describeReading({ kind: 'per-cylinder', measure: 'pressure', unit: 'bar', suspect: 3, values }, english);
 * said // '9.2 bar on cylinder 3, 12.1 to 12.5 bar on the others'
 * ``` */
export function describeReading(reading: Reading, language: Language): string {
  const { messages } = language;
  const withUnit = (value: number, unit: string): string => numberWithUnit(value, unit, language);
  const withSign = (percent: number): string => signed(percent, language);
  switch (reading.kind) {
    case 'single':
      return withUnit(reading.value, reading.unit);
    case 'pair':
      return messages.against({
        value: withUnit(reading.value, reading.unit),
        reference: withUnit(reading.reference, reading.unit),
      });
    case 'trim':
      return messages.trims({ short: withSign(reading.short), long: withSign(reading.long) });
    case 'per-cylinder':
      return describeCylinders(reading, language);
    case 'counts': {
      const { counts, suspect } = reading;
      const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
      const own = counts[suspect] ?? 0;
      return messages.counted({ suspect: String(suspect), count: String(own), others: String(all - own) });
    }
    case 'part-counts': {
      const [before, after] = [String(reading.before.suspect), String(reading.after.suspect)];
      const { partner } = reading.after;
      return partner === undefined
        ? messages.beforeAfter({ before, after })
        : messages.swapped({ before, after, partner: String(partner) });
    }
  }
}

function describeCylinders({ values, unit, suspect }: PerCylinderReading, language: Language): string {
  const { messages } = language;
  const withUnit = (value: number, unit: string): string => numberWithUnit(value, unit, language);
  const value = withUnit(values[suspect] ?? 0, unit);
  const others = Object.entries(values).flatMap(([cylinder, other]) => (Number(cylinder) === suspect ? [] : [other]));
  if (others.length === 0) return messages.onCylinderAlone({ suspect: String(suspect), value });
  const [low, high] = [Math.min(...others), Math.max(...others)];
  return messages.onCylinders({
    suspect: String(suspect),
    value,
    others:
      low === high ? withUnit(low, unit) : messages.range({ low: plain(low, language), high: withUnit(high, unit) }),
  });
}

function numberWithUnit(value: number, unit: string, language: Language): string {
  return unit === 'ratio' ? plain(value, language) : `${plain(value, language)} ${unit}`;
}

function signed(percent: number, language: Language): string {
  return `${percent > 0 ? '+' : ''}${plain(percent, language)} %`;
}

// as it was typed, short of digits that a conversion left behind
function plain(value: number, { formatNumber }: Language): string {
  return formatNumber(Number(value.toPrecision(6)));
}
