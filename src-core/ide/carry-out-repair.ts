import { isNear } from '../base/compare.ts';
import { scenarios } from '../assess/assess-line.ts';
import type { AssessedRepair } from '../assess/assessing.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import { nameOf, type BoundStatement } from '../model/bound.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { replayLogbook } from '../model/line-history.ts';
import { axisAt, finishedLength, type LineState } from '../model/line-state.ts';
import { Chunk } from '../syntax/chunk.ts';
import { formatChunk } from '../syntax/format.ts';
import { fromSI } from '../units/unit-table.ts';
import type { CodeAction, FileEdit } from './code-actions.ts';
import { fileSpanOf, type Viewing } from './viewing.ts';
import { lineBreakOf, linesOfBlock, statementsInto } from './written-lines.ts';

/**
 * Turns a repair into dated entries of its line's logbook. A repair measures every position on the line as it lay
 * before; an entry measures on the line as it is when it is made. The entries are therefore written from outboard
 * inward, positions from the far end are turned where a cut has moved it, and the result is offered only when a replay
 * of the new logbook leaves the very pieces that the plan promised.
 */
export function carryOutRepair(view: Viewing, repair: AssessedRepair): CodeAction | undefined {
  const { block } = repair;
  const line = repair.before.block;
  const entries = entriesFor(repair);
  if (entries === undefined || entries.length === 0) return undefined;
  const last = line.statements.at(-1);
  if (last === undefined) return undefined;
  const { text } = line.chunk;
  const lineBreak = lineBreakOf(text);
  const written = statementsInto(line, last.end, laidOut(entries.map((entry) => `${printDay(view.day)} ${entry}`)), lineBreak);
  if (written === undefined || !leavesTheSame(repair, written.reduceRight((t, e) => t.slice(0, e.start) + e.text + t.slice(e.end), text), line.name, view.day)) return undefined;
  const edits: FileEdit[] = [];
  for (const { text: added, ...span } of written) {
    const own = fileSpanOf(view, { chunk: line.chunk, ...span });
    if (own === undefined) return undefined;
    edits.push({ ...own, text: added });
  }
  const plan = fileSpanOf(view, block.place);
  if (plan === undefined) return undefined;
  edits.push({ ...plan, ...linesOfBlock(view.judged.files.get(plan.path)!.file.text, plan), text: '' });
  for (const chain of view.assessing.reader.blocks('chain')) {
    const after = chain.header.get('after:clause');
    if (after === undefined || nameOf(chain.header, 'repair')?.name !== block.name) continue;
    const span = fileSpanOf(view, after.place);
    if (span === undefined) continue;
    const before = view.judged.files.get(span.path)!.file.text.slice(0, span.start);
    edits.push({ ...span, start: before.trimEnd().length, text: '' });
  }
  return { title: `Write \`${repair.name}\` into the logbook of \`${line.name ?? 'line'}\` as done on ${printDay(view.day)}`, kind: 'rewrite', edits };
}

/** Entries as the formatter would write them. */
const laidOut = (entries: readonly string[]): string[] => formatChunk(new Chunk(`line {\n${entries.join('\n')}\n}\n`)).trimEnd().split('\n').slice(1, -1).map((row) => row.trim());

const wordsOf = (statement: BoundStatement, chunk: Chunk): string => chunk.text.slice(statement.place.start, statement.place.end);

function entriesFor(repair: AssessedRepair): string[] | undefined {
  const { block, before } = repair;
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
  const rest = block.statements.filter((s) => s.definition.head !== 'cut').map((s) => wordsOf(s, block.chunk));
  return [...cuts.map((c) => c.text), ...rest];
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
