import type { AssessedWinch } from '../assess/assess-winch.ts';
import { show } from '../assess/show.ts';
import { isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { exactly, type Amount } from '../units/amount.ts';
import { causesOf, figuresOf, printForce, printLength, showDerived, type Figures } from './figures.ts';
import { emptyPicture, finish, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { axisUnit, scaleOf, ticks } from './scale.ts';
import { filled, group, line, path, polyline, rect, text, widthOf } from './shapes.ts';
import { own, type Part } from './svg.ts';

const left = 84;
const right = rightEdge - 12;
const height = 220;

/** The stretch of line out over which the line leaves one layer. */
interface Step {
  readonly layer: number;
  /** Line out (m) at which the layer is reached, and at which the next one inward is. */
  readonly from: Amount;
  readonly to: Amount;
  readonly pull: Amount | undefined;
}

/** Steps from all line on the drum to all line out. Undefined when the length is not known. */
function stepsOf(winch: AssessedWinch): Step[] | undefined {
  if (isUnknown(winch.drum) || isUnknown(winch.length)) return undefined;
  const L = winch.length.amount;
  const rows = [...winch.drum.rows].reverse();
  const starts = rows.map((row, i): Amount | undefined => {
    if (i === 0) return exactly(0);
    return isUnknown(row.lengthThrough) ? undefined : { low: Math.max(0, L.low - row.lengthThrough.amount.high), high: Math.max(0, L.high - row.lengthThrough.amount.low) };
  });
  if (starts.some((s) => s === undefined)) return undefined;
  return rows.map((row, i) => ({ layer: row.layer, from: starts[i]!, to: starts[i + 1] ?? L, pull: isUnknown(row.pull) ? undefined : row.pull.amount }));
}

/** Least line out from which on every layer gives what is needed; undefined when none does. */
function metFrom(steps: readonly Step[], needed: Given): Step | undefined {
  let met: Step | undefined;
  for (const step of [...steps].reverse()) {
    if (step.pull === undefined || step.pull.low < needed.amount.high) break;
    met = step;
  }
  return met;
}

/** The pull that the winch has at each length of line out, with the pull that is needed across it. */
export function pullByLineOut(winch: AssessedWinch, needed?: Value): Picture {
  const name = own(winch.name);
  const title = `Pull of ${name} by line out`;
  const causes = causesOf(winch.barrel, winch.width, winch.diameter, winch.length, winch.ratedPull, winch.drum, winch.usable, needed);
  if (isUnknown(winch.drum)) return emptyPicture(title, 'The pull by line out is not known.', causes);
  const ids = new PictureIds();
  const figures = figuresOf([winch.length], [winch.ratedPull]);
  const counted = stepsOf(winch);
  // Without a length the layers are still known: they stand side by side in equal parts, and the foot says so.
  const rows = [...winch.drum.rows].reverse();
  const steps: readonly Step[] = counted ?? rows.map((row, i) => ({ layer: row.layer, from: exactly(i), to: exactly(i + 1), pull: isUnknown(row.pull) ? undefined : row.pull.amount }));
  const end = steps.at(-1)?.to.high ?? 1;
  const required = needed === undefined || isUnknown(needed) ? undefined : needed;
  const highest = Math.max(0, ...steps.map((s) => s.pull?.high ?? 0), required?.amount.high ?? 0) * 1.12;
  const x = scaleOf(0, end, left, right);
  const y = scaleOf(0, highest === 0 ? 1 : highest, height, 0);
  const parts: Part[] = [];
  const legend: LegendEntry[] = [];
  if (highest > 0) {
    const unit = axisUnit('line pull', highest, figures.force, figures.system);
    for (const tick of ticks(highest, unit, 6)) parts.push(line(left, y(tick.at), right, y(tick.at), 's-grid'), text(left - 8, y(tick.at) + 4, tick.at === 0 ? `0 ${unit?.symbol ?? ''}` : tick.label, 't-quiet', { anchor: 'end' }));
  }
  const usableEnd = counted === undefined || isUnknown(winch.usable) ? right : x(Math.max(0, winch.usable.amount.low));
  parts.push(...stepParts(steps, x, y, required, (pattern) => ids.pattern(pattern), figures, usableEnd));
  if (ids.used.has('short')) legend.push({ symbol: [rect(0, 0, 26, 16, 's-alarm'), filled(0, 0, 26, 16, ids.pattern('short'))], says: 'below the pull needed' });
  if (ids.used.has('unknown')) legend.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('unknown')), rect(0, 0, 26, 16, 's-dots')], says: 'pull not known' });
  if (counted !== undefined && !isUnknown(winch.usable)) {
    const from = usableEnd;
    parts.push(rect(from, 0, right - from, height, 'paper'), filled(from, 0, right - from, height, ids.pattern('kept')), path(`M${from.toFixed(1)} 0V${height}`, 's-ink'));
    legend.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('kept')), rect(0, 0, 26, 16, 's-thin')], says: `kept wraps, from ${showDerived(winch.usable)} out` });
  }
  if (required !== undefined) {
    const at = y(required.amount.high);
    parts.push(path(`M${left} ${at.toFixed(1)}H${right}`, 's-limit'), neededLabel(`needed ${show(required, { unit: figures.force })}`, at, steps, x, y, usableEnd));
  }
  parts.push(line(left, height, right, height, 's-ink'));
  if (counted !== undefined) {
    const unit = axisUnit('length', end, figures.length, figures.system);
    for (const tick of ticks(end, unit, 8)) parts.push(line(x(tick.at), height, x(tick.at), height + 5, 's-ink'), text(x(tick.at), height + 19, tick.label, 't-quiet', { anchor: 'middle' }));
    parts.push(text(left - 4, height + 37, `${unit?.symbol ?? ''} of line out`, 't-quiet'));
  } else parts.push(text(left, height + 19, 'from the outermost layer that fits to the first; where each begins is not known', 't-quiet'));
  const lead = leadOf(steps, counted !== undefined, needed, figures);
  return finish({
    ids, title, lead, more: `Rated pull ${isUnknown(winch.ratedPull) ? 'not known' : `${show(winch.ratedPull)} on layer ${isUnknown(winch.ratedLayer) ? 'not known' : show(winch.ratedLayer)}`}. The pull grows as the line runs out, because the layers under it are smaller.`,
    body: [group(0, 10, parts)], height: height + 54, legend, causes, description: lead,
    table: {
      head: ['line out from', 'to', 'layer', 'pull', ...(required === undefined ? [] : ['against the pull needed'])],
      rows: steps.map((s) => [
        ...(counted === undefined ? ['not known', 'not known'] : [printLength(s.from, figures, 'up'), printLength(s.to, figures, 'down')]), String(s.layer), s.pull === undefined ? 'not known' : printForce(s.pull, figures, 'down'),
        ...(required === undefined ? [] : [s.pull === undefined ? 'not known' : s.pull.low < required.amount.high ? 'below' : 'reaches it']),
      ]),
    },
  });
}

/** Above or below its line, where the steps leave it free. */
function neededLabel(says: string, at: number, steps: readonly Step[], x: (m: number) => number, y: (n: number) => number, usableEnd: number): Part {
  const width = widthOf(says, 't-strong');
  const places = [left + 6, usableEnd - width - 6, (left + usableEnd - width) / 2].flatMap((from) => [{ from, base: at - 7 }, { from, base: at + 18 }]);
  const isFree = ({ from, base }: (typeof places)[number]): boolean => {
    let before: number | undefined;
    return steps.every((step, i) => {
      const [x1, x2] = [x(step.from.high), x(steps[i + 1]?.from.high ?? step.to.high)];
      const level = step.pull === undefined ? undefined : y(step.pull.low);
      const riser = before;
      before = level;
      const [top, foot] = [base - 14, base + 6];
      if (level !== undefined && x1 < from + width && from < x2 && top < level && level < foot) return false;
      // The upright between two steps crosses whatever lies between their levels.
      return !(riser !== undefined && level !== undefined && from < x1 && x1 < from + width && Math.min(riser, level) < foot && top < Math.max(riser, level));
    });
  };
  const place = places.find(isFree) ?? places[0]!;
  return text(place.from, place.base, says, 't-strong', { rim: 'paper' });
}

function leadOf(steps: readonly Step[], isCounted: boolean, needed: Value | undefined, figures: Figures): string {
  const [outer, inner] = [steps[0], steps.at(-1)];
  if (outer?.pull === undefined || inner?.pull === undefined) return 'The pull on each layer is not known.';
  const range = `${printForce(outer.pull, figures, 'down')} on layer ${outer.layer}${outer === inner ? '' : `, rising to ${printForce(inner.pull, figures, 'down')} on layer ${inner.layer}`}`;
  if (needed === undefined) return `${range}.`;
  if (isUnknown(needed)) return `${range}; the pull needed is not known.`;
  const want = show(needed, { unit: figures.force });
  const met = metFrom(steps, needed);
  if (met === undefined) return `${range}; no layer gives the ${want} needed.`;
  if (met === outer) return `${range}; every layer gives the ${want} needed.`;
  return isCounted ? `${range}; the ${want} needed is there from ${printLength(exactly(met.from.high), figures, 'up')} of line out on.` : `${range}; the ${want} needed is there from layer ${met.layer} inward.`;
}

function stepParts(steps: readonly Step[], x: (m: number) => number, y: (n: number) => number, needed: Given | undefined, pattern: (name: 'short' | 'unknown') => string, figures: Figures, usableEnd: number): Part[] {
  const parts: Part[] = [];
  const labels: Part[] = [];
  const over: Part[] = [];
  const top: [number, number][] = [];
  for (const [i, step] of steps.entries()) {
    // A layer counts from where it is reached for certain: until then the weaker one outside it is drawn.
    const [x1, x2] = [x(step.from.high), x(steps[i + 1]?.from.high ?? step.to.high)];
    if (step.pull === undefined) {
      parts.push(filled(x1, 0, x2 - x1, height, pattern('unknown')));
      continue;
    }
    const at = y(step.pull.low);
    parts.push(rect(x1, at, x2 - x1, height - at, 'panel'));
    top.push([x1, at], [x2, at]);
    if (needed !== undefined && step.pull.low < needed.amount.high) over.push(filled(x1, y(needed.amount.high), x2 - x1, at - y(needed.amount.high), pattern('short')));
    const says = printForce(step.pull, figures, 'down');
    if (i > 0) parts.push(line(x1, at, x1, height, 's-grid'));
    const seen = Math.min(x2, usableEnd) - x1;
    const middle = x1 + seen / 2;
    if (seen > Math.max(widthOf(says, 't-strong'), widthOf('layer 10', 't-quiet')) + 4) labels.push(text(middle, height - 26, says, 't-strong', { anchor: 'middle', rim: 'panel' }), text(middle, height - 10, `layer ${step.layer}`, 't-quiet', { anchor: 'middle', rim: 'panel' }));
    else if (seen > 18) labels.push(text(middle, height - 10, String(step.layer), 't-quiet', { anchor: 'middle', rim: 'panel' }));
  }
  return [...parts, ...over, ...(top.length > 0 ? [path(polyline(top), 's-strength')] : []), ...labels];
}
