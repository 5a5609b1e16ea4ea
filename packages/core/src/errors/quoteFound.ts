/** What was found, short enough for a message: texts in quotes and cut, lists and objects by their kind. Never walks into a value. */
export function quoteFound(value: unknown): string {
  if (typeof value === 'string') return `'${value.length > 40 ? `${value.slice(0, 40)}…` : value}'`;
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'function') return 'a function';
  return String(value);
}
