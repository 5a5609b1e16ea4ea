import { expect, test } from 'vitest';
import { germanLabels } from './de.ts';
import { englishLabels as english } from './en.ts';

/** Every text by its place; a function is called with its parts marked, as many as English takes. */
function texts(words: object, mirror: object, path = ''): Map<string, string> {
  const found = new Map<string, string>();
  for (const [key, value] of Object.entries(words)) {
    const twin = (mirror as Record<string, unknown>)[key];
    const place = `${path}/${key}`;
    if (typeof value === 'string') found.set(place, value);
    else if (typeof value === 'function' && !/remark/i.test(key)) {
      const parts = Array.from({ length: (twin as () => void).length }, (_, at) => `<${at}>`);
      found.set(place, String(value(...parts)));
    } else if (typeof value === 'object')
      for (const [inner, text] of texts(value as object, twin as object, place)) found.set(inner, text);
  }
  return found;
}

const theirs = texts(english, english);
const ours = texts(germanLabels, english);

test('German fills every place English has, and no other', () => {
  expect([...ours.keys()]).toEqual([...theirs.keys()]);
  expect(ours.size).toBeGreaterThan(300);
});

test('no German sentence drops a part that English shows', () => {
  const marks = (text = ''): string[] => [...text.matchAll(/<\d>/g)].map(String).sort();
  for (const [place, text] of theirs)
    if (!/\/kept|standing/.test(place)) expect(new Set(marks(ours.get(place))), place).toEqual(new Set(marks(text)));
});

test('longer texts are not the English ones', () => {
  const same = [...theirs].filter(([place, text]) => text.length > 24 && ours.get(place) === text);
  expect(same.filter(([place]) => !/Placeholder|state$|mechanism$|outcome$|kept|hex/.test(place))).toEqual([]);
});
