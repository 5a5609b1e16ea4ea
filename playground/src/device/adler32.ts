/** Checksum of bytes, so that a letter changed on the way is noticed. Source: RFC 1950, section 8.2 (Adler-32). */
export function adler32(bytes: Uint8Array): number {
  let [low, high] = [1, 0];
  for (const byte of bytes) {
    low = (low + byte) % 65521;
    high = (high + low) % 65521;
  }
  return high * 65536 + low;
}
