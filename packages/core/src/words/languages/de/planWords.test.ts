import { expect, test } from 'vitest';
import type { Plan, PlanStep } from '../../../plan/plan.ts';
import {
  planAsMermaid,
  planAsSvg,
  planAsText,
  planLabels,
  sentenceForBound,
} from '../../../entries/words/sentences.ts';
import { english } from '../english.ts';
import { german } from './german.ts';
import { planWords } from './planWords.ts';

const money = (amount: number) => ({ amount, currency: 'EUR' });

/** A repair, then a referral that is folded away with so many steps. Invented. */
function planOf(folded: number, certifiedGap = 0): Plan {
  const root: PlanStep = {
    kind: 'repair',
    id: 'fit-fuse',
    price: money(7.5),
    minutes: 5,
    accessToOpen: [],
    accessToClose: [],
    cautions: ['mains'],
    reached: 1,
    expectedCost: money(1210),
    branches: [
      { outcome: 'cured', probability: 0.75 },
      { outcome: 'not-cured', probability: 0.25 },
    ],
    folded,
  };
  const cost = { expected: money(1210), median: money(100), ninetiethPercentile: money(200), worst: money(3000) };
  return { format: 'faultodds-plan', version: 1, solver: 'any', cost, lowerBound: money(1200), certifiedGap, root };
}
const cautions = [
  { id: 'mains', hazard: 'life', text: { en: 'Mains kills.', de: 'Netzspannung tötet.' }, source: 'x' },
] as const;
const model = { tests: [], repairs: [], cautions };

test.each([
  [1, '… 1 more step', '… 1 weiterer Schritt'],
  [2, '… 2 more steps', '… 2 weitere Schritte'],
  [101, '… 101 more steps', '… 101 weitere Schritte'],
])(
  '%d folded steps are counted by the plural rules of the language, in text, flowchart and drawing',
  (folded, theirs, ours) => {
    for (const [words, said] of [
      [english, theirs],
      [german, ours],
    ] as const) {
      const [plan, labels] = [planOf(folded), planLabels(model, words)];
      expect(planAsText(plan, labels, words).split('\n')).toContain(`  ${said}`);
      expect(planAsMermaid(plan, labels, words)).toContain(`<br/>${said}"]`);
      expect(planAsSvg(plan, labels, words)).toMatch(new RegExp(`${said}<`));
    }
  },
);

test('a plan in German, with German numbers', () => {
  const text = planAsText(planOf(0, 0.0312), planLabels(model, german), german).replaceAll('\u00a0', ' ');
  expect(text).toBe(
    [
      'Erwartete Kosten 1.210 €, davon höchstens 3,1 % über dem bestmöglichen Plan',
      'In der Hälfte der Fälle bis 100 €, 9-mal von 10 bis 200 €, schlimmstenfalls 3.000 €',
      'fit-fuse (7,50 €)',
      '  ⚠ 1',
      '  behoben, 75 %',
      '  der Fehler bleibt, 25 %',
      '',
      'Gefahren, nach den Nummern an den Schritten',
      '⚠ 1 Netzspannung tötet.',
      german.stopAndTow,
      german.usualCaution,
      '',
    ].join('\n'),
  );
  expect(sentenceForBound(planOf(0), 12, german)).toMatch(/^Kein Plan .* Dieser Plan ist der bestmögliche .*12\)\.$/);
  expect(sentenceForBound(planOf(0, 0.1), 12, german)).not.toMatch(/der beste, den/);
});

test('no word of a plan is the English one', () => {
  const said = (words: object): string[] =>
    Object.values(words).flatMap((word: unknown) =>
      typeof word === 'string'
        ? [word]
        : typeof word === 'function'
          ? [
              String(
                word(
                  word.length > 0 && /folded|title/.test(word.name)
                    ? 3
                    : new Proxy({}, { get: (_, key) => `<${String(key)}>` }),
                ),
              ),
            ]
          : said(word as object),
    );
  const [ours, theirs] = [said(planWords), said(english.planWords)];
  expect(ours).toHaveLength(theirs.length);
  ours.forEach((word, at) => expect(word).not.toBe(theirs[at]));
});
