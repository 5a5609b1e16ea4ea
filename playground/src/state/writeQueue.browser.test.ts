import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createWriteQueue } from './writeQueue.svelte.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A write that ends when it is told to. */
function write(log: string[], name: string) {
  const { promise, resolve, reject } = Promise.withResolvers<void>();
  const begin = (): Promise<void> => {
    log.push(name);
    return promise;
  };
  return { begin, end: resolve, fail: (of: string) => reject(new DOMException('', of)) };
}

/** Everything that can go on without the clock has gone on. */
const gone = () => vi.advanceTimersByTimeAsync(0);

test('one write after the other; of what waits under one key only the newest is written', async () => {
  const log: string[] = [];
  const writes = createWriteQueue();
  const first = write(log, 'first');
  const newest = write(log, 'newest');
  expect(writes.isSaved).toBe(true);
  writes.put('case', first.begin);
  writes.put('case', write(log, 'overtaken').begin);
  writes.put('case', newest.begin);
  await gone();
  expect(log).toEqual(['first']);
  first.end();
  await gone();
  expect(log).toEqual(['first', 'newest']);
  expect(writes.isSaved).toBe(false);
  expect(writes.isWaiting('case')).toBe(true);
  newest.end();
  await gone();
  expect(writes.isSaved).toBe(true);
  expect(writes.isWaiting('case')).toBe(false);
});

test('nothing is called kept while any of it is under way, and whoever waits hears when it is', async () => {
  const log: string[] = [];
  const writes = createWriteQueue();
  const [one, other] = [write(log, 'one'), write(log, 'other')];
  writes.put('one', one.begin);
  writes.put('other', other.begin);
  const heard = vi.fn();
  void writes.settled().then(heard);
  one.end();
  await gone();
  expect([writes.isSaved, heard.mock.calls.length]).toEqual([false, 0]);
  other.end();
  await gone();
  expect([writes.isSaved, heard.mock.calls.length]).toEqual([true, 1]);
});

test('what does not fit stays, is said, and is written by itself once there is room', async () => {
  let isFull = true;
  const written = vi.fn();
  const writes = createWriteQueue();
  writes.put('case', async () => {
    if (isFull) throw new DOMException('', 'QuotaExceededError');
    written();
  });
  await gone();
  expect([writes.isSaved, writes.trouble]).toEqual([false, 'full']);
  await writes.settled();
  isFull = false;
  await vi.runAllTimersAsync();
  expect(written).toHaveBeenCalledOnce();
  expect([writes.isSaved, writes.trouble]).toEqual([true, null]);
});

test('a question that is answered does not hide that something could not be written', async () => {
  const writes = createWriteQueue();
  writes.put('case', () => Promise.reject(new DOMException('', 'QuotaExceededError')));
  await gone();
  expect(await writes.ask(Promise.resolve('the list'))).toBe('the list');
  expect(writes.trouble).toBe('full');
});

test('a device that does not answer is called silent; its answer, however late, still counts', async () => {
  const log: string[] = [];
  const writes = createWriteQueue();
  const late = write(log, 'late');
  writes.put('case', late.begin);
  await vi.advanceTimersByTimeAsync(60_000);
  expect([writes.isSaved, writes.trouble]).toEqual([false, 'silent']);
  late.end();
  await gone();
  expect([writes.isSaved, writes.trouble]).toEqual([true, null]);
  expect(log).toEqual(['late']);
});

test('what was recorded while a write failed takes its place', async () => {
  const log: string[] = [];
  const writes = createWriteQueue();
  const [older, newer] = [write(log, 'older'), write(log, 'newer')];
  writes.put('case', older.begin);
  writes.put('case', newer.begin);
  older.fail('UnknownError');
  newer.end();
  await gone();
  expect(writes.trouble).toBe('refused');
  await vi.runAllTimersAsync();
  expect(log).toEqual(['older', 'newer']);
  expect([writes.isSaved, writes.trouble]).toEqual([true, null]);
});

test('what is deleted meanwhile is not written', async () => {
  const log: string[] = [];
  const writes = createWriteQueue();
  const open = write(log, 'open');
  writes.put('open', open.begin);
  writes.put('case', write(log, 'case').begin);
  writes.drop('case');
  open.end();
  await gone();
  expect(log).toEqual(['open']);
  expect(writes.isSaved).toBe(true);
});
