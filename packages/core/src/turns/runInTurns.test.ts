import { expect, test } from 'vitest';
import { countTurns } from '../../../../tests/fixtures/countTurns.ts';
import { runInTurns } from './runInTurns.ts';
import { runToEnd } from './runToEnd.ts';
import type { Turns } from './turns.ts';
import { untilAborted } from './untilAborted.ts';

/** Counts to `to`, one a turn, and tells every other number. */
function* counting(to: number, signal?: { readonly aborted: boolean }): Turns<number, string> {
  let at = 0;
  while (at < to && signal?.aborted !== true) {
    at += 1;
    yield at % 2 === 0 ? `${at}` : undefined;
  }
  return at;
}

test('there is a pause after every turn, and what is told meanwhile is told before it', async () => {
  const seen: string[] = [];
  const pause = (): Promise<void> => Promise.resolve(void seen.push('pause'));
  const onMeanwhile = (text: string): void => void seen.push(text);
  expect(await runInTurns(counting(3), { pause, onMeanwhile })).toBe(3);
  expect(seen).toEqual(['pause', '2', 'pause', 'pause']);
  expect(runToEnd(counting(3))).toBe(3);
});

test('a question aborted during a pause answers from what it has', async () => {
  const stop = new AbortController();
  let pauses = 0;
  const pause = (): undefined => {
    if ((pauses += 1) === 2) stop.abort();
  };
  expect(await runInTurns(counting(1000, stop.signal), { pause })).toBe(2);
  expect(pauses).toBe(2);
});

test('a pause that rejects gives the computation up', async () => {
  const reason = new DOMException('not wanted any more', 'AbortError');
  let pauses = 0;
  const pause = (): Promise<void> | undefined => ((pauses += 1) === 3 ? Promise.reject(reason) : undefined);
  await expect(runInTurns(counting(1000), { pause })).rejects.toBe(reason);
  expect(pauses).toBe(3);
});

test('no pause is an OptionError', async () => {
  await expect(runInTurns(counting(1), {} as never)).rejects.toThrow(
    expect.objectContaining({ name: 'OptionError', path: '/pause' }),
  );
});

test('a part of a computation ends with the signal, without an answer', () => {
  const stop = { aborted: false };
  expect(runToEnd(untilAborted(counting(4), stop))).toBe(4);
  expect(countTurns(untilAborted(counting(4), stop)).turns).toBe(4);
  const turns = untilAborted(counting(1000), stop);
  turns.next();
  stop.aborted = true;
  expect(turns.next()).toEqual({ done: true, value: undefined });
});
