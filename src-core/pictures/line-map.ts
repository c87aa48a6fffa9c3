import type { AssessedLine, AssessedPiece, Remedy } from '../assess/assess-line.ts';
import { damageWords } from '../assess/damage-words.ts';
import { endName } from '../assess/ends.ts';
import { show } from '../assess/show.ts';
import { isUnknown, unknown, type Cause, type Value } from '../mechanics/derivation.ts';
import { stationWords } from './damage-flags.ts';
import { endWords } from './end-words.ts';
import { causesOf, figuresOf, showForce, showLength, type Figures } from './figures.ts';
import { emptyPicture, finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture, type PictureTable } from './picture.ts';
import { drawPiece, reachOf } from './piece-drawing.ts';
import { remedies, remedyGlyph, remedyWords } from './remedy-glyphs.ts';
import { filled, group, path, polyline, rect, text } from './shapes.ts';
import { own, ownInside, type Part } from './svg.ts';

export const mapLeft = 84;
/** Room for the longest piece; the outer end's eye is drawn beyond it. */
export const mapSpan = rightEdge - 44 - mapLeft;

/** Coordinates for a metre, so that the longest of some pieces fills the picture. */
export function mapScale(pieces: readonly AssessedPiece[]): number {
  const longest = Math.max(0, ...pieces.map((p) => reachOf(p).high));
  return longest > 0 ? mapSpan / longest : 1;
}

/** Top of the strength scale: the breaking strength of the line as new, else whatever is known. */
export function strengthTop(line: AssessedLine): number | undefined {
  const known = [line.facts.breaking, line.facts.base].flatMap((v) => (isUnknown(v) ? [] : [v.amount.high]));
  return known.length === 0 ? undefined : Math.max(...known);
}

export const lineFigures = (line: AssessedLine): Figures => figuresOf([line.facts.length, ...[...line.pieces.values()].map((p) => p.length)], [line.facts.breaking]);

/** What a line is, in a few words: `12-strand HMPE, 10 mm`. */
export function lineWords({ facts }: AssessedLine): string {
  const strands = isUnknown(facts.strands) ? '' : `${show(facts.strands)}-strand `;
  return `${strands}${facts.material ?? 'material not known'}, ${isUnknown(facts.diameter) ? 'diameter not known' : show(facts.diameter)}`;
}

/** Strength of a piece with both its ends: an inboard eye may be what loads it, where a drum end is held by the kept wraps. */
export function weakestOf(piece: AssessedPiece): { readonly strength: Value; readonly at: string | undefined } {
  // What an entry that cannot be read says is not in the strength.
  if (piece.incomplete !== undefined) return { strength: unknown(piece.incomplete), at: undefined };
  const whole = { strength: piece.strength, at: piece.weakest?.name };
  if (piece.inboard.buried === undefined || isUnknown(piece.strength)) return whole;
  const inboard = piece.inboard.strength;
  return isUnknown(inboard) || inboard.amount.low < piece.strength.amount.low ? { strength: inboard, at: 'inboard end' } : whole;
}

/** The piece's length and strength in one sentence. */
export function pieceLead(piece: AssessedPiece, figures: Figures): string {
  const length = `${showLength(piece.length, figures)} long`;
  if (piece.retired !== undefined) return `${isUnknown(piece.length) ? 'Length not known' : length}; retired.`;
  const { strength: lowest, at } = weakestOf(piece);
  const strength = isUnknown(lowest) ? `breaking strength now ${showForce(lowest, figures)}` : `breaking strength now ${showForce(lowest, figures)}${at === undefined ? '' : `, lowest at the ${at}`}`;
  return `${isUnknown(piece.length) ? 'Length not known' : length}; ${strength}.`;
}

export function mapCauses(pieces: readonly AssessedPiece[]): Cause[] {
  return pieces.flatMap((p) => [
    ...causesOf(p.length, p.strength, p.line.base, p.line.diameter),
    ...(p.incomplete === undefined ? [] : [p.incomplete]),
    ...[p.outboard, ...p.joints].flatMap((e) => causesOf(e.strength, e.buried?.bury)),
    ...(p.inboard.buried === undefined ? [] : causesOf(p.inboard.strength, p.inboard.buried.bury)),
    ...p.damages.flatMap((d) => causesOf(d.strength)),
  ]);
}

export function mapLegend(found: ReadonlySet<Remedy>, marks: { readonly hasSplice: boolean; readonly hasTemporary: boolean; readonly hasUnknown: boolean; readonly hasRange: boolean }, ids: PictureIds): LegendEntry[] {
  const entries: LegendEntry[] = remedies.filter((r) => found.has(r)).map((r) => ({ symbol: remedyGlyph(r, 13, 8), says: remedyWords[r] }));
  if (marks.hasSplice) entries.push({ symbol: [path(polyline([[0, 1], [16, 1], [26, 4], [26, 12], [16, 15], [0, 15]], true), 'splice')], says: 'buried tail, thinning over its taper' });
  if (marks.hasTemporary) entries.push({ symbol: [path('M0 8H26', 's-limit')], says: 'temporary splice' });
  if (marks.hasUnknown) entries.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('unknown')), path('M0 0V16M26 0V16', 's-dots')], says: 'strength not known' });
  if (marks.hasRange) entries.push({ symbol: [filled(0, 0, 26, 16, ids.pattern('between')), rect(0, 0, 26, 16, 's-thin')], says: 'the end lies somewhere in here' });
  return entries;
}

const endRow = (piece: AssessedPiece, which: 'inboard' | 'outboard', figures: Figures): readonly string[] => {
  const end = piece[which];
  const station = which === 'inboard' ? 'end' : showLength(piece.length, figures);
  const needsStrength = which === 'outboard' || end.buried !== undefined;
  return [own(piece.name), `${which} end: ${ownInside(endWords(end))}`, station, needsStrength ? showForce(end.strength, figures) : 'held by the kept wraps', ''];
};

/** Everything that the map shows, in rows. */
export function mapTable(pieces: readonly AssessedPiece[], figures: Figures): PictureTable {
  const strengthThere = (value: Value): string => showForce(value, figures);
  return {
    head: ['piece', 'what', 'from inboard', 'breaking strength there', 'what to do'],
    rows: pieces.flatMap((piece) => [
      [own(piece.name), 'whole piece', showLength(piece.length, figures), strengthThere(weakestOf(piece).strength), piece.retired === undefined ? '' : 'retired'],
      endRow(piece, 'inboard', figures),
      ...piece.damages.map((d) => [own(piece.name), damageWords(d.fact), stationWords(d, figures), strengthThere(d.strength), `${remedyWords[d.remedy]}: ${d.because}`]),
      ...piece.joints.map((j) => [own(piece.name), ownInside(endName(piece, j)), '', strengthThere(j.strength), '']),
      endRow(piece, 'outboard', figures),
    ]),
  };
}

/** A line, or one piece of it, from drum to outer end: damage, splices, and the strength along it. */
export function lineMap(line: AssessedLine, pieceName?: string): Picture {
  const pieces = [...line.pieces.values()].filter((p) => pieceName === undefined || p.name === pieceName);
  const name = own(pieceName ?? line.facts.name);
  const title = `Line map of ${name}`;
  if (pieces.length === 0) return emptyPicture(title, `There is no piece ${name} on this day.`, []);
  const figures = lineFigures(line);
  const ids = new PictureIds();
  const scale = mapScale(pieces);
  const highest = strengthTop(line);
  const body: Part[] = [];
  const found = new Set<Remedy>();
  const marks = { hasSplice: false, hasTemporary: false, hasUnknown: false, hasRange: false };
  let y = 0;
  for (const piece of pieces) {
    if (pieces.length > 1) {
      body.push(text(margin, y + 14, `${own(piece.name)}: ${pieceLead(piece, figures)}`, 't-strong', { width: rightEdge - margin }));
      y += 30;
    }
    const drawing = drawPiece(piece, { ids, figures, left: mapLeft, scale, highest, profileHeight: 104 });
    body.push(group(0, y, drawing.parts));
    y += drawing.height + 14;
    for (const remedy of drawing.remedies) found.add(remedy);
    marks.hasSplice ||= drawing.hasSplice;
    marks.hasTemporary ||= drawing.hasSplice && [piece.inboard, piece.outboard, ...piece.joints].some((e) => e.facts.temporary);
    marks.hasUnknown ||= drawing.hasUnknown;
    marks.hasRange ||= drawing.hasRange;
  }
  const lost = pieces.reduce((sum, p) => sum + p.damages.filter((d) => d.from === undefined).length, 0);
  const notes = ['Strength is drawn at the careful end of what it may be. Stations count from the inboard end, the one at the drum.'];
  if (lost > 0) notes.unshift(`${lost === 1 ? '1 damage entry is' : `${lost} damage entries are`} not marked, because the place is not known; ${lost === 1 ? 'it lowers' : 'they lower'} the strength all along.`);
  const lead = pieces.length === 1 ? pieceLead(pieces[0]!, figures) : `${pieces.length} pieces.`;
  const damages = pieces.reduce((sum, p) => sum + p.damages.length, 0);
  return finish({
    ids, title, lead, more: `${lineWords(line)}. Breaking strength as new ${showForce(line.facts.breaking, figures)}. The drum is on the left.`,
    body, height: y, legend: mapLegend(found, marks, ids), causes: mapCauses(pieces), notes,
    description: `${lineWords(line)}. ${pieces.map((p) => `${own(p.name)}: ${pieceLead(p, figures)}`).join(' ')} ${damages === 0 ? 'No damage is entered.' : `${damages} damage ${damages === 1 ? 'entry' : 'entries'}: ${summary(pieces)}.`}`,
    table: mapTable(pieces, figures),
  });
}

/** How many entries ask for what. */
function summary(pieces: readonly AssessedPiece[]): string {
  const all = pieces.flatMap((p) => p.damages);
  return remedies.flatMap((r) => {
    const n = all.filter((d) => d.remedy === r).length;
    return n === 0 ? [] : [`${n} to ${remedyWords[r].replace('retire the line', 'retire the line for')}`];
  }).join(', ');
}

