/** What a promise brings, or a `TimeoutError` when it has brought nothing by then; the promise itself goes on. */
export function within<T>(milliseconds: number, promise: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new DOMException('', 'TimeoutError')), milliseconds);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
