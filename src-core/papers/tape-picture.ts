import { printLength, type Figures } from '../pictures/figures.ts';
import { pictureStyle } from '../pictures/picture-style.ts';
import { margin, PictureIds, pictureWidth, rightEdge, type Picture } from '../pictures/picture.ts';
import { placeFlags } from '../pictures/place-flags.ts';
import { axisUnit, scaleOf, ticks } from '../pictures/scale.ts';
import { filled, group, path, rect, text, widthOf } from '../pictures/shapes.ts';
import { coordinate as c, own, part, render, type Part } from '../pictures/svg.ts';
import { textDigest } from './text-digest.ts';
import type { Amount } from '../units/amount.ts';

export interface TapeMark {
  readonly name: string;
  /** A range says that the mark lies somewhere in it. */
  readonly at: Amount;
  /** A stretch and no mark: damage, say. */
  readonly isStretch?: boolean;
}

export interface Tape {
  /** Tells the tapes of one page apart. */
  readonly name: string;
  readonly title: string;
  /** From the zero of the tape (m). */
  readonly marks: readonly TapeMark[];
  /** Places that only need a stroke. */
  readonly strokes?: readonly number[];
  /** Where the line ends, when it does so on the tape (m). */
  readonly ends?: number | undefined;
  readonly figures: Figures;
}

const left = margin;
const rowHeight = 34;

/** A line with its marks, and a tape measure under it in the reader's own units: what is read off while the pen is in the hand. */
export function tapePicture({ name, title, marks, strokes = [], ends, figures }: Tape): Picture {
  const ids = new PictureIds();
  const last = Math.max(ends ?? 0, ...marks.map((m) => m.at.high)) * (ends === undefined ? 1.05 : 1) || 1;
  const x = scaleOf(0, last, left, rightEdge - 8);
  const labels = marks.map((m) => [own(m.name), printLength(m.at, figures)] as const);
  const flags = marks.map((m, i) => ({ x: x(m.at.low), width: Math.max(widthOf(labels[i]![0], 't-strong'), widthOf(labels[i]![1], 't-body')) + 4 }));
  const placed = placeFlags(flags, left, rightEdge, 8) ?? flags.map((f, i) => ({ left: Math.min(f.x + 5, rightEdge - f.width), row: i % 8 }));
  const top = (Math.max(-1, ...placed.map((p) => p.row)) + 1) * rowHeight + 8;
  const [upper, lower, tape] = [top, top + 18, top + 28];
  const parts: Part[] = [];
  parts.push(rect(left, upper, rightEdge - left - (ends === undefined ? 0 : 8), lower - upper, 'rope'));
  let inlay = '';
  for (let i = left + 8; i < rightEdge - 16; i += 14) inlay += `M${c(i)} ${upper + 13}l6 -8`;
  parts.push(path(inlay, 's-inlay'));
  if (ends === undefined) parts.push(path(`M${c(rightEdge)} ${upper - 2}q6 5 0 11t0 11`, 's-ink'));
  for (const stroke of strokes) parts.push(path(`M${c(x(stroke))} ${upper - 3}V${lower + 3}`, 's-ink'));
  for (const [i, mark] of marks.entries()) {
    const { left: at, row } = placed[i]!;
    const [low, high] = [x(mark.at.low), x(mark.at.high)];
    const labelY = top - 2 - (row + 1) * rowHeight;
    if (high > low + 1) parts.push(rect(low, upper - 3, high - low, 24, 'paper'), filled(low, upper - 3, high - low, 24, ids.pattern(mark.isStretch === true ? 'gone' : 'between')), path(`M${c(high)} ${upper - 3}V${mark.isStretch === true ? lower + 3 : tape}`, 's-ink'));
    parts.push(path(`M${c(low)} ${at > low ? labelY + 4 : labelY + 31}V${mark.isStretch === true ? lower + 3 : tape}`, 's-ink'), text(at, labelY + 13, labels[i]![0], 't-strong'), text(at, labelY + 27, labels[i]![1], 't-body'));
  }
  parts.push(...measure(last, x, tape, figures));
  const height = tape + 30;
  const [titleId, descriptionId] = [ids.of('title'), ids.of('description')];
  const description = labels.map(([says, at]) => `${says} at ${at}`).join(', ');
  const definitions = ids.definitions();
  const svg = part(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', class: 'lw', role: 'img', 'aria-labelledby': `${titleId} ${descriptionId}`, viewBox: `0 0 ${pictureWidth} ${height}`, width: pictureWidth, height },
    part('title', { id: titleId }, title),
    part('desc', { id: descriptionId }, description),
    part('style', {}, pictureStyle()),
    ...(definitions.length === 0 ? [] : [part('defs', {}, ...definitions)]),
    group(0, 0, parts),
  );
  return { svg: render(svg, `lw-tape-${textDigest(`${name}\n${render(svg)}`)}`), title, description, table: { head: ['mark', 'at'], rows: labels } };
}

/** The tape measure: a band with strokes, numbered at round steps. */
function measure(last: number, x: (metres: number) => number, y: number, figures: Figures): Part[] {
  const unit = axisUnit('length', last, figures.length, figures.system);
  const numbered = ticks(last, unit, 12);
  const step = (numbered[1]?.at ?? last) - (numbered[0]?.at ?? 0);
  let fine = '';
  for (let i = 0; i * (step / 5) <= last * (1 + 1e-9); i++) fine += `M${c(x((i * step) / 5))} ${y}v${i % 5 === 0 ? 9 : 5}`;
  return [
    rect(left, y, rightEdge - left, 26, 'panel'),
    path(`M${left} ${y}H${rightEdge}`, 's-ink'),
    path(fine, 's-thin'),
    ...numbered.map(({ at, label }, i) => text(x(at), y + 22, i === 0 && unit !== undefined ? `0 ${unit.symbol}` : label, 't-quiet', { anchor: i === 0 ? 'start' : 'middle' })),
  ];
}
