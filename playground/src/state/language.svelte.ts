import type { LanguageCode } from '@faultodds/core';
import type { Language } from '@faultodds/core/words';
import { coreLanguage, setCoreLanguage } from '../words/coreLanguage.ts';
import { setLabels, t, type Labels } from '../words/t.ts';
import { within } from '../device/within.ts';

/** The languages of the page, each named in itself. */
export const languages: Readonly<Record<LanguageCode, string>> = { en: 'English', de: 'Deutsch' };

/** The language spoken; `choose` keeps the choice on this device. */
export interface LanguageChoice {
  readonly code: LanguageCode;
  choose(code: LanguageCode): Promise<void>;
}

const key = 'faultodds-language';
/** As both doors stand when the page opens. */
const english = { labels: t, core: coreLanguage };

/** The words of each language. English is at hand from the start; another is loaded when it is wanted. */
const wordsIn: Readonly<Record<LanguageCode, () => Promise<{ readonly labels: Labels; readonly core: Language }>>> = {
  en: () => Promise.resolve(english),
  de: async () => {
    const [page, core] = await Promise.all([import('../words/de.ts'), import('@faultodds/core/words/de')]);
    return { labels: page.germanLabels, core: core.german };
  },
};

/** The page does not wait longer than this for the words of a language. Milliseconds. */
const PATIENCE = 4_000;

/** Takes up the language chosen on this device, else the first of the reader's own that the page has, else English.
 * @param preferred codes of the reader's languages, best first. @param onchange called after every later change: draw anew. */
export async function createLanguage(preferred: readonly string[], onchange: () => void): Promise<LanguageChoice> {
  const first = kept() ?? preferred.map(known).find((one) => one !== undefined) ?? 'en';
  let code = $state<LanguageCode>('en');
  // words that do not come keep nobody waiting: the page begins in English, and changes when they come
  const begun = takeUp(first).then(() => void (code = first));
  await within(PATIENCE, begun).catch(() => void begun.then(onchange, () => undefined));
  return {
    get code() {
      return code;
    },
    async choose(next) {
      try {
        await takeUp(next);
      } catch {
        return; // its words do not come: the page goes on in the language it speaks
      }
      code = next;
      try {
        localStorage.setItem(key, next);
      } catch {
        // storage is refused: the choice lasts as long as the page
      }
      onchange();
    },
  };
}

async function takeUp(code: LanguageCode): Promise<void> {
  const { labels, core } = await wordsIn[code]();
  setLabels(labels);
  setCoreLanguage(core);
  document.documentElement.lang = code;
}

function known(tag: string): LanguageCode | undefined {
  const [code = ''] = tag.toLowerCase().split('-');
  return Object.hasOwn(languages, code) ? (code as LanguageCode) : undefined;
}

function kept(): LanguageCode | undefined {
  try {
    return known(localStorage.getItem(key) ?? '');
  } catch {
    return undefined;
  }
}
