/** A duration in whole minutes, as in "25 min", "1 h 30 min", "2 h".
 * @example
 * ```ts
 * formatMinutes(90) // '1 h 30 min'
 * formatMinutes(0.4) // 'unter 1 min'
 * ``` */
export function formatMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 1) return minutes > 0 ? 'unter 1 min' : '0 min';
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
