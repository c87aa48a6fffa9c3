import type { AssessedPiece } from '../assess/assess-line.ts';
import type { AssessedEnd, BuriedEnd } from '../assess/splice-end.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';
import { taperSchedule } from '../mechanics/taper-schedule.ts';
import type { BoundStatement } from '../model/bound.ts';
import { figuresOf, showDerived, showLength, type Figures } from '../pictures/figures.ts';
import { heading, quiet, table, type PaperPart, type PaperText } from './document.ts';
import { tapePicture, type TapeMark } from './tape-picture.ts';

/** A splice of a repair, and the end that it makes where that can be worked out. */
export interface MarkedSplice {
  readonly statement: BoundStatement;
  /** As the card calls it: piece and end. */
  readonly called: PaperText;
  readonly piece: AssessedPiece | undefined;
  readonly end: AssessedEnd | undefined;
}

interface Marking {
  readonly called: string[];
  readonly rows: readonly (readonly [string, string, string])[];
  readonly marks: readonly TapeMark[];
  readonly strokes: readonly number[];
  readonly figures: Figures;
  readonly notes: readonly string[];
}

/** Where the pen goes, as a table and as a tape. Splices with the same marks share them. */
export function marksParts(splices: readonly MarkedSplice[]): PaperPart[] {
  const found = new Map<string, Marking>();
  for (const { called, piece, end } of splices) {
    if (piece === undefined || end?.buried === undefined) continue;
    const marking = markingOf(piece, end, end.buried);
    const key = JSON.stringify([marking.rows, marking.notes]);
    const same = found.get(key);
    if (same === undefined) found.set(key, { ...marking, called: [called] });
    else same.called.push(called);
  }
  return [...found.values()].flatMap(({ called, rows, marks, strokes, figures, notes }): PaperPart[] => [
    heading(`Marks from the cut end: ${called.join('; ')}`),
    ...(marks.length > 1 ? [{ part: 'picture', tableElsewhere: true, picture: tapePicture({ name: called.join(' '), title: `Marks from the cut end: ${called.join('; ').replaceAll('`', '')}`, marks, strokes, figures }) } satisfies PaperPart] : []),
    table(['mark', 'from the cut end', 'what it is for'], rows, { widths: [0.2, 0.2, 0.6] }),
    ...notes.map(quiet),
  ]);
}

function markingOf(piece: AssessedPiece, end: AssessedEnd, buried: BuriedEnd): Omit<Marking, 'called'> {
  const figures = figuresOf([buried.bury, buried.taper, piece.line.length, piece.line.diameter], []);
  const rows: [string, string, string][] = [];
  const marks: TapeMark[] = [];
  const strokes: number[] = [];
  const notes: string[] = [];
  const add = (name: string, at: Value, says: string): void => {
    rows.push([name, showLength(at, figures), isUnknown(at) ? `${says}; ${at.unknown.says}: ${at.unknown.help}` : says]);
    if (!isUnknown(at)) marks.push({ name, at: at.amount });
  };
  if (end.which === 'joint') {
    add('where the bury begins', buried.bury, 'on each of the two lines; the two marks meet in the middle');
    notes.push('For a join no entry and exit marks are worked out: they follow from the maker\'s instruction.');
  } else if (buried.marks === undefined) add('throat mark', buried.bury, 'the marks behind it cannot be worked out without it');
  const taper = (says: string): void => {
    const told = taperRows(piece, buried, figures, strokes, notes);
    rows.push(...told);
    if (told.length === 0) add('taper start', buried.taper, says);
    else if (!isUnknown(buried.taper)) marks.push({ name: 'taper start', at: buried.taper.amount });
  };
  for (const mark of buried.marks ?? []) {
    if (mark.name === 'taper start') taper(mark.meaning);
    else add(mark.name, mark.at, mark.meaning);
  }
  if (end.which === 'joint' && buried.taperWritten) taper('strands come out from here to the cut end');
  if (!buried.eyeLoopWritten && end.which !== 'joint') notes.push('The size of the eye is not written, so the marks behind the throat lie in a range: lay the line around the thimble, mark what it takes, and count on from there.');
  return { rows, marks, strokes, figures, notes };
}

/** Where strands come out, nearest the cut end first; nothing where that is not known. */
function taperRows(piece: AssessedPiece, buried: BuriedEnd, figures: Figures, strokes: number[], notes: string[]): [string, string, string][] {
  const schedule = taperSchedule(buried.taper, piece.line.strands);
  if (isUnknown(schedule)) {
    notes.push(`Which strands come out where is not known: ${schedule.unknown.says}; ${schedule.unknown.help}.`);
    return [];
  }
  for (const { at } of schedule) if (!isUnknown(at)) strokes.push(at.amount.low);
  return schedule.map((step): [string, string, string] => [step.step === 1 ? 'taper start' : `taper, step ${step.step}`, showDerived(step.at, { unit: figures.length }), `${step.says}; ${step.strandsLeft} are left`]).reverse();
}
