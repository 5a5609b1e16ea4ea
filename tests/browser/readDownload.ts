import { buffer } from 'node:stream/consumers';
import type { Download } from 'playwright-core';

/** What the page gave out as a file. (A browser that is shared keeps its files to itself; they come as a stream.) */
export async function readDownload(download: Download): Promise<Buffer> {
  return buffer(await download.createReadStream());
}
