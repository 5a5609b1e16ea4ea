/** When not to drive on, whatever the cause: on the first screen and beside every next step. */
export const stopAndTow: string =
  'Blinkt die Motorkontrollleuchte, riecht es nach Kraftstoff oder hämmert der Motor: anhalten, Motor aus, nicht weiterfahren, abschleppen lassen. Zündaussetzer überhitzen den Katalysator.';
