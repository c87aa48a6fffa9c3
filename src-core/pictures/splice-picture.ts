import { isBelow } from '../base/compare.ts';
import type { AssessedPiece } from '../assess/assess-line.ts';
import { show, showValue } from '../assess/show.ts';
import type { AssessedEnd, BuriedEnd } from '../assess/splice-end.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import type { SpliceMark } from '../mechanics/splice-marks.ts';
import { taperSchedule, type TaperStep } from '../mechanics/taper-schedule.ts';
import { endWords, formWords } from './end-words.ts';
import { causesOf, figuresOf, printLength, showDerived, showForce, showLength, type Figures } from './figures.ts';
import { emptyPicture, finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { placeFlags } from './place-flags.ts';
import { circle, filled, group, line, measureAcross, path, polyline, rect, text, widthOf } from './shapes.ts';
import { coordinate as c, own, ownInside, part, type Part } from './svg.ts';

const tapeLeft = margin + 12;
const tapeRight = rightEdge - 12;

interface KnownMark {
  readonly mark: SpliceMark;
  readonly at: Given;
}

/** How a splice is marked, and how it lies when it is made. */
export function splicePicture(piece: AssessedPiece, end: AssessedEnd): Picture {
  const which = end.which === 'joint' ? 'joint' : `${end.which} end`;
  const title = `${own(piece.name)}, ${which}: ${formWords(end.facts.form)}`;
  if (end.buried === undefined) return emptyPicture(title, `No tail is buried in the line here: ${ownInside(endWords(end))}.`, end.facts.form === 'lug' ? [] : causesOf(end.strength));
  const { buried } = end;
  const ids = new PictureIds();
  const figures = figuresOf([buried.bury, buried.taper, piece.line.diameter, piece.line.length], [piece.line.breaking]);
  const steps = buried.taperWritten ? taperSchedule(buried.taper, piece.line.strands) : undefined;
  const body: Part[] = [];
  const legend: LegendEntry[] = [];
  let y = 0;
  const marks = (buried.marks ?? []).flatMap((mark) => (isUnknown(mark.at) ? [] : [{ mark, at: mark.at }]));
  if (marks.length > 1) {
    body.push(text(margin, y + 13, 'Before: lay it straight, measure from the cut end', 't-strong'));
    const tape = drawTape(marks, steps === undefined || isUnknown(steps) ? [] : steps, buried, figures, ids);
    body.push(group(0, y + 28, tape.parts));
    y += 28 + tape.height + 22;
  }
  body.push(text(margin, y + 13, 'As made', 't-strong'));
  const made = drawMade(end, buried, figures, ids);
  body.push(group(0, y + 26, made.parts));
  y += 26 + made.height;
  if (ids.used.has('between')) legend.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('between')), rect(0, 0, 26, 16, 's-thin')], says: 'lies somewhere in here' });
  if (steps !== undefined && !isUnknown(steps)) legend.push({ symbol: [path('M6 2V14M13 2V14M20 2V14', 's-ink')], says: 'strands drop out' });
  if (ids.used.has('short')) legend.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('short')), rect(0, 0, 26, 16, 's-alarm')], says: 'bury that is missing' });
  if (ids.used.has('unknown')) legend.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('unknown')), rect(0, 0, 26, 16, 's-dots')], says: 'not known' });
  const lead = leadOf(end, buried, figures);
  const unmarked = (buried.marks ?? []).flatMap((m) => (isUnknown(m.at) ? [m.at.unknown] : []));
  return finish({
    ids, title, lead, more: `${ownInside(endWords(end))}. ${isUnknown(buried.used) ? 'How much line it uses is not known.' : `Uses ${showDerived(buried.used, { unit: figures.length })} of line from the cut end to where ${end.which === 'joint' ? 'the lines meet' : 'the eye bears'}.`}`,
    body, height: y, legend,
    causes: [...causesOf(buried.bury, buried.needed, piece.line.diameter, end.strength, steps), ...unmarked],
    notes: buried.eyeLoopWritten || end.which === 'joint' ? ['Lengths are to scale; the thickness and the eye are not.'] : ['Lengths are to scale; the thickness and the eye are not. The size of the eye is not written, so the marks behind it lie in a range: measure around the thimble.'],
    description: `${lead}${marks.length === 0 ? '' : ' '}${marks.map(({ mark, at }) => `${mark.name} at ${showLength(at, figures)}`).join(', ')}${marks.length === 0 ? '' : '.'}`,
    table: {
      head: ['what', 'measure', 'means'],
      rows: [
        ...(buried.marks ?? []).map((m) => [m.name, m.at === undefined ? '' : showLength(m.at, figures), m.meaning]),
        ...(steps === undefined || isUnknown(steps) ? [] : steps.map((s) => [`taper step ${s.step}`, showDerived(s.at, { unit: figures.length }), `${s.says}; ${s.strandsLeft} strands left`])),
        ['bury', showLength(buried.bury, figures), `${showDerived(buried.buryIn_d)}, of ${showValue(buried.needed_d)} needed`],
        ['taper', buried.taperWritten ? showLength(buried.taper, figures) : 'blunt', `needed ${showLength(buried.taperNeeded, figures)}`],
        ['line used', showDerived(buried.used, { unit: figures.length }), 'from the cut end to where the eye bears'],
        ['breaking strength there', showForce(end.strength, figures), ''],
      ],
    },
  });
}

function leadOf(end: AssessedEnd, buried: BuriedEnd, figures: Figures): string {
  const strength = isUnknown(end.strength) ? 'breaking strength there not known' : `breaking strength there ${showForce(end.strength, figures)}`;
  if (isUnknown(buried.bury)) return `Bury not known; ${strength}.`;
  const bury = `Bury ${showLength(buried.bury, figures)}${isUnknown(buried.buryIn_d) ? '' : `, ${showDerived(buried.buryIn_d)}`}`;
  if (isUnknown(buried.needed)) return `${bury}; what it needs is not known; ${strength}.`;
  const short = isBelow(buried.bury.amount.low, buried.needed.amount.high);
  const against = `${short ? 'below' : 'reaches'} the ${showLength(buried.needed, figures)}, ${showValue(buried.needed_d)}, that it needs`;
  return `${bury}: ${against}; ${strength}${end.facts.temporary ? '; temporary' : ''}.`;
}

/** The line laid out straight with its marks, from the cut end. */
function drawTape(marks: readonly KnownMark[], steps: readonly TaperStep[], buried: BuriedEnd, figures: Figures, ids: PictureIds): { parts: Part[]; height: number } {
  const last = Math.max(...marks.map((m) => m.at.amount.high)) * 1.04;
  const x = (metres: number): number => tapeLeft + (metres / last) * (tapeRight - tapeLeft);
  const labels = marks.map(({ mark, at }) => [mark.name, printLength(at.amount, figures)] as const);
  const flags = marks.map(({ at }, i) => ({ x: x(at.amount.low), width: Math.max(widthOf(labels[i]![0], 't-strong'), widthOf(labels[i]![1], 't-body')) + 4 }));
  const placed = placeFlags(flags, margin, rightEdge, 5) ?? flags.map((f, i) => ({ left: Math.min(f.x + 5, rightEdge - f.width), row: i }));
  const rowHeight = 40;
  const top = (Math.max(...placed.map((p) => p.row)) + 1) * rowHeight + 2;
  const [upper, lower] = [top, top + 22];
  const parts: Part[] = [];
  const taper = marks.find((m) => m.mark.name === 'taper start')?.at.amount.high ?? 0;
  parts.push(path(polyline([[x(0), upper + (taper > 0 ? 7 : 0)], [x(taper), upper], [tapeRight, upper], [tapeRight, lower], [x(taper), lower], [x(0), lower - (taper > 0 ? 7 : 0)]], true), 'rope'));
  let inlay = '';
  for (let i = x(taper) + 10; i < tapeRight - 8; i += 14) inlay += `M${c(i)} ${upper + 15}l6 -8`;
  parts.push(path(inlay, 's-inlay'), path(`M${c(tapeRight)} ${upper}q6 6 0 11t0 11`, 's-ink'));
  for (const step of steps) if (!isUnknown(step.at)) parts.push(path(`M${c(x(step.at.amount.low))} ${lower + 3}V${lower + 11}`, 's-ink'));
  // Ranges may lie over each other: all strokes come after all hatching.
  const strokes: Part[] = [];
  for (const [i, { at }] of marks.entries()) {
    const { left, row } = placed[i]!;
    const [low, high] = [x(at.amount.low), x(at.amount.high)];
    const labelY = top - 2 - (row + 1) * rowHeight;
    if (high > low + 1) parts.push(rect(low, upper - 6, high - low, 34, 'paper'), filled(low, upper - 6, high - low, 34, ids.pattern('between')));
    if (high > low + 1) strokes.push(path(`M${c(high)} ${upper - 6}V${lower + 6}`, 's-ink'));
    strokes.push(path(`M${c(low)} ${low < left || left + flags[i]!.width < low ? labelY + 4 : labelY + 36}V${lower + 6}`, 's-ink'), text(left, labelY + 15, labels[i]![0], 't-strong'), text(left, labelY + 31, labels[i]![1], 't-body'));
  }
  parts.push(...strokes);
  const { bury, eyeLoop, exit } = buried;
  if (isUnknown(bury)) return { parts, height: lower + 8 };
  const measures: [string, number, number][] = [[`buried tail ${showLength(bury, figures)}`, 0, bury.amount.high]];
  if (!isUnknown(eyeLoop) && eyeLoop.amount.low > 0) measures.push([`eye ${showLength(eyeLoop, figures)}`, bury.amount.high, bury.amount.high + eyeLoop.amount.low]);
  if (!isUnknown(exit) && !isUnknown(eyeLoop)) measures.push([`takes in the tail, ${showLength(asGiven(exit), figures)}`, bury.amount.high + eyeLoop.amount.low, bury.amount.high + eyeLoop.amount.low + exit.amount.low]);
  let free = -Infinity;
  let row = 0;
  let rows = 0;
  for (const [says, from, to] of measures) {
    const y = lower + 24;
    const middle = (x(from) + x(to)) / 2;
    const half = widthOf(says, 't-quiet') / 2;
    const at = Math.max(margin + half, Math.min(rightEdge - half, middle));
    row = at - half < free + 10 ? row + 1 : 0;
    free = at + half;
    rows = Math.max(rows, row);
    parts.push(measureAcross(x(from), x(to), y), text(at, y + 18 + row * 16, says, 't-quiet', { anchor: 'middle' }));
  }
  return { parts, height: lower + 24 + 24 + rows * 16 };
}

/** The splice as it lies when it is made: throat, buried tail thinning out, and where the bury should end. */
function drawMade(end: AssessedEnd, buried: BuriedEnd, figures: Figures, ids: PictureIds): { parts: Part[]; height: number } {
  const isJoint = end.which === 'joint';
  const throat = isJoint ? (tapeLeft + tapeRight) / 2 : tapeRight - 96;
  const span = throat - tapeLeft - 40;
  const y = 56;
  const known = [buried.bury, buried.needed].flatMap((v: Value) => (isUnknown(v) ? [] : [v.amount.high]));
  const scale = known.length === 0 ? 1 : span / Math.max(...known);
  const parts: Part[] = [];
  parts.push(rect(tapeLeft, y - 9, (isJoint ? tapeRight : throat) - tapeLeft, 18, 'rope'));
  if (isUnknown(buried.bury)) {
    parts.push(rect(throat - span, y - 14, span, 28, 'paper'), filled(throat - span, y - 14, span, 28, ids.pattern('unknown')), rect(throat - span, y - 14, span, 28, 's-dots'), text(throat - span / 2, y + 5, 'bury not known', 't-strong', { anchor: 'middle', rim: 'paper' }));
  } else {
    const bury = buried.bury.amount.high * scale;
    const taper = isUnknown(buried.taper) ? 0 : Math.min(bury, buried.taper.amount.high * scale);
    for (const way of isJoint ? [-1, 1] : [-1]) {
      const at = (distance: number): number => throat + way * distance;
      parts.push(path(polyline([[at(0), y - 15], [at(bury - taper), y - 15], [at(bury), y - 9], [at(bury), y + 9], [at(bury - taper), y + 15], [at(0), y + 15]], true), 'splice'));
      parts.push(path(polyline([[at(0), y - 6], [at(bury - taper), y - 6], [at(bury), y - 1.5], [at(bury), y + 1.5], [at(bury - taper), y + 6], [at(0), y + 6]], true), 'inlay'));
      if (!isUnknown(buried.needed) && buried.needed.amount.high * scale > bury + 1) {
        const needed = buried.needed.amount.high * scale;
        parts.push(rect(Math.min(at(bury), at(needed)), y - 9, needed - bury, 18, 'paper'), filled(Math.min(at(bury), at(needed)), y - 9, needed - bury, 18, ids.pattern('short')), rect(Math.min(at(bury), at(needed)), y - 9, needed - bury, 18, 's-alarm'));
      }
    }
    parts.push(measureAcross(throat - bury, throat, y + 32), text(throat - bury / 2, y + 50, `bury ${showLength(buried.bury, figures)}`, 't-body', { anchor: 'middle' }));
    if (!isUnknown(buried.taper) && taper > 0) {
      const says = `taper ${showLength(buried.taper, figures)}`;
      parts.push(measureAcross(throat - bury, throat - bury + taper, y - 26), text(throat - bury, y - 36, says, 't-quiet'));
    } else if (!buried.taperWritten) parts.push(text(throat - bury, y - 24, 'blunt: no taper is written', 't-quiet'));
  }
  let height = y + 58;
  if (!isUnknown(buried.needed)) {
    const needed = buried.needed.amount.high * scale;
    parts.push(measureAcross(throat - needed, throat, y + 66), text(throat - needed / 2, y + 84, `needed ${show(buried.needed, { unit: figures.length })}`, 't-body', { anchor: 'middle' }));
    height = y + 92;
  }
  if (!isJoint) {
    parts.push(part('path', { class: 's-eye', d: `M${c(throat)} ${y}C${c(throat + 30)} ${y - 46} ${c(throat + 92)} ${y - 38} ${c(throat + 92)} ${y}C${c(throat + 92)} ${y + 38} ${c(throat + 30)} ${y + 46} ${c(throat)} ${y}` }));
    if (end.facts.thimble !== undefined) parts.push(circle(throat + 58, y, 20, 'hollow'), text(throat + 58, y + 4, end.facts.thimble, 't-quiet', { anchor: 'middle', width: 38 }));
  }
  if (end.facts.stitched) parts.push(path(Array.from({ length: 6 }, (_, i) => `M${c(throat - 12 - i * 8)} ${y - 17}v34`).join(''), 's-ink'));
  if (end.facts.locked) parts.push(path(`M${c(throat - 8)} ${y - 17}l16 34M${c(throat + 8)} ${y - 17}l-16 34`, 's-ink'));
  parts.push(line(throat, y - 46, throat, y + 26, 's-thin'), text(throat + 4, y - 51, isJoint ? 'middle of the joint' : 'throat', 't-quiet', { anchor: isJoint ? 'start' : 'end' }));
  return { parts, height };
}
