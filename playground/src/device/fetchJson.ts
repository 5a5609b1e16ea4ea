import { within } from './within.ts';

/** A file that has not come by then does not come. Milliseconds; long enough for a slow network. */
const PATIENCE = 30_000;

/** What a file of the page holds. Rejects when it does not come, comes as something else, or not in time. */
export async function fetchJson(address: string): Promise<unknown> {
  const read = async (): Promise<unknown> => {
    const answer = await fetch(address);
    if (!answer.ok) throw new DOMException(String(answer.status), 'NetworkError');
    return answer.json();
  };
  return within(PATIENCE, read());
}
