import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createKeeping } from './keeping.svelte.ts';

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
  const keeping = createKeeping();
  const first = write(log, 'first');
  const newest = write(log, 'newest');
  expect(keeping.isKept).toBe(true);
  keeping.put('case', first.begin);
  keeping.put('case', write(log, 'overtaken').begin);
  keeping.put('case', newest.begin);
  await gone();
  expect(log).toEqual(['first']);
  first.end();
  await gone();
  expect(log).toEqual(['first', 'newest']);
  expect(keeping.isKept).toBe(false);
  expect(keeping.isWaiting('case')).toBe(true);
  newest.end();
  await gone();
  expect(keeping.isKept).toBe(true);
  expect(keeping.isWaiting('case')).toBe(false);
});

test('nothing is called kept while any of it is under way, and whoever waits hears when it is', async () => {
  const log: string[] = [];
  const keeping = createKeeping();
  const [one, other] = [write(log, 'one'), write(log, 'other')];
  keeping.put('one', one.begin);
  keeping.put('other', other.begin);
  const heard = vi.fn();
  void keeping.settled().then(heard);
  one.end();
  await gone();
  expect([keeping.isKept, heard.mock.calls.length]).toEqual([false, 0]);
  other.end();
  await gone();
  expect([keeping.isKept, heard.mock.calls.length]).toEqual([true, 1]);
});

test('what does not fit stays, is said, and is written by itself once there is room', async () => {
  let isFull = true;
  const written = vi.fn();
  const keeping = createKeeping();
  keeping.put('case', async () => {
    if (isFull) throw new DOMException('', 'QuotaExceededError');
    written();
  });
  await gone();
  expect([keeping.isKept, keeping.trouble]).toEqual([false, 'full']);
  await keeping.settled();
  isFull = false;
  await vi.runAllTimersAsync();
  expect(written).toHaveBeenCalledOnce();
  expect([keeping.isKept, keeping.trouble]).toEqual([true, null]);
});

test('a question that is answered does not hide that something could not be written', async () => {
  const keeping = createKeeping();
  keeping.put('case', () => Promise.reject(new DOMException('', 'QuotaExceededError')));
  await gone();
  expect(await keeping.ask(Promise.resolve('the list'))).toBe('the list');
  expect(keeping.trouble).toBe('full');
});

test('a device that does not answer is called silent; its answer, however late, still counts', async () => {
  const log: string[] = [];
  const keeping = createKeeping();
  const late = write(log, 'late');
  keeping.put('case', late.begin);
  await vi.advanceTimersByTimeAsync(60_000);
  expect([keeping.isKept, keeping.trouble]).toEqual([false, 'silent']);
  late.end();
  await gone();
  expect([keeping.isKept, keeping.trouble]).toEqual([true, null]);
  expect(log).toEqual(['late']);
});

test('what was recorded while a write failed takes its place', async () => {
  const log: string[] = [];
  const keeping = createKeeping();
  const [older, newer] = [write(log, 'older'), write(log, 'newer')];
  keeping.put('case', older.begin);
  keeping.put('case', newer.begin);
  older.fail('UnknownError');
  newer.end();
  await gone();
  expect(keeping.trouble).toBe('refused');
  await vi.runAllTimersAsync();
  expect(log).toEqual(['older', 'newer']);
  expect([keeping.isKept, keeping.trouble]).toEqual([true, null]);
});

test('what is deleted meanwhile is not written', async () => {
  const log: string[] = [];
  const keeping = createKeeping();
  const open = write(log, 'open');
  keeping.put('open', open.begin);
  keeping.put('case', write(log, 'case').begin);
  keeping.drop('case');
  open.end();
  await gone();
  expect(log).toEqual(['open']);
  expect(keeping.isKept).toBe(true);
});
