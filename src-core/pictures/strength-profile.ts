import { axisUnit, scaleOf, ticks } from './scale.ts';
import type { Figures } from './figures.ts';
import { printForce } from './figures.ts';
import type { PictureIds } from './picture.ts';
import { circle, filled, line, path, polyline, text, widthOf } from './shapes.ts';
import { exactly } from '../units/amount.ts';
import type { StrengthStretch } from './strength-along.ts';
import type { Part } from './svg.ts';

export interface ProfileOptions {
  readonly stretches: readonly StrengthStretch[];
  /** From a finished distance (m) to a coordinate. */
  readonly along: (station: number) => number;
  /** Top of the scale (N); undefined when no strength is known at all. */
  readonly highest: number | undefined;
  readonly height: number;
  readonly figures: Figures;
  readonly ids: PictureIds;
  /** Text must stay left of this. */
  readonly right: number;
}

/** Strength along a piece: a stepped area where it is known, a hatched column where it is not. */
export function strengthProfile({ stretches, along, highest, height, figures, ids, right }: ProfileOptions): Part[] {
  const parts: Part[] = [];
  const left = along(stretches[0]?.from ?? 0);
  const end = along(stretches.at(-1)?.to ?? 0);
  const up = scaleOf(0, highest ?? 1, height, 0);
  if (highest !== undefined) {
    const unit = axisUnit('breaking strength', highest, figures.force, figures.system);
    const marks = ticks(highest, unit, Math.max(2, Math.floor(height / 20)));
    for (const tick of marks) {
      parts.push(line(left, up(tick.at), end, up(tick.at), 's-grid'));
      parts.push(text(left - 8, up(tick.at) + 4, tick.label + (tick === marks.at(-1) && unit !== undefined ? ` ${unit.symbol}` : ''), 't-quiet', { anchor: 'end' }));
    }
  }
  let top: [number, number][] = [];
  const flush = (): void => {
    if (top.length === 0) return;
    const [first, last] = [top[0]!, top.at(-1)!];
    parts.unshift(path(polyline([[first[0], height], ...top, [last[0], height]], true), 'panel'));
    parts.push(path(polyline(top), 's-strength'));
    top = [];
  };
  for (const { from, to, strength } of stretches) {
    const [x1, x2] = [along(from), along(to)];
    if (strength === undefined) {
      flush();
      parts.push(filled(x1, 0, x2 - x1, height, ids.pattern('unknown')), path(`M${x1.toFixed(1)} 0V${height}M${x2.toFixed(1)} 0V${height}`, 's-dots'));
      continue;
    }
    top.push([x1, up(strength)], [x2, up(strength)]);
  }
  flush();
  parts.push(line(left, height, end, height, 's-ink'));
  const isLow = highest !== undefined && stretches.some((s) => s.strength !== undefined && s.strength < highest * 0.4);
  parts.push(...lowestLabel(stretches, along, up, figures, left, right), ...unknownLabel(stretches, along, isLow ? 18 : height - 10, left, right));
  return parts;
}

function lowestLabel(stretches: readonly StrengthStretch[], along: (s: number) => number, up: (n: number) => number, figures: Figures, left: number, right: number): Part[] {
  let lowest: StrengthStretch | undefined;
  for (const stretch of stretches) if (stretch.strength !== undefined && (lowest === undefined || stretch.strength < lowest.strength!)) lowest = stretch;
  if (lowest === undefined) return [];
  const known = stretches.every((s) => s.strength !== undefined);
  const says = `lowest${known ? '' : ' known'} ${printForce(exactly(lowest.strength!), figures, 'down')}`;
  const width = widthOf(says, 't-strong');
  const [x1, x2] = [along(lowest.from), along(lowest.to)];
  const y = up(lowest.strength!);
  const middle = (x1 + x2) / 2;
  // Beside a narrow dip its label stands in the filled area; over a long level it hangs below the level.
  if (x2 - x1 > width + 12) return [text(middle, y + 18, says, 't-strong', { anchor: 'middle', rim: 'panel' })];
  const onLeft = x1 - 12 - width > left;
  if (!onLeft && x2 + 12 + width > right) return [circle(middle, y, 4, 'hollow')];
  return [circle(middle, y, 4, 'hollow'), text(onLeft ? x1 - 10 : x2 + 10, y + 5, says, 't-strong', { anchor: onLeft ? 'end' : 'start', rim: 'panel' })];
}

function unknownLabel(stretches: readonly StrengthStretch[], along: (s: number) => number, y: number, left: number, right: number): Part[] {
  let widest: readonly [number, number] | undefined;
  for (const { from, to, strength } of stretches) {
    if (strength !== undefined) continue;
    const span = [along(from), along(to)] as const;
    if (widest === undefined || span[1] - span[0] > widest[1] - widest[0]) widest = span;
  }
  if (widest === undefined) return [];
  const says = 'not known';
  const width = widthOf(says, 't-strong');
  if (widest[1] - widest[0] > width + 12) return [text((widest[0] + widest[1]) / 2, y, says, 't-strong', { anchor: 'middle', rim: 'paper' })];
  if (widest[1] + 8 + width < right) return [text(widest[1] + 7, y, says, 't-strong', { rim: 'paper' })];
  return widest[0] - 8 - width > left ? [text(widest[0] - 7, y, says, 't-strong', { anchor: 'end', rim: 'paper' })] : [];
}
