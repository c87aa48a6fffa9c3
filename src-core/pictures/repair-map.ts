import type { AssessedRepair } from '../assess/assessing.ts';
import type { AssessedPiece, Remedy } from '../assess/assess-line.ts';
import { writtenValue } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { nameOf, newNameOf, type BoundStatement } from '../model/bound.ts';
import { dropsInboard } from '../model/line-work.ts';
import { between } from '../units/amount.ts';
import type { NamedPoint } from './damage-flags.ts';
import { printLength } from './figures.ts';
import { lineFigures, lineWords, mapCauses, mapLeft, mapLegend, mapScale, mapTable, pieceLead, strengthTop } from './line-map.ts';
import { finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { drawPiece, reachOf } from './piece-drawing.ts';
import { circle, filled, group, path, rect, text } from './shapes.ts';
import { coordinate as c, own, type Part } from './svg.ts';

interface PlannedCut {
  readonly at: number;
  readonly keep: string | undefined;
  readonly drops: boolean;
  readonly says: string;
}

/** A stretch of the line before, between two cuts. */
interface Segment {
  readonly name: string | undefined;
  readonly from: number;
  readonly to: number;
}

/** Scissors seen from the side. */
const cutGlyph = (x: number, y: number): Part[] => [path(`M${c(x - 6)} ${c(y - 6)}L${c(x + 3)} ${c(y + 4)}M${c(x + 6)} ${c(y - 6)}L${c(x - 3)} ${c(y + 4)}`, 's-ink'), circle(x - 4, y + 5, 2.5, 'hollow'), circle(x + 4, y + 5, 2.5, 'hollow')];

/** Cuts of one piece, from inboard outward; what cannot be placed is left out and named among the causes of its piece. */
function plannedCuts(statements: readonly BoundStatement[], piece: AssessedPiece, lineName: string): PlannedCut[] {
  const length = isUnknown(piece.length) ? undefined : piece.length.amount.high;
  const cuts: PlannedCut[] = [];
  for (const statement of statements) {
    const station = statement.values.get('station');
    if (statement.definition.head !== 'cut' || station?.type !== 'station' || (nameOf(statement.values, 'piece')?.name ?? lineName) !== piece.name) continue;
    const { distance, end } = station.from;
    const at = end === 'inboard' ? distance.value : length === undefined ? undefined : length - distance.value;
    if (at === undefined || at < 0 || (length !== undefined && at > length)) continue;
    cuts.push({ at, keep: newNameOf(statement.values, 'keep')?.name, drops: dropsInboard(statement), says: `cut, ${show(writtenValue(distance))} from ${end}` });
  }
  return cuts.sort((a, b) => a.at - b.at);
}

function segmentsOf(piece: AssessedPiece, cuts: readonly PlannedCut[]): Segment[] {
  const end = reachOf(piece).high;
  const bounds = [0, ...cuts.map((cut) => cut.at), end];
  // The piece begins at the cut that drops what is inboard of it, else at the drum.
  const first = cuts.findLastIndex((cut) => cut.drops) + 1;
  return bounds.slice(1).map((to, i) => ({ name: i < first ? undefined : i === first ? piece.name : cuts[i - 1]!.keep, from: bounds[i]!, to }));
}

/** A line before and after a repair, piece under piece, each where it comes from. */
export function repairMap(repair: AssessedRepair): Picture {
  const { before, after } = repair;
  const name = own(repair.name);
  const ids = new PictureIds();
  const figures = lineFigures(before);
  const [old, made] = [[...before.pieces.values()], [...after.pieces.values()]];
  const scale = mapScale([...old, ...made]);
  const highest = strengthTop(before);
  const total = Math.max(0, ...[...old, ...made].map((p) => reachOf(p).high));
  const body: Part[] = [];
  const found = new Set<Remedy>();
  const marks = { hasSplice: false, hasTemporary: false, hasUnknown: false, hasRange: false };
  const homes = new Map<string, { readonly segment: Segment; readonly piece: AssessedPiece }>();
  const dropped: Segment[] = [];
  const planned: string[] = [];
  let y = 0;

  const heading = (says: string): void => {
    body.push(rect(margin, y, rightEdge - margin, 24, 'panel', 3), text(margin + 10, y + 17, says, 't-strong', { width: rightEdge - margin - 20 }));
    y += 40;
  };
  const draw = (piece: AssessedPiece, left: number, more: { points?: readonly NamedPoint[]; gone?: readonly Segment[] }): void => {
    const drawing = drawPiece(piece, { ids, figures, left, scale, highest, profileHeight: 72, ...more });
    body.push(group(0, y, drawing.parts));
    y += drawing.height + 12;
    for (const remedy of drawing.remedies) found.add(remedy);
    marks.hasSplice ||= drawing.hasSplice;
    marks.hasTemporary ||= drawing.hasSplice && [piece.inboard, piece.outboard, ...piece.joints].some((e) => e.facts.temporary);
    marks.hasUnknown ||= drawing.hasUnknown;
    marks.hasRange ||= drawing.hasRange;
  };

  heading('Before');
  for (const piece of old) {
    const cuts = plannedCuts(repair.block.statements, piece, before.facts.name);
    planned.push(...cuts.map((cut) => cut.says.replace('cut, ', '')));
    const gone: Segment[] = [];
    for (const segment of segmentsOf(piece, cuts)) {
      if (segment.name === undefined) gone.push(segment);
      else homes.set(segment.name, { segment, piece });
    }
    dropped.push(...gone);
    if (old.length > 1) {
      body.push(text(margin, y + 10, own(piece.name), 't-strong'));
      y += 24;
    }
    draw(piece, mapLeft, { points: cuts.map((cut) => ({ x: mapLeft + cut.at * scale, says: cut.says, glyph: cutGlyph })), gone });
  }
  heading('After');
  for (const piece of made) {
    const home = homes.get(piece.name);
    const reach = reachOf(piece).high;
    const kept = home !== undefined && piece.outboard.facts === home.piece.outboard.facts;
    const start = home === undefined ? 0 : kept ? home.segment.to - reach : home.segment.from;
    const left = mapLeft + Math.max(0, Math.min(start, total - reach)) * scale;
    body.push(text(margin, y + 10, `${own(piece.name)}: ${pieceLead(piece, figures)}`, 't-strong', { width: rightEdge - margin }));
    y += 24;
    draw(piece, left, {});
  }

  const legend: LegendEntry[] = mapLegend(found, marks, ids);
  if (dropped.length > 0) legend.push({ symbol: [filled(0, 1, 26, 14, ids.pattern('gone')), path('M0 1H26M0 15H26', 's-thin')], says: 'goes out' });
  const out = dropped.map((s) => printLength({ low: s.to - s.from, high: s.to - s.from }, figures));
  const lead = `${planned.length === 0 ? '' : `Cut at ${planned.join(' and ')}. `}${made.length === 1 ? 'One piece is' : `${made.length} pieces are`} left${out.length === 0 ? '' : `; ${out.join(' and ')} of line ${out.length === 1 ? 'goes' : 'go'} out`}.`;
  const rows = mapTable(old, figures).rows.map((row) => ['before', ...row]);
  return finish({
    ids, title: `${name}: ${own(before.facts.name)} before and after`, lead, more: `${lineWords(before)}. Breaking strength as new ${isUnknown(before.facts.breaking) ? 'not known' : show(before.facts.breaking)}. The drum is on the left; each piece lies under the place it comes from.`,
    body, height: y, legend, causes: mapCauses(made),
    notes: ['Strength is drawn at the careful end of what it may be. Stations of a piece count from its own inboard end.'],
    description: `${lead} ${made.map((p) => `${own(p.name)}: ${pieceLead(p, figures)}`).join(' ')}`,
    table: {
      head: ['when', ...mapTable([], figures).head],
      rows: [...rows, ...dropped.map((s) => ['repair', '', 'goes out', printLength(between(s.from, s.to), figures), '', '']), ...mapTable(made, figures).rows.map((row) => ['after', ...row])],
    },
  });
}
