import { expect, test } from 'vitest';
import { bundleOf, type Bundle } from './bundleOf.ts';

// A language imports no other: whoever says one sentence in German ships no English, and the other way round.
const languages = {
  en: { name: 'english', sample: 'Next: repair.' },
  de: { name: 'german', sample: 'Als Nächstes: reparieren.' },
} as const;
const folderOf = /^packages\/core\/src\/words\/languages\/(\w+)\//;
type Code = keyof typeof languages;
const codes = Object.keys(languages) as Code[];

/** Languages a bundle holds something of. */
function languagesOf({ files }: Bundle): readonly string[] {
  return [...new Set(files.flatMap((path) => folderOf.exec(path)?.[1] ?? []))];
}

test.each(codes)('one sentence in %s ships that language alone', async (code) => {
  const { name, sample } = languages[code];
  const bundle = await bundleOf(
    `import { sentenceForAdvice } from '@faultodds/core/words';
     import { ${name} } from '@faultodds/core/words/${code}';
     export const say = (model, advice) => sentenceForAdvice(model, advice, ${name});`,
  );
  expect(languagesOf(bundle)).toEqual([code]);
  expect(bundle.code).toContain(sample);
  for (const other of codes.filter((one) => one !== code)) expect(bundle.code).not.toContain(languages[other].sample);
});

test.each(codes)('all that the entry of %s offers is of that language', async (code) => {
  expect(languagesOf(await bundleOf(`export * from '@faultodds/core/words/${code}';`))).toEqual([code]);
});

test('the makers of sentences speak no language of their own', async () => {
  const bundle = await bundleOf(`export * from '@faultodds/core/words';`);
  expect(bundle.files).toContain('packages/core/src/words/sentences/sentenceForAdvice.ts');
  expect(languagesOf(bundle)).toEqual([]);
});
