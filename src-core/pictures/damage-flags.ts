import type { AssessedDamage, Remedy } from '../assess/assess-line.ts';
import { damageWords } from '../assess/damage-words.ts';
import type { Amount } from '../units/amount.ts';
import { printLength, type Figures } from './figures.ts';
import { placeFlags } from './place-flags.ts';
import { remedies, remedyGlyph, remedyWords } from './remedy-glyphs.ts';
import { line, path, text } from './shapes.ts';
import { coordinate as c, type Part } from './svg.ts';
import { fitText, textWidth } from './text-width.ts';

/** Something that a drawing names at a point: damage, or a cut that is planned. */
export interface NamedPoint {
  readonly x: number;
  readonly says: string;
  readonly glyph: (x: number, y: number) => Part[];
}

/** Where damage lies now, from end to end of what it may be. */
export const stationOf = (damage: AssessedDamage): Amount | undefined => (damage.from === undefined || damage.to === undefined ? undefined : { low: damage.from.low, high: damage.to.high });

export const stationWords = (damage: AssessedDamage, figures: Figures): string => {
  const station = stationOf(damage);
  return station === undefined ? 'place not known' : printLength(station, figures);
};

export const damagePoint = (damage: AssessedDamage, x: number, figures: Figures): NamedPoint => ({
  x,
  says: `${damageWords(damage.fact)}, ${stationWords(damage, figures)}`,
  glyph: (gx, gy) => remedyGlyph(damage.remedy, gx, gy),
});

export interface FlagRows {
  readonly parts: Part[];
  readonly height: number;
}

const rowHeight = 20;
const mostRows = 5;
const longest = 260;

/** Flags above a drawing whose top is at y = `height` of what comes back. Undefined when they do not fit. */
export function flagRows(points: readonly NamedPoint[], from: number, to: number, most = mostRows): FlagRows | undefined {
  if (points.length === 0) return { parts: [], height: 0 };
  if (points.length > 30) return undefined;
  const says = points.map((p) => fitText(p.says, longest, 13));
  const flags = points.map((p, i) => ({ x: p.x, width: 18 + textWidth(says[i]!, 13) }));
  const placed = placeFlags(flags, from, to, most);
  if (placed === undefined) return undefined;
  const height = (Math.max(...placed.map((p) => p.row)) + 1) * rowHeight + 4;
  const poles: Part[] = [];
  const labels: Part[] = [];
  for (const [i, { left, row }] of placed.entries()) {
    const y = height - 4 - row * rowHeight - 10;
    const { x, glyph } = points[i]!;
    // A text that was moved in from the edge stands over its pole.
    poles.push(line(x, x < left || left + flags[i]!.width < x ? y - 7 : y + 8, x, height, 's-thin'));
    labels.push(...glyph(left + 7, y), text(left + 18, y + 4.5, says[i]!, 't-body'));
  }
  return { parts: [...poles, ...labels], height };
}

/** So many entries that names would cover each other: counted in equal parts of the line, the worst remedy shown. */
export function countedRows(damages: readonly { readonly x: number; readonly remedy: Remedy }[], from: number, to: number): FlagRows {
  const bins = Math.max(1, Math.floor((to - from) / 108));
  const width = (to - from) / bins;
  const parts: Part[] = [];
  for (let bin = 0; bin < bins; bin++) {
    const inside = damages.filter((d) => Math.max(0, Math.min(bins - 1, Math.floor((d.x - from) / width))) === bin);
    if (inside.length === 0) continue;
    const [x1, x2] = [from + bin * width + 3, from + (bin + 1) * width - 3];
    const worst = remedies.find((r) => inside.some((d) => d.remedy === r))!;
    const many = inside.filter((d) => d.remedy === worst).length;
    parts.push(text(x1 + 2, 13, inside.length === 1 ? '1 entry' : `${inside.length} entries`, 't-strong'));
    parts.push(...remedyGlyph(worst, x1 + 9, 27), text(x1 + 21, 31, `${many} ${short[worst]}`, 't-quiet', { width: x2 - x1 - 20 }));
    parts.push(path(`M${c(x1)} 48L${c(x1)} 40L${c(x2)} 40L${c(x2)} 48`, 's-thin'));
  }
  return { parts, height: 52 };
}

const short: Readonly<Record<Remedy, string>> = { ...remedyWords, retire: 'to retire', 'cut-out': 'to cut out', derate: 'less load', clean: 'to clean' };
