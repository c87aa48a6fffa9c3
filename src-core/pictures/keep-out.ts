import { isBelow } from '../base/compare.ts';
import type { AssessedPull } from '../assess/assess-pull.ts';
import { showLike } from '../assess/show.ts';
import { asGiven, isUnknown, type Given } from '../mechanics/derivation.ts';
import { exactly } from '../units/amount.ts';
import { showLength, type Figures } from './figures.ts';
import type { Point } from './plan-layout.ts';
import type { PlanScene } from './plan-scene.ts';
import type { PictureIds } from './picture.ts';
import { circle, group, line, path, polyline, text, textSizes, unknownMark } from './shapes.ts';
import { coordinate as c, ownInside, part, type Part } from './svg.ts';
import { wrapText } from './text-width.ts';

const height = 168;
const width = 250;

/** The corners of the smallest outline without a dent around some points, in order. */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y).filter((p, i, all) => i === 0 || p.x !== all[i - 1]!.x || p.y !== all[i - 1]!.y);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of list) {
      while (out.length > 1 && cross(out.at(-2)!, out.at(-1)!, p) <= 1e-9) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

const cross = (o: Point, a: Point, b: Point): number => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);

/** Everything within a distance of the hull of some points: straight sides, and an arc around each corner. */
export function outlineAround(points: readonly Point[], distance: number): string {
  const hull = hullOf(points);
  const r = c(distance);
  if (hull.length === 1) return `M${c(hull[0]!.x - distance)} ${c(hull[0]!.y)}a${r} ${r} 0 1 0 ${c(2 * distance)} 0a${r} ${r} 0 1 0 ${c(-2 * distance)} 0Z`;
  let d = '';
  hull.forEach((p, i) => {
    const next = hull[(i + 1) % hull.length]!;
    const length = Math.hypot(next.x - p.x, next.y - p.y);
    const [nx, ny] = [((next.y - p.y) / length) * distance, (-(next.x - p.x) / length) * distance];
    d += `${i === 0 ? 'M' : `A${r} ${r} 0 0 1 `}${c(p.x + nx)} ${c(p.y + ny)}L${c(next.x + nx)} ${c(next.y + ny)}`;
  });
  const [a, b] = [hull[0]!, hull[1]!];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return `${d}A${r} ${r} 0 0 1 ${c(a.x + ((b.y - a.y) / length) * distance)} ${c(a.y - ((b.x - a.x) / length) * distance)}Z`;
}

const person = (x: number, y: number): Part => part('g', {}, circle(x, y - 5, 3.5, 'ink'), path(`M${c(x - 5)} ${c(y + 7)}C${c(x - 5)} ${c(y - 2)} ${c(x + 5)} ${c(y - 2)} ${c(x + 5)} ${c(y + 7)}Z`, 'ink'));

/** Where the line lies, in metres: by the written places, else drawn out straight over the reach. */
function metresOf(scene: PlanScene, pull: AssessedPull): Point[] | undefined {
  if (scene.isPlaced) return scene.nodes.map((n) => ({ x: n.at!.ahead, y: -n.at!.left }));
  const { reach } = pull.reach;
  if (isUnknown(reach)) return undefined;
  return scene.nodes.map((n) => ({ x: n.moves ? 0 : reach.amount.high, y: 0 }));
}

export interface KeepOut {
  readonly parts: Part[];
  readonly height: number;
  /** One sentence each. */
  readonly says: readonly string[];
  readonly distance: string;
}

/** The area that everybody stays out of who does not run the winch, drawn over the whole rigging. */
export function keepOut(pull: AssessedPull, scene: PlanScene, figures: Figures, ids: PictureIds, left: number, right: number): KeepOut {
  const off = asGiven(pull.standOff);
  const people = pull.people === undefined || isUnknown(pull.people) ? undefined : pull.people;
  const distance = isUnknown(off) ? 'not known' : showLike(exactly(off.amount.high), off, 'up', figures.length);
  // Whatever a length that is not known comes to, who is nearer than a known line is long is too near.
  const least = asGiven(pull.standOffAtLeast);
  const isNear = people !== undefined && !isUnknown(least) && isBelow(people.amount.low, least.amount.high);
  const peopleSay = people === undefined ? 'How far people keep off is not written.' : isNear ? `✕ People keep ${showLength(people, figures)} off, which is nearer${isUnknown(off) && !isUnknown(least) ? ` than ${showLike(exactly(least.amount.high), least, 'up', figures.length)}, the longest line that is known` : ''}.` : isUnknown(off) ? `People keep ${showLength(people, figures)} off.` : `People keep ${showLength(people, figures)} off, outside of it.`;
  const says = isUnknown(off) ? [`How far people must keep off is not known: ${ownInside(off.unknown.says)}.`, peopleSay] : [`Keep-out area: ${distance} from every part of the line, in every direction.`, `That is the length of the longest line in use. Only who runs the winch stands nearer.`, peopleSay];
  const bights = pull.rigging.blocks.length > 0 ? ['Nobody stands inside the angle of the line at a block (common practice).'] : [];
  const parts: Part[] = [];
  const wordsLeft = left + width + 30;
  let y = 12;
  for (const [i, sentence] of [...says, ...bights].entries()) {
    const look = i === 0 ? 't-strong' : 't-body';
    for (const row of wrapText(sentence, right - wordsLeft, textSizes[look], 3)) parts.push(text(wordsLeft, (y += 18), row, look));
    y += 4;
  }
  parts.push(...(isUnknown(off) ? [unknownMark(left + width / 2, y / 2 + 8)] : overview(metresOf(scene, pull), off, people, isNear, distance, figures, ids, left)));
  return { parts, height: Math.max(isUnknown(off) ? 0 : height, y + 6), says, distance };
}

function overview(places: readonly Point[] | undefined, off: Given, people: Given | undefined, isNear: boolean, distance: string, figures: Figures, ids: PictureIds, left: number): Part[] {
  const D = off.amount.high;
  const metres = places ?? [{ x: 0, y: 0 }, { x: D / 2, y: 0 }];
  const around = Math.max(D, people?.amount.low ?? 0) + D * 0.12;
  const [xs, ys] = [metres.map((p) => p.x), metres.map((p) => p.y)];
  const [x1, x2, y1, y2] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(width / (x2 - x1 + 2 * around), height / (y2 - y1 + 2 * around));
  const [ox, oy] = [left + width / 2 - ((x1 + x2) / 2) * scale, height / 2 - ((y1 + y2) / 2) * scale];
  const points = metres.map((p) => ({ x: ox + p.x * scale, y: oy + p.y * scale }));
  const outline = outlineAround(points, D * scale);
  const parts: Part[] = [part('path', { fill: ids.pattern('keep-out'), d: outline }), path(outline, 's-limit'), path(polyline(points.map((p): [number, number] => [p.x, p.y])), 's-rope')];
  for (const p of points) parts.push(circle(p.x, p.y, 2.5, 'ink'));
  const [foot, middle] = [{ x: (Math.min(...points.map((p) => p.x)) + Math.max(...points.map((p) => p.x))) / 2, y: Math.max(...points.map((p) => p.y)) }, D * scale];
  parts.push(line(foot.x, foot.y + 3, foot.x, foot.y + middle, 's-ink'), text(foot.x + 7, foot.y + middle / 2 + 6, distance, 't-strong', { rim: 'paper' }));
  if (people !== undefined) {
    const top = Math.min(...points.map((p) => p.y));
    const py = top - people.amount.low * scale;
    const says = showLength(people, figures);
    parts.push(circle(foot.x, py, 11, 'paper'), text(foot.x + 14, py + 5, says, 't-body', { rim: 'paper' }), person(foot.x, py), ...(isNear ? [path(`M${c(foot.x - 9)} ${c(py - 9)}l18 18M${c(foot.x - 9)} ${c(py + 9)}l18 -18`, 's-alarm')] : []));
  }
  return [group(0, 0, parts)];
}
