import { EvidenceError } from '../errors/evidenceError.ts';
import { unknownId } from '../validation/findUnknownId.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';

/** Access operations with all their prerequisites, as bits in the model's order of access.
 * @throws EvidenceError `access-unknown` */
export function accessBits(compiled: CompiledModel, ids: readonly string[]): number {
  return ids.reduce((bits, id, at) => {
    const index = compiled.model.access.findIndex((access) => access.id === id);
    if (index < 0) {
      throw new EvidenceError([unknownId('access', id, compiled.accessBit.keys(), `/openAccess/${at}`)]);
    }
    return bits | compiled.accessClosure[index]!;
  }, 0);
}

/** Ids of access bits, prerequisites first. */
export function accessIds(compiled: CompiledModel, bits: number): readonly string[] {
  const depth = (index: number): number => countBits(compiled.accessClosure[index]!);
  return compiled.model.access
    .map((access, index) => ({ id: access.id, index }))
    .filter(({ index }) => (bits & (1 << index)) !== 0)
    .sort((a, b) => depth(a.index) - depth(b.index) || a.index - b.index)
    .map(({ id }) => id);
}

function countBits(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
