import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { createAsker } from './asker.ts';
import type { Answer, Question, Request } from './question.ts';

const { model } = loadKnowledge(misfire, []);
const facts = {
  context: {},
  observations: [{ kind: 'result', id: 'r1', test: 'cranking-compression', outcome: 'low' }],
} as const;
const conflict: Question = { kind: 'conflict', facts };
const long: Question = { kind: 'sensitivity', facts };

/** A worker that never answers by itself. */
class SilentWorker {
  readonly asked: Request[] = [];
  ended = false;
  onmessage: ((event: { data: unknown }) => void) | null = null;
  postMessage(request: Request): void {
    this.asked.push(request);
  }
  terminate(): void {
    this.ended = true;
  }
}

function silent(): { made: SilentWorker[]; make: () => Worker } {
  const made: SilentWorker[] = [];
  return { made, make: () => (made[made.push(new SilentWorker()) - 1] ?? null) as unknown as Worker };
}

test('no worker is started before the first question, and it gets the model first', () => {
  const { made, make } = silent();
  const asker = createAsker(model, make);
  expect(made).toHaveLength(0);
  asker.ask([conflict], [], vi.fn());
  expect(made[0]!.asked.map(({ kind }) => kind)).toEqual(['model', 'questions']);
});

test('a worker that is busy for long is ended when something else is asked, and its late answer goes nowhere', () => {
  const { made, make } = silent();
  const asker = createAsker(model, make);
  const first = vi.fn();
  const second = vi.fn();
  asker.ask([long], [], first);
  const late = made[0]!.onmessage!;
  asker.ask([conflict], [], second);
  expect(made[0]!.ended).toBe(true);
  expect(made).toHaveLength(2);
  late({ data: { kind: 'answer', id: 1, answer: { kind: 'conflict', answer: {} } } });
  expect(first).not.toHaveBeenCalled();
  expect(second).not.toHaveBeenCalled();
});

test('a worker that answers in turns is told to stop and asked anew, and its late answer goes nowhere', () => {
  const { made, make } = silent();
  const asker = createAsker(model, make);
  const first = vi.fn();
  asker.ask([{ kind: 'ranking', facts, draws: 4 }], [], first);
  asker.ask([{ kind: 'advice', facts, circumstances: {}, draws: 2 }], [], vi.fn());
  expect(made).toHaveLength(1);
  expect(made[0]!.ended).toBe(false);
  expect(made[0]!.asked.map(({ kind }) => kind)).toEqual(['model', 'questions', 'stop', 'questions']);
  made[0]!.onmessage!({ data: { kind: 'answer', id: 1, answer: { kind: 'ranking', answer: {} } } });
  expect(first).not.toHaveBeenCalled();
  asker.end();
  expect(made[0]!.ended).toBe(true);
});

test('a real worker gives up a hundred thousand draws for the next question, and answers that', async () => {
  const asker = createAsker(model);
  const endless = vi.fn();
  asker.ask([{ kind: 'ranking', facts, draws: 100_000 }], [], endless);
  const answers = await new Promise<Answer[]>((resolve) => {
    const told: Answer[] = [];
    asker.ask(
      [{ kind: 'ranking', facts, draws: 3 }],
      [],
      (one) => told.push(one),
      () => resolve(told),
    );
  });
  expect(answers.map((one) => one.kind === 'ranking' && one.answer.draws)).toEqual([3]);
  expect(endless).not.toHaveBeenCalled();
  asker.end();
});

test('the questions about the open case never end their worker: it is told to stop, and stays warm', () => {
  const { made, make } = silent();
  const asker = createAsker(model, make);
  const background: readonly Question[] = [
    { kind: 'ahead', facts, circumstances: {} },
    conflict,
    { kind: 'toAsk', facts },
    { kind: 'ranking', facts, draws: 4 },
    { kind: 'advice', facts, circumstances: {}, draws: 2 },
    { kind: 'ahead', facts, circumstances: {}, steps: 200 },
  ];
  for (let at = 0; at < 3; at += 1) asker.ask(background, [], vi.fn());
  expect(made).toHaveLength(1);
  expect(made[0]!.ended).toBe(false);
});

test('a real worker looks several steps ahead first of all, and goes on from what it has when it looks longer', async () => {
  const asker = createAsker(model);
  const answers: Answer[] = [];
  await new Promise((resolve) =>
    asker.ask(
      [
        { kind: 'ahead', facts, circumstances: {} },
        { kind: 'ahead', facts, circumstances: {}, steps: 40 },
      ],
      [],
      (answer) => answers.push(answer),
      resolve,
    ),
  );
  const steps = answers.flatMap((one) => (one.kind === 'ahead' ? [one.answer.steps] : []));
  expect(steps[0]).toBe(answers[0]!.kind === 'ahead' && answers[0]!.answer.oneStep.kind === 'test' ? 12 : 24);
  expect(steps.at(-1)).toBe(40);
  const costs = answers.flatMap((one) => (one.kind === 'ahead' ? [one.answer.expectedCost.amount] : []));
  costs.forEach((cost, at) => at > 0 && expect(cost).toBeLessThanOrEqual(costs[at - 1]!));
});

test('a worker that has finished is asked again, not replaced', () => {
  const { made, make } = silent();
  const asker = createAsker(model, make);
  const onend = vi.fn();
  asker.ask([conflict], [], vi.fn(), onend);
  made[0]!.onmessage!({ data: { kind: 'finished', id: 1 } });
  expect(onend).toHaveBeenCalledWith('');
  asker.ask([conflict], [], vi.fn());
  expect(made).toHaveLength(1);
  expect(made[0]!.ended).toBe(false);
});

test('a real worker answers in the order asked, with better answers after rougher ones', async () => {
  const asker = createAsker(model);
  const answers: Answer[] = [];
  const refused = await new Promise<string>((resolve) =>
    asker.ask(
      [
        { kind: 'toAsk', facts },
        { kind: 'ranking', facts, draws: 4 },
        { kind: 'advice', facts, circumstances: {}, draws: 2 },
        { kind: 'ranking', facts, draws: 8 },
        { kind: 'sensitivity', facts },
      ],
      [],
      (answer) => answers.push(answer),
      resolve,
    ),
  );
  expect(refused).toBe('');
  expect(answers.map(({ kind }) => kind)).toEqual(['toAsk', 'ranking', 'advice', 'ranking', 'sensitivity']);
  const draws = answers.flatMap((one) => (one.kind === 'ranking' ? [one.answer.draws] : []));
  expect(draws).toEqual([4, 8]);
});

test('a changed number changes the answer; a number that does not exist is refused in words', async () => {
  const asker = createAsker(model);
  const ask = (changes: { path: string; value: number }[]): Promise<Answer | string> =>
    new Promise((resolve) => asker.ask([{ kind: 'ranking', facts, draws: 2 }], changes, resolve, resolve));
  const leading = (answer: Answer | string, cause: string): number =>
    typeof answer === 'object' && answer.kind === 'ranking'
      ? (answer.answer.causes.find((one) => one.cause === cause)?.probability ?? 0)
      : 0;
  const cause = model.causes[0]!;
  const before = leading(await ask([]), cause.id);
  const after = leading(await ask([{ path: '/causes/0/weight/best', value: cause.weight.best * 20 }]), cause.id);
  expect(after).toBeGreaterThan(before);
  expect(await ask([{ path: '/nowhere/best', value: 1 }])).toMatch(/no number/);
});
