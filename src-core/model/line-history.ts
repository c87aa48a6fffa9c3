import { isAbove, isBelow } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { exactly } from '../units/amount.ts';
import { printAmount, type System } from '../units/print.ts';
import { unitNamed } from '../units/unit-table.ts';
import { countOf, hasFlag, nameOf, newNameOf, quantityOf, wordOf, type BoundBlock, type BoundEnd, type BoundStatement, type Problem } from './bound.ts';
import { printDay, type DayNumber } from './day.ts';
import { isHollowBraid, isWire } from './line-make.ts';
import { axisAt, bareEnd, endFacts, finishedLength, turned, type EndFacts, type LineState, type LogEntry, type Lost, type Mark, type PieceState, type PulledPiece, type Scenario } from './line-state.ts';
import { cutFromOutboard, cutPiece, drawnOut, dropsInboard, isBuried, joinPieces, markCutThrough, splicePiece } from './line-work.ts';

/** Two readings of one place by tape differ by so much (m): our own careful choice. */
const tapeError = 0.1;

/** Entries that say something about a piece's strength or length: one that cannot be applied leaves both in doubt. */
const tellsOfStrength: ReadonlySet<string> = new Set(['damage', 'cut', 'splice', 'join', 'reversed', 'pulled', 'heated', 'retired']);
/** Those of them that change a length as well. */
const changesLength: ReadonlySet<string> = new Set(['cut', 'splice', 'join']);

/** A point of a piece, as written from one of its ends. */
interface Point {
  /** On the axis (m); undefined when it cannot be worked out. */
  readonly s: number | undefined;
  /** How far beyond the end it would lie (m), when it does. */
  readonly beyond: number | undefined;
}

/** Replays a line's logbook and repairs. Pieces are values; the replay holds them by name. */
class Replay {
  readonly #line: BoundBlock;
  readonly #scenario: Scenario;
  readonly #diameter: number | undefined;
  readonly pieces: Map<string, PieceState>;
  readonly problems: Problem[] = [];
  readonly pulls: PulledPiece[] = [];
  readonly #own: string;
  /** Length as fitted (m), when it is written. */
  readonly #longest: number | undefined;
  /** Logs that only this replay has seen, each under itself. */
  readonly #growing = new WeakMap<readonly LogEntry[], LogEntry[]>();

  /** The units that the line is measured in. */
  get #system(): System {
    const isUs = (head: string): boolean => {
      const statement = this.#line.firsts.get(head);
      return statement !== undefined && quantityOf(statement.values, head)?.unit.system === 'us';
    };
    return isUs('length') || isUs('diameter') ? 'us' : 'metric';
  }

  constructor(line: BoundBlock, scenario: Scenario, before?: LineState) {
    this.#line = line;
    this.#scenario = scenario;
    this.#own = line.name ?? 'line';
    const fact = (head: string): BoundStatement | undefined => line.firsts.get(head);
    const diameter = fact('diameter');
    this.#diameter = diameter === undefined ? undefined : quantityOf(diameter.values, 'diameter')?.value;
    this.pieces = new Map(before?.pieces ?? []);
    this.pulls.push(...(before?.pulls ?? []));
    const length = fact('length');
    const axis = length === undefined ? undefined : quantityOf(length.values, 'length')?.value;
    this.#longest = axis;
    if (before !== undefined) return;
    const end = (head: string): EndFacts => {
      const statement = fact(head);
      return statement === undefined ? { ...bareEnd(line.headPlace, undefined, line.brokenHeads.has(head) ? 'unknown' : 'unstated'), supplied: true } : endFacts(statement.values, statement, { supplied: true, day: undefined });
    };
    this.pieces.set(this.#own, {
      name: this.#own,
      named: line.namePlace,
      axis,
      lost: axis === undefined ? { says: `length of \`${this.#own}\` is not given`, help: 'add `length`, measured end to end', place: length?.place ?? line.namePlace, reported: length !== undefined || line.brokenHeads.has('length') } : undefined,
      incomplete: undefined,
      buried: [],
      joints: [],
      marks: [],
      inboard: end('inboard'),
      outboard: end('outboard'),
      log: [],
      retired: undefined,
    });
  }

  state(): LineState {
    return { diameter: this.#diameter, pieces: this.pieces, pulls: this.pulls, problems: this.problems };
  }

  #metres(value: number): string {
    return printAmount(exactly(value), 'length', { system: this.#system, ...(this.#system === 'metric' ? { unit: unitNamed('m') } : {}) });
  }

  #problem(code: string, place: Place, message: string, help: string, related?: Problem['related']): void {
    this.problems.push({ code, place, message, help, ...(related ? { related } : {}) });
  }

  /** The piece an entry speaks of; undefined with a problem when there is none. */
  #piece({ values, broken, definition }: BoundStatement, key = 'piece'): PieceState | undefined {
    const named = nameOf(values, key);
    const piece = this.pieces.get(named?.name ?? this.#own);
    if (piece !== undefined) return piece;
    // What else is wrong with the entry says so, and its words may not be what they were taken for.
    if (named !== undefined && broken.size > 0) return undefined;
    const known = [...this.pieces.keys()].map((n) => `\`${n}\``).join(', ');
    const place = named?.place ?? this.#line.namePlace;
    const prose = named !== undefined && definition.parts.some((part) => part.part === 'text') ? ', or put prose into "..."' : '';
    this.#problem('unknown-piece', place, `\`${named?.name ?? this.#own}\` is not a piece of \`${this.#own}\` at this point`, (known === '' ? 'no piece is left' : this.pieces.size === 1 ? `the only piece is ${known}` : `the pieces are ${known}`) + prose);
    return undefined;
  }

  #point(piece: PieceState, at: BoundEnd): Point {
    const x = at.distance.value;
    const total = finishedLength(piece);
    if (total === undefined) {
      // Whatever a piece of unknown length measures, it is no longer than the line was.
      const longest = piece.noLongerThan ?? this.#longest;
      if (longest !== undefined && isAbove(x, longest)) return { s: undefined, beyond: x - longest };
      return { s: at.end === 'inboard' ? axisAt(piece, x) : undefined, beyond: undefined };
    }
    const fromInboard = at.end === 'inboard' ? x : total - x;
    if (isAbove(x, total)) return { s: undefined, beyond: x - total };
    return { s: axisAt(piece, Math.max(0, fromInboard)), beyond: undefined };
  }

  /** Reports a position beyond the end; true when it was. */
  #beyond(piece: PieceState, place: Place, ...points: readonly Point[]): boolean {
    const beyond = Math.max(...points.map((p) => p.beyond ?? 0));
    if (beyond <= 0) return false;
    const total = finishedLength(piece) ?? piece.noLongerThan ?? this.#longest!;
    this.#problem('position-beyond-end', place, `this position lies ${this.#metres(beyond)} beyond the end of \`${piece.name}\`, which is ${this.#metres(total)} long here`, 'measure again, or correct the end it is counted from');
    return true;
  }

  entry(statement: BoundStatement): void {
    const { definition } = statement;
    const day = statement.day!;
    const log: LogEntry = { day, statement };
    const piece = this.#piece(statement);
    if (piece === undefined) return this.#doubt(statement);
    if (definition.head !== 'retired') this.#afterRetired(piece, statement);
    const put = (next: PieceState): void => {
      this.pieces.set(next.name, next);
    };
    if (statement.broken.size > 0 && tellsOfStrength.has(definition.head)) {
      this.#doubt(statement, 'a logbook entry cannot be read');
      // What is retired stays retired, whatever is wrong with the words behind it.
      if (definition.head === 'retired' && !statement.broken.has('piece')) put({ ...this.pieces.get(piece.name)!, retired: log });
      return;
    }
    switch (definition.head) {
      case 'damage':
        return put(this.#damaged(piece, statement));
      case 'mended':
        return put({ ...this.#mended(piece, statement), log: this.#logged(piece, log) });
      case 'cut':
        return this.#cut(piece, statement, day);
      case 'splice':
        return this.#splice(piece, statement, day);
      case 'join':
        return this.#join(piece, statement, day);
      case 'reversed':
        return put({ ...turned(piece), log: this.#logged(piece, log) });
      case 'retired':
        return put({ ...piece, retired: log });
      case 'pulled':
        this.pulls.push({ statement, piece });
        return put({ ...piece, log: this.#logged(piece, log) });
      case 'heated':
        return put({ ...this.#damaged(piece, statement), log: this.#logged(piece, log) });
      default:
        return put({ ...piece, log: this.#logged(piece, log) });
    }
  }

  /** A long logbook grows in place: only this replay has seen the list. Pieces cut from each other part ways. */
  #logged(piece: PieceState, entry: LogEntry): readonly LogEntry[] {
    const own = this.#growing.get(piece.log) ?? [...piece.log];
    own.push(entry);
    this.#growing.set(own, own);
    return own;
  }

  /** An entry that cannot be applied may concern any of the pieces, where it does not name one of them. */
  #doubt(statement: BoundStatement, says = 'a logbook entry does not fit the line', pieces: Iterable<PieceState> = this.pieces.values()): void {
    const { head } = statement.definition;
    if (!tellsOfStrength.has(head)) return;
    const lost: Lost = { says, help: 'correct the entry', place: statement.place, reported: true };
    for (const p of pieces) this.pieces.set(p.name, { ...p, incomplete: p.incomplete ?? lost, ...(changesLength.has(head) ? { noLongerThan: finishedLength(p) ?? p.noLongerThan, axis: undefined, lost: p.lost ?? lost } : {}) });
  }

  #afterRetired({ name, retired }: PieceState, statement: BoundStatement): void {
    if (retired === undefined) return;
    const late = statement.day === undefined ? 'a repair does not bring it back' : 'this entry is later';
    const help = statement.day === undefined ? 'leave it out, or take another line' : 'correct the dates, or write a new line';
    this.#problem('entry-after-retired', statement.place, `\`${name}\` was retired on ${printDay(retired.day)}; ${late}`, help, [{ place: retired.statement.place, message: 'retired here' }]);
  }

  #damaged(own: PieceState, statement: BoundStatement): PieceState {
    let piece = own;
    const { values } = statement;
    const station = values.get('station');
    let from: number | undefined;
    let to: number | undefined;
    if (station?.type === 'station') {
      const a = this.#point(piece, station.from);
      const b = station.to === undefined ? a : this.#point(piece, station.to);
      // It is counted here, but may just as well be a slip for another place or another piece.
      if (this.#beyond(piece, station.place, a, b)) {
        this.#doubt(statement, undefined);
        piece = this.pieces.get(piece.name)!;
      }
      if (a.s !== undefined && b.s !== undefined) [from, to] = [Math.min(a.s, b.s), Math.max(a.s, b.s)];
    }
    const share = quantityOf(values, 'share');
    const fact = { statement, kind: statement.definition.head === 'heated' ? 'heated' : (wordOf(values, 'kind') ?? 'unknown'), strands: countOf(values, 'strands'), share, severity: wordOf(values, 'severity'), state: wordOf(values, 'state'), place: statement.place, day: statement.day! };
    return { ...piece, marks: [...piece.marks, { from, to, fact }] };
  }

  /** The piece without the damage that was put right there. */
  #mended(piece: PieceState, statement: BoundStatement): PieceState {
    const station = statement.values.get('station');
    const kind = wordOf(statement.values, 'kind');
    if (station?.type !== 'station') return piece;
    if (isWire(this.#line)) {
      this.#problem('mended-nothing', statement.place, `\`${piece.name}\` is wire, which is not mended: what was crushed or kinked stays weak`, 'remove the entry, and cut the place out');
      return piece;
    }
    const a = this.#point(piece, station.from);
    const b = station.to === undefined ? a : this.#point(piece, station.to);
    if (this.#beyond(piece, station.place, a, b) || a.s === undefined || b.s === undefined) return piece;
    const [from, to] = [Math.min(a.s, b.s) - tapeError, Math.max(a.s, b.s) + tapeError];
    const isMended = (m: Mark): boolean => m.fact.kind === kind && (kind !== 'glaze' || m.fact.state === 'soft') && m.from !== undefined && m.to !== undefined && from <= m.from && m.to <= to;
    const left = piece.marks.filter((m) => !isMended(m));
    if (left.length === piece.marks.length) {
      const what = kind === 'glaze' ? 'soft glaze' : kind === 'pulled' ? 'pulled strand' : 'flattened line';
      const longer = piece.marks.find((m) => m.fact.kind === kind && m.from !== undefined && m.to !== undefined && m.from < to && from < m.to);
      if (longer === undefined) this.#problem('mended-nothing', statement.place, `no ${what} is written at this place of \`${piece.name}\``, 'correct the position, which is measured on the line as it lies on that day, or remove the entry');
      else this.#problem('mended-nothing', statement.place, `the ${what} here goes on beyond the place that was mended on \`${piece.name}\``, 'write how far it was mended, `from` and `to`; what is mended in part counts as before', [{ place: longer.fact.place, message: 'how far it goes' }]);
    }
    return { ...piece, marks: left };
  }

  /** A cut at `s`; where that cannot be told, at a distance from the outboard end. */
  #cutAt(whole: PieceState, at: { readonly s: number } | { readonly fromOutboard: number }, statement: BoundStatement, day: DayNumber | undefined): void {
    this.#growing.delete(whole.log);
    const [s, fromOutboard] = 's' in at ? [at.s, undefined] : [undefined, at.fromOutboard];
    const piece = markCutThrough(whole, { s, fromOutboard }, statement.place, this.#diameter, this.#scenario);
    const { inboard, outboard } = s !== undefined ? cutPiece(piece, s, statement.place, day) : cutFromOutboard(piece, fromOutboard!, statement.place, day);
    const keep = newNameOf(statement.values, 'keep');
    const drops = dropsInboard(statement);
    this.pieces.set(piece.name, drops && keep === undefined ? outboard : inboard);
    if (keep === undefined) return;
    const namesake = this.pieces.get(keep.name);
    if (namesake !== undefined) {
      this.#problem('name-declared-twice', keep.place, `\`${keep.name}\` is a piece of \`${this.#own}\` already`, 'give the new piece a name of its own');
      // Which of the two is meant from here on, nobody can say.
      if (namesake.name !== piece.name) this.#doubt(statement, undefined, [namesake]);
      return;
    }
    this.pieces.set(keep.name, { ...outboard, name: keep.name, named: keep.place });
    // The outboard piece cannot have a name of its own and that of the line.
    if (drops) this.#doubt(statement, undefined, [piece.name, keep.name].map((name) => this.pieces.get(name)!));
  }

  #cut(piece: PieceState, statement: BoundStatement, day: DayNumber): void {
    const station = statement.values.get('station');
    if (station?.type !== 'station') return;
    const point = this.#point(piece, station.from);
    // It was cut somewhere all the same.
    if (this.#beyond(piece, station.place, point)) return this.#doubt(statement, undefined, [piece]);
    this.#cutAt(piece, point.s === undefined ? { fromOutboard: station.from.distance.value } : { s: point.s }, statement, day);
  }

  #splice(whole: PieceState, statement: BoundStatement, day: DayNumber | undefined): void {
    const which = wordOf(statement.values, 'end') === 'inboard' ? 'inboard' : 'outboard';
    const end = endFacts(statement.values, statement, { supplied: false, day });
    const piece = hasFlag(statement.values, 'remade') && isBuried(whole[which]) ? drawnOut(whole, which, statement.place, this.#diameter, this.#scenario) : whole;
    const before = piece[which];
    // A new splice on an end that already has one begins with cutting the old one off, which the logbook must say.
    if (isBuried(before)) {
      const old = before.form === 'eye' ? `eye ${before.supplied ? 'it came with' : 'spliced before'}` : `hook ${before.supplied ? 'it came with' : 'spliced on before'}`;
      this.#problem('end-not-cut', statement.place, `the ${which} end of \`${piece.name}\` is still the ${old}`, `write the \`cut\` that took the old ${before.form} off before this splice, or \`remade\` behind it where the old one was drawn out and nothing was cut off`, [{ place: before.place, message: `the ${before.form} before` }]);
    } else if (before.form === 'lug' && end.form !== 'lug') {
      this.#problem('end-not-cut', statement.place, `the ${which} end of \`${piece.name}\` still has its lug`, 'write the `cut` that took it off before this splice; after `reversed`, inboard is what was outboard', [{ place: before.place, message: 'the lug' }]);
    }
    if (!isHollowBraid(this.#line) && isBuried(end)) {
      // The tail of another line is not buried: what its splice takes nobody worked out.
      const open = splicePiece(piece, which, { ...end, bury: undefined }, this.#diameter, this.#scenario) ?? piece;
      this.pieces.set(piece.name, { ...open, [which]: end, axis: undefined, noLongerThan: finishedLength(piece) ?? piece.noLongerThan, lost: piece.lost ?? this.#takesUnknown(piece, statement) });
      return;
    }
    const done = splicePiece(piece, which, end, this.#diameter, this.#scenario);
    if (done === undefined) {
      this.#problem('splice-longer-than-piece', statement.place, `\`${piece.name}\` is ${this.#metres(finishedLength(piece)!)} long, too short for this splice`, 'join it to another piece, or retire it');
      this.pieces.set(piece.name, { ...piece, [which]: end, axis: undefined, lost: { says: `\`${piece.name}\` is too short for its splice`, help: 'join it to another piece, or retire it', place: statement.place, reported: true } });
      return;
    }
    this.pieces.set(piece.name, done);
  }

  #takesUnknown({ name }: PieceState, { place }: BoundStatement): Lost {
    return { says: `how much of \`${name}\` this splice takes is not known, for it is not hollow braid`, help: 'measure what is left, and write it as a `line` of its own with its length', place, reported: false };
  }

  #join(piece: PieceState, statement: BoundStatement, day: DayNumber | undefined): void {
    const other = this.#piece(statement, 'other');
    if (other === undefined) return this.#doubt(statement);
    if (other.name === piece.name) {
      this.#problem('joined-to-itself', statement.place, `\`${piece.name}\` cannot be joined to itself`, 'name the piece that is joined on');
      return this.#doubt(statement);
    }
    this.#afterRetired(other, statement);
    for (const [joined, which] of [[piece, 'outboard'], [other, 'inboard']] as const) {
      const before = joined[which];
      if (before.form === 'eye' || before.form === 'hook' || before.form === 'lug') {
        this.#problem('end-not-cut', statement.place, `the ${which} end of \`${joined.name}\` still has its ${before.form}, and a joint needs a cut end`, 'write the `cut` that took it off before the two were joined', [{ place: before.place, message: `its ${before.form}` }]);
      }
    }
    const end = { ...endFacts(statement.values, statement, { supplied: false, day }), form: 'end-to-end' };
    const odd = !isHollowBraid(this.#line);
    const joined = joinPieces(piece, other, odd ? { ...end, bury: undefined } : end, this.#diameter, this.#scenario);
    const done = joined === undefined || !odd ? joined : { ...joined, lost: piece.lost ?? other.lost ?? this.#takesUnknown(piece, statement) };
    if (done === undefined) {
      this.#problem('splice-longer-than-piece', statement.place, `\`${piece.name}\` or \`${other.name}\` is too short for this splice`, 'bury less only where the maker allows it, or retire the short piece');
      return this.#doubt(statement, undefined, [piece, other]);
    }
    this.pieces.delete(other.name);
    this.pieces.set(piece.name, done);
  }

  /** A plan: every position is measured on the line as it lies before the plan begins, in whatever order it is written. */
  plan(repair: BoundBlock): void {
    interface PlannedCut { readonly piece: string; readonly s: number; readonly statement: BoundStatement }
    const cuts: PlannedCut[] = [];
    const fromOutboard: PlannedCut[] = [];
    for (const statement of repair.statements) {
      if (statement.definition.head !== 'cut') continue;
      const piece = this.#piece(statement);
      const station = statement.values.get('station');
      if (piece === undefined || station?.type !== 'station' || statement.broken.size > 0) {
        this.#loseAll(statement);
        continue;
      }
      const point = this.#point(piece, station.from);
      if (this.#beyond(piece, station.place, point)) this.#doubt(statement, 'this step cannot be worked out', [piece]);
      else if (point.s === undefined) fromOutboard.push({ piece: piece.name, s: station.from.distance.value, statement });
      else cuts.push({ piece: piece.name, s: point.s, statement });
    }
    fromOutboard.sort((a, b) => a.s - b.s);
    const cutSoFar = new Map<string, number>();
    for (const { piece, s, statement } of fromOutboard) {
      const before = cutSoFar.get(piece) ?? 0;
      const dropping = fromOutboard.find((other) => other.piece === piece && isBelow(other.s, s) && dropsInboard(other.statement));
      if (dropping !== undefined) {
        this.#cutInDropped(statement, dropping.statement);
        continue;
      }
      // Which of two cuts lies farther out cannot be told when they are counted from different ends.
      if (cuts.some((cut) => cut.piece === piece) || !isAbove(s, before)) {
        this.#loseAll(statement);
        continue;
      }
      cutSoFar.set(piece, s);
      this.#cutAt(this.pieces.get(piece)!, { fromOutboard: s - before }, statement, undefined);
    }
    // From outboard inward: a cut leaves everything inboard of it where it was.
    cuts.sort((a, b) => b.s - a.s);
    cuts.forEach((cut, i) => {
      const twin = cuts.find((other, j) => j < i && other.piece === cut.piece && !isBelow(cut.s, other.s));
      if (twin !== undefined) {
        this.#problem('cut-twice', cut.statement.place, 'two cuts of this repair are at the same place', 'remove one of them', [{ place: twin.statement.place, message: 'the other cut' }]);
        return;
      }
      const dropping = cuts.find((other, j) => j < i && other.piece === cut.piece && dropsInboard(other.statement));
      if (dropping !== undefined) return this.#cutInDropped(cut.statement, dropping.statement);
      this.#cutAt(this.pieces.get(cut.piece)!, { s: cut.s }, cut.statement, undefined);
    });
    for (const statement of repair.statements) {
      const { head } = statement.definition;
      if (head === 'cut') continue;
      if (statement.broken.size > 0) {
        this.#loseAll(statement);
        continue;
      }
      const piece = this.#piece(statement);
      if (piece === undefined) {
        this.#loseAll(statement);
        continue;
      }
      if (head === 'join') this.#afterRetired(piece, statement);
      if (head === 'splice') this.#splice(piece, statement, undefined);
      else if (head === 'join') this.#join(piece, statement, undefined);
      else if (head === 'reversed') {
        const { outboard, ...rest } = turned(piece);
        // What nothing can be loaded by is outboard because of this step, wherever it was made.
        this.pieces.set(piece.name, { ...rest, outboard: isBuried(outboard) ? outboard : { ...outboard, place: statement.place } });
      }
    }
  }

  #cutInDropped(cut: BoundStatement, dropping: BoundStatement): void {
    this.#problem('cut-twice', cut.place, 'this cut is in line that another cut of this repair drops', 'remove one of them', [{ place: dropping.place, message: 'what lies inboard of this cut is dropped' }]);
    // What it keeps is spoken of elsewhere, and nobody can say what that is.
    this.#doubt(cut, 'this step cannot be worked out');
  }

  #loseAll(statement: BoundStatement): void {
    const lost: Lost = { says: 'this step cannot be worked out', help: 'correct the step', place: statement.place, reported: statement.broken.size > 0 || this.problems.some((p) => p.place.chunk === statement.place.chunk && statement.place.start <= p.place.start && p.place.end <= statement.place.end) };
    for (const p of this.pieces.values()) this.pieces.set(p.name, { ...p, axis: undefined, lost: p.lost ?? lost, incomplete: p.incomplete ?? lost });
  }
}

/** Entries after which a line may not be what it was: all that a replay does anything about, and the day from which a line ages. */
export const changesTheLine: ReadonlySet<string> = new Set(['fitted', 'damage', 'mended', 'cut', 'splice', 'join', 'reversed', 'pulled', 'heated', 'retired']);

/**
 * The line's pieces at the end of a day. Entries are taken by date, those of one day as written. With `before`, the
 * state at the end of an earlier day, only what came after that day is replayed.
 */
export function replayLogbook(line: BoundBlock, until: DayNumber, scenario: Scenario, before?: { readonly state: LineState; readonly day: DayNumber }): LineState {
  const replay = new Replay(line, scenario, before?.state);
  const entries = line.statements.filter((s) => s.day !== undefined && s.day <= until && (before === undefined || s.day > before.day));
  entries.sort((a, b) => a.day! - b.day!);
  for (const entry of entries) replay.entry(entry);
  if (line.brokenHeads.has('logbook')) {
    const lost: Lost = { says: 'a logbook entry cannot be read', help: 'correct the entry', place: line.namePlace, reported: true };
    for (const p of replay.pieces.values()) replay.pieces.set(p.name, { ...p, incomplete: p.incomplete ?? lost });
  }
  return replay.state();
}

/** What a repair would leave of the line. */
export function replayRepair(line: BoundBlock, before: LineState, repair: BoundBlock, scenario: Scenario): LineState {
  const replay = new Replay(line, scenario, before);
  replay.plan(repair);
  return replay.state();
}
