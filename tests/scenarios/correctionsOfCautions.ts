/** Where the cautions of the data differ from the dossier's on purpose: texts that were wrong for the place (priors/README.md, "Third
 * reading"). Everything else is only added to. */
export const correctionsOfCautions = {
  /** caution -> steps that named it in the dossier, and the caution that stands there now. */
  replaced: {
    // "cranking with plugs out" on steps turned by hand
    'disable-fuel-ignition': {
      by: 'turn-by-hand',
      at: ['borescope-cylinder', 'rotate-and-watch', 'valve-lift-dial', 'lobe-pair-angle', 'follower-lash-check'],
    },
  },
  /** Texts that say the same as before, and more: the dossier's hazard is still in them. */
  reworded: [
    'high-voltage',
    'fuel-pressure',
    'fire',
    'exhaust-gas',
    'rotating-parts',
    'disable-fuel-ignition',
    'compressed-air',
    'raised-vehicle',
    'heavy-parts',
    'road-test',
    'catalyst-heat',
    'high-rpm-in-bay',
    'coolant-hot',
    'timing-loss',
    'cap-sequence',
    'dropped-objects',
  ],
  /** Hazards the dossier had no caution for. */
  added: [
    'fuel-jet',
    'fuel-leak-check',
    'self-starting',
    'turn-by-hand',
    'stored-force',
    'engine-support',
    'battery-shorts',
    'eyes-lungs',
    'heavy-head',
    'hydraulic-lock',
    'turn-twice',
    'tools-counted',
  ],
} as const;

/** Tests that need more opened than the dossier says: the oil test is cranked with all plugs out, as the dry one. */
export const correctedAccess: Readonly<Record<string, string>> = { 'wet-compression': 'all-plugs-out' };

/** The dossier's cautions of a test as they stand now. */
export function correctedCautions(test: string, cautions: readonly string[]): readonly string[] {
  const { by, at } = correctionsOfCautions.replaced['disable-fuel-ignition'];
  return cautions.map((id) => (id === 'disable-fuel-ignition' && (at as readonly string[]).includes(test) ? by : id));
}
