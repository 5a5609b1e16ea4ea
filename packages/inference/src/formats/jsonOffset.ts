/** Where in JSON text a value stands, or where the text stops being JSON.
 * @param pointer JSON Pointer of the value; a missing part gives the nearest value that exists.
 * @returns the offset, and whether the text up to there was sound. */
export function jsonOffset(text: string, pointer: string): { readonly offset: number; readonly sound: boolean } {
  const wanted = pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
  const blank = /[ \t\n\r]*/y;
  const plain = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
  const escape = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
  const letters = /[^"\\\p{Cc}]+/uy;
  let at = 0;
  let found = 0;
  let sound = true;
  const skip = (): void => {
    blank.lastIndex = at;
    blank.exec(text);
    at = blank.lastIndex;
  };
  /** Moves over what a pattern takes here, if it takes anything. */
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const token = (): string | null => {
    const from = at;
    if (text[at] !== '"') {
      if (take(plain)) return text.slice(from, at);
    } else {
      // piece by piece: one pattern for all of a long string would run out of stack
      at += 1;
      while (take(letters) || take(escape));
      if (text[at] === '"') return text.slice(from, (at += 1));
      at = from;
    }
    sound = false;
    return null;
  };
  const sign = (mark: string): boolean => {
    skip();
    if (text[at] !== mark) return false;
    at += 1;
    return true;
  };
  // open containers: the next index or null for an object, and how far along the pointer they are (-1: not on it)
  const open: { index: number | null; depth: number }[] = [];
  let depth = 0;
  for (;;) {
    // a value starts here
    skip();
    if (depth === 0 || (depth > 0 && depth <= wanted.length)) found = at;
    if (sign('{') || sign('[')) {
      const isList = text[at - 1] === '[';
      open.push({ index: isList ? 0 : null, depth });
      if (sign(isList ? ']' : '}')) open.pop();
      else if (!enter()) return { offset: at, sound: false };
      else continue;
    } else if (token() === null) return { offset: at, sound: false };
    // a value ended: go on in the container around it
    for (;;) {
      const around = open[open.length - 1];
      if (around === undefined) {
        skip();
        return at < text.length ? { offset: at, sound: false } : { offset: found, sound };
      }
      if (sign(',')) {
        if (around.index !== null) around.index += 1;
        if (!enter()) return { offset: at, sound: false };
        break;
      }
      if (!sign(around.index === null ? '}' : ']')) return { offset: at, sound: false };
      open.pop();
    }
  }

  /** Takes the key, if the container is an object, and says how far along the pointer the next value is. */
  function enter(): boolean {
    const around = open[open.length - 1]!;
    let name = String(around.index);
    if (around.index === null) {
      skip();
      const key = text[at] === '"' ? token() : null;
      if (key === null || !sign(':')) return false;
      name = JSON.parse(key) as string;
    }
    depth = around.depth >= 0 && wanted[around.depth] === name ? around.depth + 1 : -1;
    return true;
  }
}
