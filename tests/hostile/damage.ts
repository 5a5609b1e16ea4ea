import { createRandom } from '../oracle/randomNetwork.ts';

/** One way to damage a value: where, what was done, and the damaged copy. */
export interface Damage {
  readonly what: string;
  readonly value: unknown;
}

/** Seed of the damage in this folder. */
export const seed = 20261125;

/** Nested `depth` times, without recursion. */
export function nested(depth: number): unknown {
  let value: unknown = 'bottom';
  for (let at = 0; at < depth; at += 1) value = at % 2 === 0 ? [value] : { deeper: value };
  return value;
}

/** Values that belong nowhere, by name. */
export const poisons: Readonly<Record<string, () => unknown>> = {
  undefined: () => undefined,
  null: () => null,
  NaN: () => NaN,
  Infinity: () => Infinity,
  '-Infinity': () => -Infinity,
  '-0': () => -0,
  '-1': () => -1,
  '1e308': () => 1e308,
  '1e-320': () => 1e-320,
  true: () => true,
  'an empty string': () => '',
  'a number as a string': () => '3',
  'a long string': () => 'x'.repeat(100_000),
  'a string of control characters': () => '\u0000\u001b[2J\ud800\u202e',
  __proto__: () => '__proto__',
  constructor: () => 'constructor',
  toString: () => 'toString',
  'an empty list': () => [],
  'a long list': () => Array.from({ length: 20_000 }, () => 1),
  'an empty object': () => ({}),
  'an object that sets its prototype': () =>
    JSON.parse(
      '{ "__proto__": { "polluted": true }, "constructor": { "prototype": { "polluted": true } } }',
    ) as unknown,
  'an object without a prototype': () => Object.create(null) as unknown,
  'a throwing object': () =>
    Object.defineProperty({}, 'toString', {
      value: () => {
        throw new RangeError('asked for words');
      },
    }),
  'deep nesting': () => nested(50_000),
  'a function': () => () => 1,
  'a bigint': () => 10n,
  'a symbol': () => Symbol('s'),
  'a date': () => new Date(0),
  'a map': () => new Map([['a', 1]]),
};

/** Damages one place after another of a JSON value: each poison at places chosen by chance, so that every poison and most places come
 * up; keys deleted, added and doubled too. The same seed gives the same damage. */
export function damages(value: unknown, count: number, damageSeed: number): Damage[] {
  const random = createRandom(damageSeed);
  const places = placesIn(value);
  const names = Object.keys(poisons);
  return Array.from({ length: count }, (_, at): Damage => {
    const place = places[Math.floor(random() * places.length)]!;
    const way = at % (names.length + 4);
    if (way < names.length)
      return { what: `${names[way]} at ${pointer(place)}`, value: replaced(value, place, poisons[names[way]!]!()) };
    if (way === names.length) return { what: `nothing at ${pointer(place)}`, value: removed(value, place) };
    if (way === names.length + 1)
      return { what: `one more key at ${pointer(place)}`, value: added(value, place, 'surplus', 1) };
    if (way === names.length + 2)
      return {
        what: `an own __proto__ at ${pointer(place)}`,
        value: added(value, place, '__proto__', { polluted: true }),
      };
    return {
      what: `an own constructor at ${pointer(place)}`,
      value: added(value, place, 'constructor', { polluted: true }),
    };
  });
}

type Place = readonly (string | number)[];

function placesIn(value: unknown): Place[] {
  if (Array.isArray(value)) return [[], ...value.flatMap((item, at) => placesIn(item).map((place) => [at, ...place]))];
  if (typeof value !== 'object' || value === null) return [[]];
  return [[], ...Object.entries(value).flatMap(([key, item]) => placesIn(item).map((place) => [key, ...place]))];
}

function pointer(place: Place): string {
  return place.map((key) => `/${key}`).join('') || 'the top';
}

function replaced(value: unknown, [first, ...rest]: Place, by: unknown): unknown {
  if (first === undefined) return by;
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...(value as object) }) as Record<
    string | number,
    unknown
  >;
  copy[first] = replaced(copy[first], rest, by);
  return copy;
}

function removed(value: unknown, place: Place): unknown {
  const last = place.at(-1);
  if (last === undefined) return undefined;
  return changed(value, place.slice(0, -1), (parent) => {
    if (Array.isArray(parent)) return parent.filter((_, at) => at !== last);
    return Object.fromEntries(Object.entries(parent as object).filter(([key]) => key !== last));
  });
}

function added(value: unknown, place: Place, key: string, item: unknown): unknown {
  return changed(value, place, (here) => {
    if (typeof here !== 'object' || here === null || Array.isArray(here)) return { [key]: item };
    // defined, not assigned: as JSON.parse does, an own property even of this name
    return Object.defineProperty({ ...here }, key, {
      value: item,
      enumerable: true,
      configurable: true,
      writable: true,
    });
  });
}

function changed(value: unknown, place: Place, by: (here: unknown) => unknown): unknown {
  let here = value;
  for (const key of place) here = (here as Record<string | number, unknown>)[key];
  return replaced(value, place, by(here));
}
