/** A drawing as a file that stands alone: what it names of the page's tokens is written out as it looks now. */
export function svgFile(drawing: SVGSVGElement): string {
  const look = getComputedStyle(document.documentElement);
  const text = new XMLSerializer().serializeToString(drawing).replaceAll(/<!--.*?-->/g, '');
  return text.replaceAll(/var\((--[\w-]+)\)/g, (_, token: string) =>
    look.getPropertyValue(token).trim().replaceAll('"', "'"),
  );
}

/** The same as pixels. @param scale pixels per unit of the drawing. @returns null when the browser draws no such picture. */
export async function pngFile(drawing: SVGSVGElement, scale: number): Promise<Blob | null> {
  const { width, height } = drawing.viewBox.baseVal;
  const picture = new Image();
  picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgFile(drawing))}`;
  await picture.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width * scale, height * scale];
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((done) => canvas.toBlob(done, 'image/png'));
}
