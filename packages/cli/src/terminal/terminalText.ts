import { LOOK_END, looks } from './paint.ts';
import { plainText } from './plainText.ts';
import { visibleText } from './visibleText.ts';

/** Text as it goes to a terminal: what could steer it is spelled out, looks become escape sequences, and where only ASCII is shown the
 * rest is spelled out too. Everything that is printed goes through here. */
export function terminalText(text: string, unicode: boolean): string {
  const seen = Object.values(looks).reduce(
    (painted, { mark, on, off }) =>
      painted.replaceAll(new RegExp(`${mark}([^${LOOK_END}]*)${LOOK_END}`, 'g'), `\u001b[${on}m$1\u001b[${off}m`),
    visibleText(text),
  );
  return unicode ? seen : plainText(seen);
}
