import { canonicalJson } from './canonicalJson.ts';
import { fnv1a } from './fnv1a.ts';
import type { Model } from './model.ts';

/** Which model something was made with. Written into every case and plan. */
export interface ModelIdentity {
  readonly id: string;
  /** Its content version, the author's own count. */
  readonly version: number;
  /** Of its whole content, 16 hexadecimal digits: equal only when nothing differs. */
  readonly hash: string;
}

const known = new WeakMap<Model, ModelIdentity>();

/** Which model this is. The hash (FNV-1a of the canonical JSON, keys in any order) is computed when first asked and remembered.
 * @example
 * ```ts
 * const { id, version, hash } = modelIdentity(pump.model);
 * [id, version]; // ['pump', 1]
 * hash.length; // 16
 * ``` */
export function modelIdentity(model: Model): ModelIdentity {
  const already = known.get(model);
  if (already !== undefined) return already;
  const identity = { id: model.id, version: model.contentVersion ?? 1, hash: fnv1a(canonicalJson(model)) };
  known.set(model, identity);
  return identity;
}
