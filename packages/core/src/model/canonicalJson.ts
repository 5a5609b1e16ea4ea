/** JSON text that does not depend on the order in which keys were written: keys sorted by UTF-16 code units, no white space, numbers and
 * strings as ECMAScript writes them. Keys without a value are left out. @param value plain data, as `JSON.parse` makes it.
 * Source: RFC 8785 (JSON Canonicalization Scheme), section 3.2. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value)
    .filter(([, one]) => one !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, one]) => `${JSON.stringify(key)}:${canonicalJson(one)}`);
  return `{${members.join(',')}}`;
}
