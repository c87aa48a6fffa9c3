import { describe, expect, test } from 'vitest';
import type { PageWords, ShownPicture } from '../../client/pictures/messages.ts';
import { picturesPage } from '../../client/pictures/page.ts';
import { fileNameOf, pictureUnder, shownPictures } from '../../client/pictures/shown-pictures.ts';
import type { LineRange, PicturesResult, RigPicture } from '../../client/protocol.ts';

const lines = (from: number, to: number): LineRange => ({ start: { line: from, character: 0 }, end: { line: to, character: 1 } });
const picture = (id: string, svg: string, broken?: string): RigPicture => ({ id, title: id, description: id, svg, table: { head: [], rows: [] }, range: lines(0, 1), ...(broken === undefined ? {} : { broken }) });
const answer = (pictures: readonly RigPicture[], broken?: string): PicturesResult => ({ pictures, leftOut: 0, broken: broken === undefined ? [] : [{ says: broken, range: lines(0, 0) }] });
const seen = (pictures: readonly ShownPicture[]): string[] => pictures.map((p) => `${p.id} ${p.svg}${p.old ? ', old' : ''}${p.broken === undefined ? '' : `: ${p.broken}`}`);

describe('what is shown while the text is broken', () => {
  const good = shownPictures([], answer([picture('line', 'L1'), picture('winch', 'W1'), picture('chain', 'C1')]));

  test('is the last good picture of what cannot be read, and the newest of the rest', () => {
    const shown = shownPictures(good, answer([picture('line', 'L2'), picture('winch', 'W2', '`mmm` is not a unit'), picture('chain', 'C2')], '`mmm` is not a unit'));
    expect(seen(shown)).toEqual(['line L2', 'winch W1, old: `mmm` is not a unit', 'chain C2']);
    const longer = shownPictures(shown, answer([picture('line', 'L3'), picture('winch', 'W3', 'still not'), picture('chain', 'C3')], 'still not'));
    expect(seen(longer)).toEqual(['line L3', 'winch W1, old: still not', 'chain C3']);
    expect(seen(shownPictures(longer, answer([picture('line', 'L4'), picture('winch', 'W4'), picture('chain', 'C4')])))).toEqual(['line L4', 'winch W4', 'chain C4']);
  });

  test('is what can be drawn of it when it never was good', () => {
    const first = shownPictures([], answer([picture('line', 'L1', 'no number')], 'no number'));
    expect(seen(first)).toEqual(['line L1: no number']);
    expect(seen(shownPictures(first, answer([picture('line', 'L2', 'no number')], 'no number')))).toEqual(['line L2: no number']);
  });

  test('keeps what an open brace hides, in its place', () => {
    expect(seen(shownPictures(good, answer([picture('line', 'L2'), picture('chain', 'C2')], '`{` is never closed')))).toEqual(['line L2', 'winch W1, old: `{` is never closed', 'chain C2']);
    expect(seen(shownPictures(good, answer([picture('new', 'N1', 'open')], 'open')))).toEqual(['line L1, old: open', 'winch W1, old: open', 'chain C1, old: open', 'new N1: open']);
  });

  test('lets go of what is gone once everything can be read', () => {
    expect(seen(shownPictures(good, answer([picture('chain', 'C2')])))).toEqual(['chain C2']);
  });

  test('follows its block where that moves to', () => {
    const moved = { ...picture('winch', 'W2', 'broken'), range: lines(7, 9) };
    expect(shownPictures(good, answer([moved], 'broken')).find((p) => p.id === 'winch')!.range).toEqual(lines(7, 9));
  });
});

test('the cursor stands in the picture with the least text about it', () => {
  const pictures = [{ id: 'line', range: lines(2, 9) }, { id: 'splice', range: { start: { line: 5, character: 2 }, end: { line: 5, character: 40 } } }, { id: 'second of line', range: lines(2, 9) }];
  expect(pictureUnder(pictures, { line: 5, character: 10 })).toBe('splice');
  expect(pictureUnder(pictures, { line: 5, character: 41 })).toBe('line');
  expect(pictureUnder(pictures, { line: 2, character: 0 })).toBe('line');
  expect(pictureUnder(pictures, { line: 10, character: 0 })).toBeUndefined();
});

test.each([
  ['plover.rig', 'winch bow-winch drum', 'plover-winch-bow-winch-drum.svg'],
  ['a b.rig', 'line ../../etc splice', 'a-b-line-etc-splice.svg'],
  ['Untitled-1', 'line עוגן map', 'Untitled-1-line-עוגן-map.svg'],
])('a picture of %s is saved as %s', (rig, id, name) => {
  expect(fileNameOf(rig, id, 'svg')).toBe(name);
});

describe('the page', () => {
  const words = Object.fromEntries(['zoomIn', 'zoomOut', 'fit', 'fitted', 'reveal', 'saveSvg', 'savePng', 'table', 'pictures', 'old', 'keys', 'zoom'].map((k) => [k, `"<${k}>&'`])) as unknown as PageWords;
  const page = picturesPage({ script: 'https://x/pictures-view.js?a="b', nonce: 'n0nce' }, words, 'en');

  test('lets one script and one style in, and no address besides', () => {
    expect(/Content-Security-Policy" content="([^"]*)"/.exec(page)![1]).toBe("default-src 'none'; img-src data:; script-src 'nonce-n0nce'; style-src 'nonce-n0nce'");
    expect(page.match(/<script /g)).toHaveLength(1);
    expect(page.match(/<style /g)).toHaveLength(1);
    expect(page.replace(/content="[^"]*"/g, '')).not.toMatch(/\son\w+=|\sstyle=|url\(|javascript:/);
  });

  test('escapes the words it is given', () => {
    expect(page).not.toMatch(/<(zoomIn|keys|pictures)>/);
    expect(page).toContain('src="https://x/pictures-view.js?a=&#34;b"');
    const data = /data-words="([^"]*)"/.exec(page)![1]!.replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)));
    expect(JSON.parse(data)).toEqual(words);
  });
});
