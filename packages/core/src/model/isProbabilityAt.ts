const PROBABILITIES: ReadonlySet<string> = new Set([
  'activeFraction',
  'repeatability',
  'twoCauseShare',
  'plausibleFrom',
  'goneWithoutCure',
  'presentIfNotNoted',
  'aboutTheSame',
]);

/** Whether the number at a place of a model is a probability: an entry of a row, a chance of success, a share; weights, multipliers, minutes
 * and money are not. @param path JSON Pointer of the number. */
export function isProbabilityAt(path: string): boolean {
  const keys = path.split('/');
  const [last = '', field = '', group = ''] = keys.toReversed();
  return field === 'p' || (last === 'best' && (PROBABILITIES.has(field) || group === 'cures'));
}
