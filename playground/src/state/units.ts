const key = 'faultodds-units';
/** What most gauges show, where nobody has chosen yet. */
const USUAL = 'bar';

/** The unit a number is most likely typed in: the one chosen last among these, else the usual one.
 * @param units of one dimension. */
export function preferredUnit(units: readonly string[]): string {
  const chosen = read()[units.join()] ?? '';
  return units.includes(chosen) ? chosen : (units.find((unit) => unit === USUAL) ?? units[0] ?? '');
}

/** Keeps a choice for the next number of the same dimension, on this device. */
export function rememberUnit(units: readonly string[], unit: string): void {
  try {
    localStorage.setItem(key, JSON.stringify({ ...read(), [units.join()]: unit }));
  } catch {
    // storage is refused: the choice lasts as long as the form
  }
}

function read(): Readonly<Record<string, string>> {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof found === 'object' && found !== null ? (found as Record<string, string>) : {};
  } catch {
    return {};
  }
}
