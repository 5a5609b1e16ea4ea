/** Goes with every list of proposed tests and repairs, whatever their own cautions. */
export const usualCaution: string =
  'Es gilt das Verfahren des Fahrzeugherstellers und was am Ort vorgeschrieben ist; was Fachleuten mit Berechtigung vorbehalten ist, bleibt ihnen. Wo dies hier abweicht, gilt jenes.';
