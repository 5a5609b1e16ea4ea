/** JSON Pointer (RFC 6901) of a path of keys and positions; `''` is the whole value. */
export function jsonPointer(path: readonly PropertyKey[]): string {
  return path.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** The keys a JSON Pointer is made of. */
export function keysOfPointer(pointer: string): readonly string[] {
  return pointer
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
}
