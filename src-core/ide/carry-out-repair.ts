import { isNear } from '../base/compare.ts';
import { scenarios } from '../assess/assess-line.ts';
import type { AssessedRepair } from '../assess/assessing.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import { nameOf, type BoundStatement } from '../model/bound.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { replayLogbook } from '../model/line-history.ts';
import { axisAt, finishedLength, type LineState } from '../model/line-state.ts';
import { Chunk } from '../syntax/chunk.ts';
import { fromSI } from '../units/unit-table.ts';
import type { CodeAction, FileEdit } from './code-actions.ts';
import { fileSpanOf, type Viewing } from './viewing.ts';

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
  const text = line.chunk.text;
  const lineBreak = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  const at = lineEnd(text, last.place.end);
  const indent = /[^\S\r\n]*$/.exec(text.slice(0, last.place.start))![0] || '  ';
  const added = entries.map((entry) => `${lineBreak}${indent}${printDay(view.day)}  ${entry}`).join('');
  if (!leavesTheSame(repair, text.slice(0, at) + added + text.slice(at), line.name, view.day)) return undefined;
  const edits: FileEdit[] = [];
  const own = fileSpanOf(view, { chunk: line.chunk, start: at, end: at });
  const plan = fileSpanOf(view, block.place);
  if (own === undefined || plan === undefined) return undefined;
  edits.push({ ...own, text: added });
  const planFile = view.judged.files.get(plan.path)!.file;
  edits.push({ ...plan, start: withComments(planFile.text, plan.start), end: Math.min(planFile.text.length, lineEnd(planFile.text, plan.end) + lineBreak.length), text: '' });
  for (const chain of view.assessing.reader.blocks('chain')) {
    const after = chain.header.get('after:clause');
    if (after === undefined || nameOf(chain.header, 'repair')?.name !== block.name) continue;
    const span = fileSpanOf(view, after.place);
    if (span !== undefined) edits.push({ ...span, start: span.start - 1, text: '' });
  }
  return { title: `Write \`${repair.name}\` into the logbook of \`${line.name ?? 'line'}\` as done on ${printDay(view.day)}`, kind: 'rewrite', edits };
}

const lineEnd = (text: string, from: number): number => from + /[^\r\n]*/.exec(text.slice(from))![0].length;

/** The comments right above a block speak of it and go with it. */
function withComments(text: string, start: number): number {
  const above = /(?:^|\n)((?:[^\S\r\n]*#[^\r\n]*(?:\r\n|\n|\r))+)$/.exec(text.slice(0, start));
  return above === null ? start : start - above[1]!.length;
}

const wordsOf = (statement: BoundStatement, chunk: object): string => (chunk as Chunk).text.slice(statement.place.start, statement.place.end).replace(/\s+/g, ' ');

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
      const whole = wordsOfPlace(station.place, block.chunk);
      text = text.replace(whole, `at ${number} ${unit.symbol} from inboard`);
    }
    cuts.push({ s: long.s, statement, piece, text });
  }
  cuts.sort((a, b) => b.s - a.s);
  const rest = block.statements.filter((s) => s.definition.head !== 'cut').map((s) => wordsOf(s, block.chunk));
  return [...cuts.map((c) => c.text), ...rest];
}

const wordsOfPlace = (place: { readonly start: number; readonly end: number }, chunk: object): string => (chunk as Chunk).text.slice(place.start, place.end).replace(/\s+/g, ' ');

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
