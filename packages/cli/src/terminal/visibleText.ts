// control characters but tab and line feed, separators of lines and paragraphs, embeddings, overrides and isolates of writing direction
// oxlint-disable-next-line no-control-regex
const UNSEEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g;

/** Text in which every character that could steer a terminal, or make a line read other than it is, is spelled out as JSON spells it
 * (`\u001b`). Inside JSON it means the same as before. */
export function visibleText(text: string): string {
  return text.replaceAll(UNSEEN, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`);
}
