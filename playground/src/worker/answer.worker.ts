import { changeNumber, type CompiledModel, compileModel, FaultoddsError } from '@faultodds/core';
import { answerQuestion } from './answerQuestion.ts';
import type { Reply, Request } from './question.ts';

let compiled: CompiledModel | undefined;

addEventListener('message', ({ data }: MessageEvent<Request>) => {
  if (data.kind === 'model') {
    compiled = compileModel(data.model);
    return;
  }
  const { id, changes, questions } = data;
  try {
    if (compiled === undefined) return;
    const changed = changes.reduce((model, { path, value }) => changeNumber(model, path, value), compiled);
    for (const question of questions)
      answerQuestion(changed, question, (answer) => send({ kind: 'answer', id, answer }));
    send({ kind: 'finished', id });
  } catch (error) {
    const problems = error instanceof FaultoddsError ? error.problems : [];
    send({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error), problems });
  }
});

function send(reply: Reply): void {
  postMessage(reply);
}
