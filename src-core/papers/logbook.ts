import { assessLine, type AssessedLine, type AssessedPiece } from '../assess/assess-line.ts';
import { agesOutdoors } from '../assess/line-facts.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown, type Value } from '../mechanics/derivation.ts';
import { textOf, type BoundStatement } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { changesTheLine } from '../model/line-history.ts';
import { lineMap, lineWords, weakestOf } from '../pictures/line-map.ts';
import { cleanText } from './clean-text.ts';
import { heading, quiet, quoted, table, text, type PaperDocument, type PaperPart } from './document.ts';
import { statementText } from './finding-identity.ts';
import type { Locate, Location } from './locate.ts';
import { deference, type PaperSubject } from './paper-subject.ts';
import type { NumberJson } from './sheet-json.ts';

interface LoggedValue {
  readonly display: string;
  readonly value: NumberJson | null;
  readonly cause?: string;
}

export interface LoggedPiece {
  readonly name: string;
  readonly length: LoggedValue & { readonly unit: 'm' };
  readonly strength: LoggedValue & { readonly unit: 'N' };
  readonly weakest?: string;
  readonly retired?: true;
}

export interface LoggedEntry {
  readonly day: string;
  readonly at?: Location;
  /** As it is written, without its date and its note. */
  readonly says: string;
  readonly note?: string;
  /** What is left of the line when the entry has been made. */
  readonly pieces: readonly LoggedPiece[];
}

/** What `linewright logbook LINE FILE --format json` prints. */
export interface LogbookJson {
  readonly version: 1;
  readonly line: string;
  readonly file: string;
  readonly day: string;
  readonly entries: readonly LoggedEntry[];
  /** Entries dated after the day. */
  readonly later: number;
}

/** A line's life: every entry up to the day, with length and strength when it had been made. */
export function logbook({ file, day, root }: PaperSubject, line: AssessedLine, locate: Locate): LogbookJson {
  const dated = line.block.statements.filter((s) => s.day !== undefined);
  const entries = dated.filter((s) => s.day! <= root.day).map((s, i) => ({ s, i })).sort((a, b) => a.s.day! - b.s.day! || a.i - b.i).map(({ s }) => s);
  const facts = line.block.statements.filter((s) => s.day === undefined);
  const ages = agesOutdoors(line.block);
  let state: AssessedLine | undefined;
  const logged = entries.map((entry, i): LoggedEntry => {
    if (state === undefined || ages || changesTheLine.has(entry.definition.head) || entry.broken.size > 0) state = assessLine({ ...line.block, statements: [...facts, ...entries.slice(0, i + 1)] }, line.facts.practice, entry.day!);
    const at = locate(entry.place);
    const note = textOf(entry.values, 'note');
    return { day: printDay(entry.day!), ...(at === undefined ? {} : { at }), says: wordsOf(entry), ...(note === undefined ? {} : { note }), pieces: [...state.pieces.values()].map(pieceOf) };
  });
  return { version: 1, line: line.facts.name, file, day, entries: logged, later: dated.length - entries.length };
}

/** The entry without what has a place of its own. */
function wordsOf(entry: BoundStatement): string {
  const note = textOf(entry.values, 'note');
  const words = statementText(entry.place).replace(/^\d{4}-\d{2}-\d{2}\s+/, '');
  return note === undefined ? words : words.slice(0, Math.max(0, words.lastIndexOf('"', words.length - 2))).trim();
}

const logged = (value: Value): LoggedValue => {
  if (isUnknown(value)) return { display: showValue(value), value: null, cause: value.unknown.says };
  const { low, high } = value.amount;
  return { display: showValue(value), value: low === high ? low : { low, high } };
};

function pieceOf(piece: AssessedPiece): LoggedPiece {
  const { strength, at } = weakestOf(piece);
  return { name: piece.name, length: { ...logged(piece.length), unit: 'm' }, strength: { ...logged(strength), unit: 'N' }, ...(at === undefined ? {} : { weakest: at }), ...(piece.retired === undefined ? {} : { retired: true }) };
}

/** Shares of the width from any numbers. */
function shares(numbers: readonly string[]): number[] {
  const sum = numbers.reduce((n, s) => n + Number(s), 0);
  return numbers.map((s) => Number(s) / sum);
}

/** The same to read and to print, with the line as it is on the day. */
export function logbookDocument(subject: PaperSubject, line: AssessedLine, locate: Locate): PaperDocument {
  const { entries, later } = logbook(subject, line, locate);
  let before = '';
  const rows = entries.flatMap(({ day, says, note, pieces }) =>
    pieces.map((piece, i) => {
      const strength = piece.retired === true ? 'retired' : `${piece.strength.display}${piece.weakest === undefined ? '' : `, at ${piece.weakest}`}`;
      const own = `${piece.name} ${piece.length.display} ${strength}`;
      const first = i === 0 ? [day, `${cleanText(says)}${note === undefined ? '' : ` ${quoted(note)}`}`] : ['', ''];
      const told = [...first, pieces.length === 1 ? '' : `\`${piece.name}\``, piece.length.display, strength, own === before ? '' : (piece.strength.cause ?? piece.length.cause ?? '')];
      before = own;
      return told;
    }),
  );
  const several = entries.some((e) => e.pieces.length > 1);
  const whys = rows.some((r) => r[5] !== '');
  const keep = (row: readonly string[]): string[] => row.filter((_, i) => (i !== 2 || several) && (i !== 5 || whys));
  const parts: PaperPart[] = [{ part: 'picture', picture: lineMap(line), tableElsewhere: true }];
  parts.push(heading('Entry by entry'));
  parts.push(rows.length === 0 ? text('No entry is dated up to this day.') : table(keep(['day', 'entry', 'piece', 'length then', 'breaking strength then', 'why not known']), rows.map(keep), { widths: shares(keep(['13', '35', '9', '15', '24', '22'])) }));
  if (later > 0) parts.push(quiet(`${later === 1 ? '1 entry is' : `${later} entries are`} dated after this day and not counted.`));
  return { title: `Logbook of \`${line.facts.name}\``, subtitle: `${lineWords(line)}. ${subject.file}, up to ${subject.day}`, parts, foot: deference };
}
