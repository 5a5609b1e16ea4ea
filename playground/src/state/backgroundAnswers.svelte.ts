import { factsOf, type Session } from '@faultodds/core';
import { untrack } from 'svelte';
import { createAsker } from '../worker/asker.ts';
import type { Answer, Answers, Question } from '../worker/question.ts';
import type { CaseStore } from './caseStore.svelte.ts';
import { fix, OPEN, type Standing, takeAnswer } from './standing.ts';
import type { Knowledge } from '../knowledge/knowledge.ts';

/** What is worked out beside the page about the open case. Absent until known; improving until `settled`. */
export interface BackgroundAnswers {
  readonly answers: Partial<Pick<Answers, 'conflict' | 'toAsk' | 'ranking' | 'advice'>>;
  readonly settled: boolean;
  /** The step that stands. */
  readonly standing: Standing;
}

/** Longer than this nobody waits for a step that looks further ahead. */
const LONGEST_WAIT = 1000;
/** Situations examined afterwards, for something better. */
const LOOK_ON = 200;

/** Whoever types or replays quickly is not followed at every step. */
const PAUSE = 100;
/** Draws of each round, for the ranking and for the dearer advice: rough figures soon, better ones after them. */
const ROUNDS = [
  [40, 10],
  [120, 30],
  [400, 100],
] as const;

/** Follows the open case: asks anew whenever it changes. Called while a component is being made.
 * @param resting whether something dearer is asked elsewhere: then this one waits, and goes on afterwards. Read reactively. */
export function createBackgroundAnswers(
  knowledge: () => Knowledge,
  store: () => CaseStore,
  resting: () => boolean,
): BackgroundAnswers {
  const asker = createAsker(knowledge().model);
  let answers = $state.raw<BackgroundAnswers['answers']>({});
  let settled = $state(false);
  let standing = $state.raw(OPEN);
  let of: Session | undefined;

  $effect(() => {
    const { session, state, circumstances, advice } = store().now;
    const rests = resting();
    if (of !== session) {
      // the order of the questions stays until the new one comes, less what was answered: it stands above others
      const toAsk = of?.start.id === session.start.id ? untrack(() => answers.toAsk) : undefined;
      answers = toAsk === undefined ? {} : { toAsk: toAsk.filter(({ feature }) => !(feature in state.context)) };
      settled = false;
      standing = advice.best.kind === 'prove' ? fix(OPEN) : OPEN;
      of = session;
    }
    asker.cancel();
    if (rests || untrack(() => settled)) return;
    const facts = factsOf(state);
    const take = (answer: Answer): void => {
      if (of !== session) return;
      if (answer.kind === 'ahead') standing = takeAnswer(standing, answer.answer, advice.best);
      else answers = { ...answers, [answer.kind]: answer.answer };
    };
    const questions: readonly Question[] = [
      { kind: 'ahead', facts, circumstances },
      { kind: 'conflict', facts },
      { kind: 'toAsk', facts },
      ...ROUNDS.flatMap(([ranking, firmness]): Question[] => [
        { kind: 'ranking', facts, draws: ranking },
        { kind: 'advice', facts, circumstances, draws: firmness },
      ]),
      { kind: 'ahead', facts, circumstances, steps: LOOK_ON },
    ];
    const timer = setTimeout(() => asker.ask(questions, [], take, () => (settled = of === session)), PAUSE);
    return () => clearTimeout(timer);
  });
  // apart from the questions, which wait while something dearer is asked: the step is fixed a second after the case changed
  $effect(() => {
    void store().now.session;
    const timer = setTimeout(() => (standing = fix(standing)), LONGEST_WAIT);
    return () => clearTimeout(timer);
  });
  $effect(() => () => asker.cancel());

  return {
    get answers() {
      return answers;
    },
    get settled() {
      return settled;
    },
    get standing() {
      return standing;
    },
  };
}
