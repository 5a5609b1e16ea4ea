/** When not to drive on, whatever the cause: on the first screen and beside every next step. */
export const stopAndTow: string =
  'Warning lamp flashing, smell of fuel, or hammering: stop, switch off, do not drive on, have it towed. A misfire overheats the catalyst.';
