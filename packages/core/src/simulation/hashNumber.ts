/** A whole number in [0, 2^32) that depends on both, so that neighbouring numbers get unlike seeds.
 * Source: 32-bit mixing steps and constants of MurmurHash3's finaliser (Appleby, public domain). */
export function hashNumber(seed: number, number: number): number {
  let key = (Math.imul(seed | 0, 0x9e3779b1) + (number | 0)) | 0;
  key = Math.imul(key ^ (key >>> 16), 0x85ebca6b);
  key = Math.imul(key ^ (key >>> 13), 0xc2b2ae35);
  return (key ^ (key >>> 16)) >>> 0;
}
