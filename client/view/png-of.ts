/** Twice the size that it is drawn for, so that it is sharp on paper. */
const scale = 2;

/** A drawing as a bitmap, always in the colours of paper whatever the editor looks like. */
export async function pngOf(svg: string): Promise<Uint8Array> {
  const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  const style = drawing.querySelector('style');
  // Each rule of the style stands on its own line; those for other screens and themes go.
  if (style !== null) style.textContent = (style.textContent ?? '').split('\n').filter((rule) => !rule.startsWith('@media') && !rule.startsWith('.vscode-')).join('\n');
  const [width, height] = [Number(drawing.getAttribute('width')), Number(drawing.getAttribute('height'))];
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(drawing))}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width * scale, height * scale];
  canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (blob === null) throw new Error('the canvas gave no bitmap');
  return new Uint8Array(await blob.arrayBuffer());
}
