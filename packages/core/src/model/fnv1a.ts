/** 64-bit FNV-1a hash of a text in UTF-8, as 16 hexadecimal digits. Tells contents apart that differ by accident; proves nothing against
 * somebody who wants two to look alike. Source: Fowler, Noll, Vo; IETF draft-eastlake-fnv, "The FNV Non-Cryptographic Hash Algorithm". */
export function fnv1a(text: string): string {
  // offset basis cbf29ce484222325; prime 2^40 + 435. Two halves of 32 bits: every product below stays under 2^53
  let [high, low] = [0xcbf29ce4, 0x84222325];
  const add = (byte: number): void => {
    const mixed = (low ^ byte) >>> 0;
    const product = mixed * 435;
    low = product >>> 0;
    high = (high * 435 + Math.floor(product / 0x1_0000_0000) + ((mixed << 8) >>> 0)) % 0x1_0000_0000;
  };
  for (let at = 0; at < text.length; at += 1) {
    const point = text.codePointAt(at)!;
    if (point < 0x80) {
      add(point);
      continue;
    }
    if (point >= 0x1_0000) at += 1; // two code units
    const tail = point < 0x800 ? 1 : point < 0x1_0000 ? 2 : 3;
    add(([0, 0xc0, 0xe0, 0xf0][tail]! | (point >> (6 * tail))) & 0xff);
    for (let left = tail - 1; left >= 0; left -= 1) add(0x80 | ((point >> (6 * left)) & 0x3f));
  }
  return [high, low].map((half) => half.toString(16).padStart(8, '0')).join('');
}
