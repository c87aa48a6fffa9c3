import { isNear } from '../base/compare.ts';
import { scenarios } from '../assess/assess-line.ts';
import type { AssessedRepair } from '../assess/assessing.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import { nameOf, textOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { replayLogbook } from '../model/line-history.ts';
import { axisAt, finishedLength, type LineState } from '../model/line-state.ts';
import { Chunk } from '../syntax/chunk.ts';
import { formatChunk } from '../syntax/format.ts';
import { lexemesOf } from '../syntax/lexemes.ts';
import { fromSI } from '../units/unit-table.ts';
import type { CodeAction, FileEdit } from './code-actions.ts';
import { mentionsOf } from './references.ts';
import { fileSpanOf, type FileSpan, type Viewing } from './viewing.ts';
import { lineBreakOf, linesOfBlock, statementsInto } from './written-lines.ts';

/**
 * Turns a repair into dated entries of its line's logbook. A repair measures every position on the line as it lay
 * before; an entry measures on the line as it is when it is made. The entries are therefore written from outboard
 * inward, positions from the far end are turned where a cut has moved it, and the result is offered only when a replay
 * of the new logbook leaves the very pieces that the plan promised. What was written about the plan and its steps goes
 * along with them.
 */
export function carryOutRepair(view: Viewing, repair: AssessedRepair): CodeAction | undefined {
  const { block } = repair;
  const line = repair.before.block;
  const whole = fileSpanOf(view, block.place);
  const declared = view.assessing.reader.declarations(repair.name).find((d) => d.block === block);
  if (whole === undefined || declared === undefined) return undefined;
  const plan: FileSpan = { path: whole.path, ...linesOfBlock(view.root.files.get(whole.path)!.file.text, whole) };
  const entries = entriesFor(repair, `${printDay(view.day)} `, plan.start - whole.start + block.place.start, plan.end - whole.start + block.place.start);
  if (entries === undefined) return undefined;
  // What the logbook says of later days stays behind it.
  const later = line.statements.findIndex(({ day }) => day !== undefined && view.day < day);
  const last = line.statements.at(later < 0 ? line.statements.length - 1 : later - 1);
  if (last === undefined || later === 0) return undefined;
  const { text } = line.chunk;
  const lineBreak = lineBreakOf(text);
  const written = statementsInto(line, last.end, laidOut(entries), lineBreak);
  if (written === undefined || !leavesTheSame(repair, written.reduceRight((t, e) => t.slice(0, e.start) + e.text + t.slice(e.end), text), line.name, view.day)) return undefined;
  const edits: FileEdit[] = [];
  for (const { text: added, ...span } of written) {
    const own = fileSpanOf(view, { chunk: line.chunk, ...span });
    if (own === undefined) return undefined;
    edits.push({ ...own, text: added });
  }
  edits.push({ ...plan, text: '' });
  // Every root that sees the plan may speak of it.
  for (const { path, start, end, declares } of mentionsOf(view.project, { view, declared }, view.day)) {
    if (declares) continue;
    const clause = /\s+after\s+$/.exec(view.project.file(path)!.text.slice(0, start));
    if (clause === null) return undefined;
    edits.push({ path, start: clause.index, end, text: '' });
  }
  return { title: `Write \`${repair.name}\` into the logbook of \`${line.name ?? 'line'}\` as done on ${printDay(view.day)}`, kind: 'rewrite', edits, everywhere: true };
}

/** Entries as the formatter would write them. */
const laidOut = (entries: readonly string[]): string[] => formatChunk(new Chunk(`line {\n${entries.join('\n')}\n}\n`)).trimEnd().split('\n').slice(1, -1).map((row) => row.trim());

const wordsOf = (statement: BoundStatement, chunk: Chunk): string => chunk.text.slice(statement.place.start, statement.place.end);

interface Remarks {
  /** Of the repair as a whole. */
  readonly whole: string[];
  readonly above: Map<BoundStatement, string[]>;
  readonly beside: Map<BoundStatement, string>;
  /** Behind the last step. */
  readonly below: string[];
}

/** What is written about a repair and its steps, in a stretch of its chunk: its label, and comments. */
function remarksOn(block: BoundBlock, from: number, to: number): Remarks {
  const { text } = block.chunk;
  const label = textOf(block.header, 'label');
  const remarks: Remarks = { whole: [], above: new Map(), beside: new Map(), below: [] };
  for (const { kind, start, text: comment } of lexemesOf(text)) {
    if (kind !== 'comment' || start < from || to <= start) continue;
    const own = block.statements.find((s) => s.place.start < start && !/[\r\n]/.test(text.slice(s.place.start, start)));
    const next = block.statements.find((s) => start < s.place.start);
    if (own !== undefined) remarks.beside.set(own, comment);
    else if (start < block.headPlace.end || block.place.end <= start || !/[\r\n]/.test(text.slice(block.headPlace.end, start))) remarks.whole.push(comment);
    else if (next !== undefined) remarks.above.set(next, [...(remarks.above.get(next) ?? []), comment]);
    else remarks.below.push(comment);
  }
  if (label !== undefined) remarks.whole.push(`# ${label}`);
  return remarks;
}

/** The steps as entries of a day, with what is written about them; undefined where they cannot be told. */
function entriesFor(repair: AssessedRepair, dated: string, from: number, to: number): string[] | undefined {
  const { block, before } = repair;
  const remarks = remarksOn(block, from, to);
  // A reason to leave a finding of the plan as it is says nothing of the entries.
  if (remarks.whole.some((comment) => /^#\s*allow\b/.test(comment))) return undefined;
  const rows = (statement: BoundStatement, text: string): string[] => {
    const beside = remarks.beside.get(statement);
    return [...(remarks.above.get(statement) ?? []), `${dated}${text}${beside === undefined ? '' : `  ${beside}`}`];
  };
  const own = before.block.name ?? 'line';
  interface Cut { readonly s: number; readonly statement: BoundStatement; readonly piece: string; readonly text: string }
  const cuts: Cut[] = [];
  for (const statement of block.statements) {
    if (statement.broken.size > 0) return undefined;
    if (statement.definition.head !== 'cut') continue;
    const station = statement.values.get('station');
    const piece = nameOf(statement.values, 'piece')?.name ?? own;
    if (station?.type !== 'station') return undefined;
    const points = [before.long, before.short].map((state) => pointOf(state, piece, station.from.distance.value, station.from.end));
    if (points.some((p) => p === undefined)) return undefined;
    const [long, short] = points as [Point, Point];
    let text = wordsOf(statement, block.chunk);
    if (station.from.end === 'outboard') {
      if (!isNear(long.fromInboard, short.fromInboard)) return undefined;
      const { unit } = station.from.distance;
      const number = Number(fromSI(long.fromInboard, unit).toFixed(4));
      const { start, end } = station.place;
      text = `${block.chunk.text.slice(statement.place.start, start)}at ${number} ${unit.symbol} from inboard${block.chunk.text.slice(end, statement.place.end)}`;
    }
    cuts.push({ s: long.s, statement, piece, text });
  }
  cuts.sort((a, b) => b.s - a.s);
  const rest = block.statements.filter((s) => s.definition.head !== 'cut');
  if (block.statements.length === 0) return undefined;
  return [...remarks.whole, ...cuts.flatMap((c) => rows(c.statement, c.text)), ...rest.flatMap((s) => rows(s, wordsOf(s, block.chunk))), ...remarks.below];
}

interface Point {
  readonly s: number;
  readonly fromInboard: number;
}

function pointOf(state: LineState, name: string, distance: number, end: 'inboard' | 'outboard'): Point | undefined {
  const piece = state.pieces.get(name);
  const total = piece === undefined ? undefined : finishedLength(piece);
  if (piece === undefined || total === undefined || total < distance) return undefined;
  const fromInboard = end === 'inboard' ? distance : total - distance;
  return { s: axisAt(piece, fromInboard), fromInboard };
}

/** True when the logbook of the new text leaves the pieces of the plan: names, lengths and damage. */
function leavesTheSame(repair: AssessedRepair, text: string, name: string | undefined, day: DayNumber): boolean {
  const block = bindChunk(new Chunk(text)).blocks.find((b) => b.name === name);
  if (block === undefined) return false;
  const { long, short } = scenarios(repair.before.facts.practice);
  const same = (planned: LineState, done: LineState): boolean =>
    done.problems.length === repair.before.problems.length &&
    planned.pieces.size === done.pieces.size &&
    [...planned.pieces].every(([key, piece]) => {
      const other = done.pieces.get(key);
      if (other === undefined || piece.marks.length !== other.marks.length) return false;
      const [a, b] = [finishedLength(piece), finishedLength(other)];
      return a !== undefined && b !== undefined && Math.abs(a - b) < 1e-3;
    });
  const { after } = repair;
  return same(after.long, replayLogbook(block, day, long)) && same(after.short, replayLogbook(block, day, short));
}
