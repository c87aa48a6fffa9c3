import type { AssessedPiece, Remedy } from '../assess/assess-line.ts';
import type { AssessedEnd } from '../assess/splice-end.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { countedRows, damagePoint, flagRows, stationOf, type NamedPoint } from './damage-flags.ts';
import { endGlyph } from './end-glyph.ts';
import { endWords } from './end-words.ts';
import type { Figures } from './figures.ts';
import { margin, rightEdge, type PictureIds } from './picture.ts';
import { remedies, remedyStroke } from './remedy-glyphs.ts';
import { axisUnit, ticks } from './scale.ts';
import { filled, group, line, path, polyline, rect, text, unknownMark } from './shapes.ts';
import { coverOf, jointStations, strengthAlong } from './strength-along.ts';
import { strengthProfile } from './strength-profile.ts';
import { coordinate as c, type Part } from './svg.ts';
import { textWidth } from './text-width.ts';

export interface PieceOptions {
  readonly ids: PictureIds;
  readonly figures: Figures;
  /** Coordinate of the inboard end. */
  readonly left: number;
  /** Coordinates for a metre; the same for all pieces of a picture. */
  readonly scale: number;
  /** Top of the strength scale (N); undefined leaves the scale off. */
  readonly highest: number | undefined;
  readonly profileHeight: number;
  /** Points to name besides damage, such as planned cuts. */
  readonly points?: readonly NamedPoint[];
  /** Stretches that a plan takes out (finished metres from inboard). */
  readonly gone?: readonly { readonly from: number; readonly to: number }[];
}

export interface PieceDrawing {
  readonly parts: Part[];
  readonly height: number;
  readonly remedies: ReadonlySet<Remedy>;
  readonly hasUnknown: boolean;
  readonly hasRange: boolean;
  readonly hasSplice: boolean;
}

/** How far a piece reaches: its length, or as far as anything on it is known to lie. */
export function reachOf(piece: AssessedPiece): { readonly low: number; readonly high: number; readonly isLength: boolean } {
  if (!isUnknown(piece.length)) return { ...piece.length.amount, isLength: true };
  const farthest = Math.max(0, ...piece.damages.map((d) => d.to?.high ?? 0));
  return { low: farthest, high: farthest * 1.12, isLength: false };
}

const ropeHalf = 7;

/** One piece as it lies: what is named on it above, its ends under it, its strength along it, stations at the foot. */
export function drawPiece(piece: AssessedPiece, options: PieceOptions): PieceDrawing {
  const { left, scale, ids, figures } = options;
  const reach = reachOf(piece);
  const span = reach.high > 0 ? reach.high * scale : rightEdge - 60 - left;
  const x = (station: number): number => left + station * scale;
  const [sure, end] = reach.high > 0 ? [x(reach.low), x(reach.high)] : [left, left + span];
  const placed = piece.damages.filter((d) => d.from !== undefined);
  const at = placed.map((d) => x(d.from!.low));
  const points = [...placed.map((d, i) => damagePoint(d, at[i]!, figures)), ...(options.points ?? [])].sort((a, b) => a.x - b.x);
  const flags = flagRows(points, margin, rightEdge) ?? countedRows(placed.map((d, i) => ({ x: at[i]!, remedy: d.remedy })), left, Math.max(end, left + 216));
  const parts: Part[] = [...flags.parts];
  const y = flags.height + 14;

  parts.push(...rope(piece, reach.isLength, left, sure, end, y, ids));
  for (const { from, to } of options.gone ?? []) parts.push(rect(x(from), y - ropeHalf - 1, x(to) - x(from), ropeHalf * 2 + 2, 'paper'), filled(x(from), y - ropeHalf, x(to) - x(from), ropeHalf * 2, ids.pattern('gone')), path(`M${c(x(from))} ${c(y - ropeHalf)}H${c(x(to))}M${c(x(from))} ${c(y + ropeHalf)}H${c(x(to))}`, 's-thin'));
  let hasSplice = false;
  const cover = (d: AssessedEnd, from: number, way: 1 | -1): void => {
    const shape = splicedStretch(d, from, way, y, scale);
    if (shape.length > 0) hasSplice = true;
    parts.push(...shape);
  };
  if (reach.isLength) {
    cover(piece.inboard, left, 1);
    cover(piece.outboard, end, -1);
    for (const [i, station] of jointStations(piece).entries()) {
      if (station === undefined || piece.joints[i] === undefined) continue;
      cover(piece.joints[i], x(station), -1);
      cover(piece.joints[i], x(station), 1);
    }
  }
  parts.push(...damageStretches(piece, x, y));
  for (const point of options.points ?? []) parts.push(path(`M${c(point.x)} ${c(flags.height)}V${c(y + 16)}`, 's-dashed'));
  parts.push(...endGlyph(piece.inboard, left, y, -1));
  if (reach.isLength) parts.push(...endGlyph(piece.outboard, end, y, 1));
  else parts.push(unknownMark(end + 16, y));

  const labels = endLabels(piece, left, end, y + 32);
  parts.push(...labels.parts);
  let foot = labels.bottom + 14;
  if (reach.high > 0) {
    const stretches = strengthAlong(piece, reach.high, reach.isLength, 1 / scale);
    const profile = strengthProfile({ stretches, along: x, highest: options.highest, height: options.profileHeight, figures, ids, right: rightEdge });
    parts.push(group(0, foot, profile));
    foot += options.profileHeight;
    if (reach.isLength && reach.high > reach.low) parts.push(filled(sure, foot - options.profileHeight, end - sure, options.profileHeight, ids.pattern('between')));
    parts.push(...stations(reach.high, x, foot, span, figures));
    foot += 38;
  }
  return {
    parts,
    height: foot,
    remedies: new Set(placed.map((d) => d.remedy)),
    hasUnknown: ids.used.has('unknown'),
    hasRange: reach.isLength && reach.high > reach.low,
    hasSplice,
  };
}

function rope(piece: AssessedPiece, lengthKnown: boolean, left: number, sure: number, end: number, y: number, ids: PictureIds): Part[] {
  const parts: Part[] = [rect(left, y - ropeHalf, sure - left, ropeHalf * 2, 'rope')];
  // Short slanting strokes make it look laid; they carry no meaning.
  let inlay = '';
  const step = Math.max(9, (sure - left) / 80);
  for (let i = left + 5; i < sure - 5; i += step) inlay += `M${c(i)} ${y + 4}l5 -8`;
  if (inlay !== '') parts.push(path(inlay, 's-inlay'));
  if (end > sure && lengthKnown) parts.push(filled(sure, y - ropeHalf, end - sure, ropeHalf * 2, ids.pattern('between')), path(`M${c(sure)} ${y - ropeHalf}H${c(end)}V${y + ropeHalf}H${c(sure)}`, 's-rope'));
  if (!lengthKnown) parts.push(path(`M${c(sure)} ${y - ropeHalf}H${c(end)}M${c(sure)} ${y + ropeHalf}H${c(end)}`, 's-dots'));
  if (piece.retired !== undefined) parts.push(path(`M${c(left)} ${y - 12}L${c(end)} ${y + 12}M${c(left)} ${y + 12}L${c(end)} ${y - 12}`, 's-alarm'));
  return parts;
}

/** The line over a buried tail is thicker, and thins out over the taper. Dashed where the splice is temporary. */
function splicedStretch(end: AssessedEnd, from: number, way: 1 | -1, y: number, scale: number): Part[] {
  const cover = coverOf(end);
  if (cover === undefined || end.buried === undefined) return [];
  const taper = isUnknown(end.buried.taper) ? 0 : Math.min(end.buried.taper.amount.high, cover.tip - cover.throat);
  const throat = from + way * cover.throat * scale;
  const tip = throat + way * Math.max(5, (cover.tip - cover.throat) * scale);
  const full = tip - way * Math.min(Math.abs(tip - throat), taper * scale);
  const wide = ropeHalf + 4;
  const outline = polyline([[throat, y - wide], [full, y - wide], [tip, y - ropeHalf], [tip, y + ropeHalf], [full, y + wide], [throat, y + wide]], true);
  const parts = [path(outline, 'splice')];
  if (end.facts.temporary) parts.push(path(polyline([[throat, y - wide - 4], [tip, y - wide - 4]]), 's-limit'));
  return parts;
}

/** Outlines of damaged stretches: one path for each remedy, however many entries there are. */
function damageStretches(piece: AssessedPiece, x: (s: number) => number, y: number): Part[] {
  const parts: Part[] = [];
  for (const remedy of [...remedies].reverse()) {
    const spans = new Set<string>();
    for (const damage of piece.damages) {
      const station = stationOf(damage);
      if (damage.remedy !== remedy || station === undefined) continue;
      const [a, b] = [x(station.low), x(station.high)];
      const half = remedy === 'clean' ? 9 : remedy === 'derate' ? 11 : 13;
      // Whole coordinates: entries that would lie on each other are drawn once.
      const [p, q] = b - a < 3 ? [Math.round((a + b) / 2) - 1.5, Math.round((a + b) / 2) + 1.5] : [Math.round(a), Math.round(b)];
      spans.add(`M${c(p)} ${y - half}H${c(q)}V${y + half}H${c(p)}Z`);
    }
    if (spans.size > 0) parts.push(path([...spans].join(''), remedyStroke[remedy]));
  }
  return parts;
}

function endLabels(piece: AssessedPiece, left: number, end: number, y: number): { parts: Part[]; bottom: number } {
  const inboard = `inboard: ${endWords(piece.inboard)}`;
  const outboard = `outboard: ${endWords(piece.outboard)}`;
  const start = Math.max(margin, left - 14);
  const stop = Math.min(rightEdge, end + 28);
  const [a, b] = [textWidth(inboard, 12), textWidth(outboard, 12)];
  const first = text(start, y, inboard, 't-quiet', { width: rightEdge - start });
  const fitsRight = stop - b > margin;
  const second = (dy: number): Part => (fitsRight ? text(stop, y + dy, outboard, 't-quiet', { anchor: 'end' }) : text(start, y + dy, outboard, 't-quiet', { width: rightEdge - start }));
  return start + a + 16 < stop - b ? { parts: [first, second(0)], bottom: y } : { parts: [first, second(17)], bottom: y + 17 };
}

function stations(highest: number, x: (s: number) => number, y: number, span: number, figures: Figures): Part[] {
  const unit = axisUnit('length', highest, figures.length, figures.system);
  const marks = ticks(highest, unit, Math.max(1, Math.min(10, Math.floor(span / 56))));
  const parts: Part[] = [];
  for (const tick of marks) parts.push(line(x(tick.at), y, x(tick.at), y + 5, 's-ink'), text(x(tick.at), y + 18, tick.label, 't-quiet', { anchor: 'middle' }));
  const says = `${unit?.symbol ?? ''} from inboard end`;
  parts.push(text(x(0) - 4, y + 34, says, 't-quiet'));
  return parts;
}
