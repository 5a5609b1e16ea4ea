import { type CompiledModel, compileModel, FaultoddsError } from '@faultodds/core';
import { changeNumber } from '@faultodds/core/doubt';
import { answerQuestion } from './answerQuestion.ts';
import { makePause } from './makePause.ts';
import type { Reply, Request } from './question.ts';

let compiled: CompiledModel | undefined;
let wanted = new AbortController();
let working: Promise<void> = Promise.resolve();

addEventListener('message', ({ data }: MessageEvent<Request>) => {
  if (data.kind === 'model') {
    compiled = compileModel(data.model);
    return;
  }
  wanted.abort();
  if (data.kind === 'stop') return;
  const { signal } = (wanted = new AbortController());
  working = working.then(() => answer(data, signal));
});

async function answer(
  { id, changes, questions }: Request & { readonly kind: 'questions' },
  signal: AbortSignal,
): Promise<void> {
  if (compiled === undefined) return;
  try {
    signal.throwIfAborted();
    const changed = changes.reduce((model, { path, value }) => changeNumber(model, path, value), compiled);
    const pause = makePause(signal);
    for (const question of questions)
      await answerQuestion(changed, question, (one) => send({ kind: 'answer', id, answer: one }), pause);
    send({ kind: 'finished', id });
  } catch (error) {
    if (signal.aborted) return;
    const problems = error instanceof FaultoddsError ? error.problems : [];
    send({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error), problems });
  }
}

function send(reply: Reply): void {
  postMessage(reply);
}
