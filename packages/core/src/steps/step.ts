/** Something that can be proposed to a person: a test, a repair (alone, or with the drive that proves it), opening or closing an access
 * (with what must be opened or closed along with it), or that drive alone. Named by the ids of the model. */
export type Step =
  | { readonly kind: 'test'; readonly test: string }
  | { readonly kind: 'repair'; readonly repair: string }
  | { readonly kind: 'proved-repair'; readonly repair: string }
  | { readonly kind: 'open-access'; readonly access: string }
  | { readonly kind: 'close-access'; readonly access: string }
  | { readonly kind: 'proof-drive' };
