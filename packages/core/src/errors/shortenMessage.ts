// longer than any message of ours; what was found and is quoted may be a whole file
const LONGEST = 500;

/** A message, cut where it is longer than any of ours would be. */
export function shortenMessage(message: string): string {
  return message.length <= LONGEST ? message : `${message.slice(0, LONGEST)}…`;
}
