import { coreLanguage } from '../words/coreLanguage.ts';
import { shortChance } from '../words/shortChance.ts';
import { t } from '../words/t.ts';
import type { Answers } from '../worker/question.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What it would take to open one thing, as the screen tells it. */
export interface WhatItTakesView {
  readonly id: string;
  readonly label: string;
  /** It is the best step now or could become it. */
  readonly matters: boolean;
  /** Where its causes stand and where they would have to, as short as can be. */
  readonly short: string;
  readonly sentence: string;
  /** Of opening it. */
  readonly cautions: readonly string[];
  /** Positions from 0 to 1 with their words; left out where nothing changes. */
  readonly line?: {
    readonly at: number;
    readonly from: number;
    readonly now: string;
    readonly threshold: string;
  };
  readonly tests?: {
    readonly heading: string;
    readonly steps: readonly { readonly id: string; readonly label: string; readonly cautions: readonly string[] }[];
    readonly reached: string;
    readonly mistaken: string;
  };
  /** How many sequences of tests were not looked at; '' where all were. */
  readonly search: string;
  /** No tests are left that could bring it there. */
  readonly noTests: boolean;
  readonly causes: readonly string[];
}

/** Puts core's answer about one thing to open into words. */
export function whatItTakesView(knowledge: Knowledge, answer: Answers['whatItTakes']): WhatItTakesView {
  const words = t.ahead.whatItTakes;
  const { status, probability, threshold: from, tests, step, search } = answer;
  const now = shortChance(probability);
  const threshold = from === undefined ? '' : shortChance(from);
  const id = step.kind === 'access' ? step.access : step.repair;
  const sentence = (): string => {
    switch (status) {
      case 'reachable':
        return words.reachable(now, threshold);
      case 'already-best':
        return from === undefined ? words.certain(now) : words['already-best'](now, threshold);
      case 'already-open':
      case 'impossible':
      case 'never':
        return words[status];
    }
  };
  return {
    id,
    label: step.kind === 'access' ? knowledge.accessLabel(id) : knowledge.repairLabel(id),
    matters: status === 'reachable' || status === 'already-best',
    short: status === 'already-best' ? words.best : words.short(now, threshold),
    sentence: sentence(),
    cautions: step.cautions.map(knowledge.cautionText),
    ...(from === undefined ? {} : { line: { at: probability, from, now, threshold } }),
    ...(tests === undefined
      ? {}
      : {
          tests: {
            heading: tests.isLikely ? words.tests : words.testsUnlikely,
            steps: tests.tests.map(({ test, cautions }) => ({
              id: test,
              label: knowledge.testLabel(test),
              cautions: cautions.map(knowledge.cautionText),
            })),
            reached: `${words.testsPrice(coreLanguage.formatMoney(tests.price))} ${words.reachedTrue(shortChance(tests.reachedIfTrue))}`,
            mistaken: words.reachedFalse(shortChance(tests.reachedIfFalse)),
          },
        }),
    search: search.unexamined === 0 ? '' : words.unexamined(search.examined, search.unexamined),
    noTests: status === 'reachable' && tests === undefined,
    causes: answer.causes.map((cause) => knowledge.causeLabel(cause)),
  };
}
