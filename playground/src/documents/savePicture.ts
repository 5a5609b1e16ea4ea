import { flushSync, mount, unmount } from 'svelte';
import RankShiftSheet from '../figures/RankShiftSheet.svelte';
import { shortChance } from '../words/shortChance.ts';
import { pngFile, svgFile } from './pictureFile.ts';
import type { RankShiftView } from '../views/rankShiftView.ts';
import { saveFile } from '../device/saveFile.ts';

/** How many pixels of the saved picture stand for one of the page: sharp on paper and on a projector. */
const SCALE = 2;

/** Saves how the ranking moved as a picture that stands alone. @param name of the file, without its ending. */
export async function savePicture(view: RankShiftView, name: string, kind: 'svg' | 'png'): Promise<void> {
  const target = document.createElement('div');
  const props = {
    columns: view.columns,
    lines: view.lines,
    title: view.title,
    chanceInWords: shortChance,
    legend: true,
  };
  const sheet = mount(RankShiftSheet, { target, props });
  flushSync();
  const drawing = target.querySelector('svg');
  if (drawing && kind === 'svg') saveFile(`${name}.svg`, svgFile(drawing), 'image/svg+xml');
  const pixels = drawing && kind === 'png' ? await pngFile(drawing, SCALE) : null;
  if (pixels) saveFile(`${name}.png`, pixels, 'image/png');
  await unmount(sheet);
}
