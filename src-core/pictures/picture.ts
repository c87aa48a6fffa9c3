import type { Cause } from '../mechanics/derivation.ts';
import { pictureStyle } from './picture-style.ts';
import { group, rect, text, textSizes, unknownMark } from './shapes.ts';
import { ownInside, part, render, stemPlace, type Part } from './svg.ts';
import { textWidth, wrapText } from './text-width.ts';

/** The equivalent of a picture for who does not see it. */
export interface PictureTable {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Picture {
  /** One self-contained element: nothing is fetched, nothing runs. */
  readonly svg: string;
  readonly title: string;
  readonly description: string;
  readonly table: PictureTable;
}

export const pictureWidth = 760;
export const margin = 24;
export const rightEdge = pictureWidth - margin;

export type PatternName = 'unknown' | 'between' | 'gone' | 'kept' | 'short' | 'keep-out';

/** Strokes of each pattern in its own small tile: the meaning stays when the colours go. */
const patterns: Readonly<Record<PatternName, { readonly size: number; readonly turn: number; readonly d: string; readonly look: string }>> = {
  unknown: { size: 9, turn: 45, d: 'M0 2L5 2', look: 's-mute' },
  between: { size: 4, turn: 0, d: 'M2 0L2 4', look: 's-thin' },
  gone: { size: 7, turn: -45, d: 'M0 3L7 3', look: 's-thin' },
  kept: { size: 6, turn: 0, d: 'M0 3L6 3M3 0L3 6', look: 's-thin' },
  short: { size: 7, turn: 45, d: 'M0 3L7 3', look: 's-alarm' },
  'keep-out': { size: 10, turn: -45, d: 'M0 5L10 5', look: 's-grid' },
};

/** Identities inside one picture; `finish` makes them differ from those of any other picture on the same page. */
export class PictureIds {
  readonly used = new Set<PatternName>();

  of(part: string): string {
    return `${stemPlace}-${part}`;
  }

  pattern(name: PatternName): string {
    this.used.add(name);
    return `url(#${this.of(name)})`;
  }

  definitions(): Part[] {
    return (Object.keys(patterns) as PatternName[]).filter((name) => this.used.has(name)).map((name) => {
      const { size, turn, d, look } = patterns[name];
      return part('pattern', { id: this.of(name), width: size, height: size, patternUnits: 'userSpaceOnUse', ...(turn === 0 ? {} : { patternTransform: `rotate(${turn})` }) }, part('path', { class: look, d }));
    });
  }
}

export interface LegendEntry {
  /** Drawn in a box of 26 by 16. */
  readonly symbol: readonly Part[];
  readonly says: string;
}

export interface Drawing {
  readonly ids: PictureIds;
  /** Plain text; what the user wrote has gone through `own`. */
  readonly title: string;
  /** The one sentence to take away. */
  readonly lead: string;
  readonly more?: string | undefined;
  readonly body: readonly Part[];
  readonly height: number;
  readonly legend?: readonly LegendEntry[];
  readonly causes?: readonly Cause[];
  /** Sentences on how to read it. */
  readonly notes?: readonly string[];
  readonly description: string;
  readonly table: PictureTable;
}

const mostCauses = 5;

function legendRows(entries: readonly LegendEntry[]): { parts: Part[]; height: number } {
  const parts: Part[] = [];
  let x = margin;
  let y = 0;
  for (const { symbol, says } of entries) {
    const width = 34 + textWidth(says, textSizes['t-quiet']) + 22;
    if (x > margin && x + width - 22 > rightEdge) [x, y] = [margin, y + 22];
    parts.push(group(x, y, symbol), text(x + 34, y + 12, says, 't-quiet'));
    x += width;
  }
  return { parts, height: entries.length === 0 ? 0 : y + 22 };
}

/** Causes of what is not known, each once, with the way to make it known. */
function causeRows(causes: readonly Cause[]): { parts: Part[]; height: number } {
  const unique = [...new Map(causes.map((c) => [`${c.says}\n${c.help}`, c])).values()];
  const parts: Part[] = [];
  let y = 0;
  for (const cause of unique.slice(0, mostCauses)) {
    const lines = wrapText(`${ownInside(cause.says)}: ${ownInside(cause.help)}`, rightEdge - margin - 28, textSizes['t-body'], 3);
    parts.push(unknownMark(margin + 9, y + 9));
    for (const [i, says] of lines.entries()) parts.push(text(margin + 28, y + 14 + i * 17, says, 't-body'));
    y += 6 + lines.length * 17;
  }
  if (unique.length > mostCauses) {
    parts.push(text(margin + 28, y + 14, `and ${unique.length - mostCauses} more that are not known`, 't-body'));
    y += 23;
  }
  return { parts, height: y };
}

/** The same picture has the same identities wherever it is made. */
function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(36);
}

export function finish(drawing: Drawing): Picture {
  const { ids } = drawing;
  const width = rightEdge - margin;
  const body: Part[] = [text(margin, 40, drawing.title, 't-title', { width })];
  let y = 46;
  for (const says of wrapText(drawing.lead, width, textSizes['t-lead'], 3)) body.push(text(margin, (y += 20), says, 't-lead'));
  if (drawing.more !== undefined) for (const says of wrapText(drawing.more, width, textSizes['t-quiet'], 2)) body.push(text(margin, (y += 18), says, 't-quiet'));
  y += 16;
  body.push(group(0, y, drawing.body));
  y += drawing.height + 12;
  for (const rows of [legendRows(drawing.legend ?? []), causeRows(drawing.causes ?? [])]) {
    if (rows.height === 0) continue;
    body.push(group(0, y, rows.parts));
    y += rows.height + 8;
  }
  for (const note of drawing.notes ?? []) for (const says of wrapText(note, width, textSizes['t-quiet'], 3)) body.push(text(margin, (y += 17) - 4, says, 't-quiet'));
  const height = Math.ceil(y + 14);
  const [titleId, descriptionId] = [ids.of('title'), ids.of('description')];
  const definitions = ids.definitions();
  const svg = part(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', class: 'lw', role: 'img', 'aria-labelledby': `${titleId} ${descriptionId}`, viewBox: `0 0 ${pictureWidth} ${height}`, width: pictureWidth, height },
    part('title', { id: titleId }, drawing.title),
    part('desc', { id: descriptionId }, drawing.description),
    part('style', {}, pictureStyle()),
    ...(definitions.length === 0 ? [] : [part('defs', {}, ...definitions)]),
    rect(0, 0, pictureWidth, height, 'paper'),
    ...body,
  );
  return { svg: render(svg, `lw-${digest(render(svg))}`), title: drawing.title, description: drawing.description, table: drawing.table };
}

/** A picture that says only why there is nothing to draw. */
export const emptyPicture = (title: string, lead: string, causes: readonly Cause[]): Picture =>
  finish({ ids: new PictureIds(), title, lead, body: [], height: 0, causes, description: lead, table: { head: ['not known', 'help'], rows: causes.map((c) => [ownInside(c.says), ownInside(c.help)]) } });
