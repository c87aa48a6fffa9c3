import type { AssessedWinch } from '../assess/assess-winch.ts';
import { show, showValue } from '../assess/show.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';
import type { DrumRow, DrumTable } from '../mechanics/drum-table.ts';
import { causesOf, showDerived } from './figures.ts';
import { finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { circle, filled, group, line, measureAcross, measureDown, path, rect, text, unknownMark } from './shapes.ts';
import { coordinate as c, own, type Part } from './svg.ts';

const drumLeft = 62;
const drumWidth = 400;
const highestDrum = 220;
const tableLeft = 512;
const rowHeight = 21;
/** More circles than this are drawn as full layers: nobody counts them, and the file stays small. */
const mostCircles = 500;

const said = (value: Value): string => (isUnknown(value) ? 'not known' : show(value));

/** What wraps are drawn, from the barrel outward and in the order they are wound. */
interface Wound {
  readonly wraps: number;
  readonly total: number;
  /** False when the line's length is not known: then the layers are those that fit. */
  readonly isCounted: boolean;
}

function woundOf(drum: DrumTable): Wound {
  const wraps = isUnknown(drum.wrapsPerLayer) ? 0 : drum.wrapsPerLayer.amount.low;
  const all = wraps * drum.rows.length;
  if (isUnknown(drum.wrapsOnDrum)) return { wraps, total: all, isCounted: false };
  return { wraps, total: Math.min(all, Math.ceil(drum.wrapsOnDrum.amount.high - 1e-9)), isCounted: true };
}

/** The upper half of the drum, cut along its axis: layers, kept wraps and freeboard, with the pull of each layer beside it. */
export function drumSection(winch: AssessedWinch): Picture {
  const name = own(winch.name);
  const ids = new PictureIds();
  const drum = isUnknown(winch.drum) ? undefined : winch.drum;
  const [B, W, A, d] = [winch.barrel, winch.width, winch.flange, winch.diameter].map((v) => (isUnknown(v) ? undefined : v.amount.high));
  const rows = drum?.rows ?? [];
  // A size that is not known is drawn from the others, dashed, and its label says so.
  const barrel = B ?? (A === undefined ? 0.06 : A * 0.4);
  const outermost = barrel / 2 + rows.length * (d ?? 0);
  const flange = A === undefined ? (outermost + (d ?? barrel * 0.15) * 1.5) * 2 : Math.max(A, barrel * 1.05);
  const width = W ?? flange * 1.4;
  const scale = Math.min(drumWidth / width, highestDrum / Math.max(flange / 2, outermost));
  const right = drumLeft + width * scale;
  const up = (radius: number): number => -radius * scale;
  const top = up(Math.max(flange / 2, outermost));
  const parts: Part[] = [];
  const flangeLook = A === undefined ? 's-dots' : 'ink';
  parts.push(rect(drumLeft - 10, up(flange / 2), 10, (flange / 2) * scale, flangeLook, 2), rect(right, up(flange / 2), 10, (flange / 2) * scale, flangeLook, 2));
  parts.push(rect(drumLeft, up(barrel / 2), width * scale, (barrel / 2) * scale, 'panel'), path(`M${c(drumLeft)} ${c(up(barrel / 2))}H${c(right)}`, B === undefined ? 's-dots' : 's-ink'));
  parts.push(path(`M${drumLeft - 24} 0H${c(right + 24)}`, 's-dashed'), text((drumLeft + right) / 2, -8, 'barrel', 't-quiet', { anchor: 'middle' }));
  const legend: LegendEntry[] = [];
  const causes = causesOf(winch.barrel, winch.width, winch.flange, winch.diameter, winch.length, winch.ratedPull, winch.drum);
  const keep = isUnknown(winch.keep) ? undefined : winch.keep.amount.high;

  if (drum === undefined || d === undefined) parts.push(unknownMark((drumLeft + right) / 2 - 44, up(barrel / 2) - 20), text((drumLeft + right) / 2 - 28, up(barrel / 2) - 15, 'wraps not known', 't-strong'));
  else {
    const wound = woundOf(drum);
    parts.push(...wrapsDrawn(wound, keep ?? 0, barrel, d, scale, right, drum.rows.length));
    const look = wound.isCounted ? 's-rope' : 's-dots';
    if (keep !== undefined && keep > 0) legend.push({ symbol: [circle(13, 8, 7, 'rope')], says: `${show(winch.keep as never)} wraps kept${winch.keepWritten ? '' : ' (assumed)'}` });
    legend.push({ symbol: [circle(13, 8, 6.5, look)], says: wound.isCounted ? 'line that can run out' : 'room for line; its length is not known' });
  }
  if (A !== undefined && drum !== undefined && !isUnknown(winch.length) && d !== undefined) {
    const [f, o] = [up(flange / 2), up(outermost)];
    const over = outermost > A / 2 + 1e-9;
    parts.push(measureDown(drumLeft - 24, Math.min(f, o), Math.max(f, o)));
    if (over) parts.push(filled(drumLeft, o, width * scale, f - o, ids.pattern('short')));
  }
  const label = freeboardWords(winch);
  parts.push(text(margin, top - 14, label, 't-strong'));
  parts.push(measureAcross(drumLeft, right, 22), text((drumLeft + right) / 2, 42, `width ${said(winch.width)} · barrel ${said(winch.barrel)} · flange ${said(winch.flange)}`, 't-quiet', { anchor: 'middle' }));
  const table = layerTable(rows, barrel, d ?? 0, scale, right);
  const height = Math.max(-top + 34, table.above);
  const lead = leadOf(winch, rows);
  return finish({
    ids, title: `Drum of ${name}, in section`, lead, more: `${winch.piece === undefined ? 'Line not known' : `Carries ${own(winch.piece.name)}: length ${said(winch.length)}, diameter ${said(winch.diameter)}`}. Rated pull ${isUnknown(winch.ratedPull) ? 'not known' : `${show(winch.ratedPull)} on layer ${said(winch.ratedLayer)}`}.`,
    body: [group(0, height, [...parts, ...table.parts])], height: height + 50, legend, causes,
    notes: ['Drawn to scale, layers stacked without nesting.'],
    description: `${lead} ${label[0]!.toUpperCase()}${label.slice(1)}.`,
    table: {
      head: ['layer', 'pull', 'line on the layer', 'line up to the layer'],
      rows: [...rows.map((r) => [String(r.layer) + (r.partial ? ', not full' : ''), showDerived(r.pull), showDerived(r.lengthOnLayer), showDerived(r.lengthThrough)]), ['kept wraps', said(winch.keep), showDerived(winch.keptLength), ''], ['usable', '', showDerived(winch.usable), ''], ['freeboard', '', showDerived(winch.freeboard), '']],
    },
  });
}

function leadOf(winch: AssessedWinch, rows: readonly DrumRow[]): string {
  if (rows.length === 0) return 'The layers on this drum are not known.';
  const layers = `${isUnknown(winch.length) ? 'Room for ' : ''}${rows.length} ${rows.length === 1 ? 'layer' : 'layers'}`;
  return isUnknown(winch.usable) ? `${layers}; how much line can run out is not known.` : `${layers}; ${showDerived(winch.usable)} of line can run out, ${showDerived(winch.keptLength)} stays on for the kept wraps.`;
}

function freeboardWords(winch: AssessedWinch): string {
  if (isUnknown(winch.freeboard)) return 'freeboard not known';
  const { low, high } = winch.freeboard.amount;
  if (low >= 0) return `freeboard ${showDerived(winch.freeboard)}`;
  return `outermost layer stands ${showValue({ amount: { low: -high, high: -low }, kind: 'needed length', origin: { from: 'derived', derivation: winch.freeboard } })} above the flange`;
}

function wrapsDrawn(wound: Wound, keep: number, barrel: number, d: number, scale: number, right: number, layers: number): Part[] {
  const look = wound.isCounted ? 's-rope' : 's-dots';
  const size = d * scale;
  if (wound.total > mostCircles || size < 3) {
    const parts: Part[] = [];
    for (let layer = 0; layer < layers; layer++) {
      const inLayer = Math.min(wound.wraps, wound.total - layer * wound.wraps);
      const y = -(barrel / 2 + (layer + 1) * d) * scale;
      const x = layer % 2 === 0 ? drumLeft : right - inLayer * size;
      parts.push(rect(x, y, inLayer * size, size, look));
      const kept = Math.min(inLayer, Math.max(0, keep - layer * wound.wraps));
      if (kept > 0) parts.push(rect(layer % 2 === 0 ? drumLeft : right - kept * size, y, kept * size, size, 'rope'));
    }
    return parts;
  }
  let [full, open] = ['', ''];
  const r = Math.max(1, size / 2 - 1);
  for (let i = 0; i < wound.total; i++) {
    const layer = Math.floor(i / wound.wraps);
    const inLayer = i - layer * wound.wraps;
    const x = layer % 2 === 0 ? drumLeft + (inLayer + 0.5) * size : right - (inLayer + 0.5) * size;
    const y = -(barrel / 2 + (layer + 0.5) * d) * scale;
    const ring = `M${c(x - r)} ${c(y)}a${c(r)} ${c(r)} 0 1 0 ${c(2 * r)} 0a${c(r)} ${c(r)} 0 1 0 ${c(-2 * r)} 0`;
    if (i < keep) full += ring;
    else open += ring;
  }
  return [...(open === '' ? [] : [path(open, look)]), ...(full === '' ? [] : [path(full, 'rope')])];
}

/** A row for each layer at its height, moved up where layers are thinner than a row of text. */
function layerTable(rows: readonly DrumRow[], barrel: number, d: number, scale: number, right: number): { parts: Part[]; above: number } {
  const parts: Part[] = [];
  const columns = [tableLeft + 36, tableLeft + 124, rightEdge] as const;
  let y = rowHeight - 8;
  for (const row of rows) {
    const layerY = -(barrel / 2 + (row.layer - 0.5) * d) * scale;
    y = Math.min(layerY, y - rowHeight);
    parts.push(path(`M${c(right + 14)} ${c(layerY)}L${c(tableLeft - 16)} ${c(y)}H${tableLeft - 4}`, 's-thin'));
    parts.push(text(columns[0], y + 4.5, String(row.layer), 't-strong', { anchor: 'end' }), text(columns[1], y + 4.5, showDerived(row.pull), 't-strong', { anchor: 'end' }), text(columns[2], y + 4.5, showDerived(row.lengthOnLayer), 't-body', { anchor: 'end' }));
  }
  if (rows.length === 0) return { parts, above: 0 };
  const head = y - rowHeight - 4;
  parts.push(text(columns[0], head, 'layer', 't-quiet', { anchor: 'end' }), text(columns[1], head, 'pull', 't-quiet', { anchor: 'end' }), text(columns[2], head, 'line on it', 't-quiet', { anchor: 'end' }), line(tableLeft - 4, head + 6, rightEdge, head + 6, 's-thin'));
  return { parts, above: -head + 14 };
}
