import type { LinePosition, LineRange, PicturesResult, RigPicture } from '../protocol.ts';
import type { ShownPicture } from './messages.ts';

const shown = (picture: RigPicture): ShownPicture => ({ ...picture, old: false });

/**
 * What is shown of a new answer after what was shown before: a picture whose text cannot be read stays as it was when it
 * could, and says so. One that is gone stays too while something cannot be read, since an open brace hides the blocks below it.
 */
export function shownPictures(before: readonly ShownPicture[], { pictures, broken }: PicturesResult): ShownPicture[] {
  const known = new Map(before.map((p) => [p.id, p]));
  const found = pictures.map((picture): ShownPicture => {
    const last = known.get(picture.id);
    const isGood = last !== undefined && (last.old || last.broken === undefined);
    if (picture.broken === undefined || !isGood) return shown(picture);
    return { ...last, range: picture.range, broken: picture.broken, old: true };
  });
  const [first] = broken;
  if (first === undefined) return found;
  const here = new Set(found.map((p) => p.id));
  const result = [...found];
  before.forEach((picture, i) => {
    if (here.has(picture.id)) return;
    // Behind the nearest of its neighbours that is still there.
    const neighbour = before.slice(0, i).findLast((p) => result.some((r) => r.id === p.id));
    const at = neighbour === undefined ? 0 : result.findIndex((r) => r.id === neighbour.id) + 1;
    result.splice(at, 0, { ...picture, broken: first.says, old: true });
  });
  return result;
}

const isBefore = (a: LinePosition, b: LinePosition): boolean => a.line < b.line || (a.line === b.line && a.character < b.character);
const holds = ({ start, end }: LineRange, at: LinePosition): boolean => !isBefore(at, start) && !isBefore(end, at);
const isInside = (a: LineRange, b: LineRange): boolean => !isBefore(a.start, b.start) && !isBefore(b.end, a.end) && (isBefore(b.start, a.start) || isBefore(a.end, b.end));

/** The picture that the cursor stands in, by the least of the text. */
export function pictureUnder(pictures: readonly { readonly id: string; readonly range: LineRange }[], at: LinePosition): string | undefined {
  let found: { readonly id: string; readonly range: LineRange } | undefined;
  for (const picture of pictures) {
    if (holds(picture.range, at) && (found === undefined || isInside(picture.range, found.range))) found = picture;
  }
  return found?.id;
}

/** A name for a file that a picture is saved in. */
export const fileNameOf = (rig: string, id: string, extension: string): string =>
  `${[rig.replace(/\.rig$/, ''), id].join(' ').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 100)}.${extension}`;
