import { isNear } from '../base/compare.ts';
import type { Severity } from '../assess/finding.ts';
import { missingFact } from '../rules/missing-fact-rule.ts';
import { isUnknown, restsOnAssumption, writtenPlaces, type Value } from '../mechanics/derivation.ts';
import { isAskedFor } from '../model/scope.ts';
import { dimensions, kinds } from '../units/dimension.ts';
import type { ComparedBlock, ComparedEntry, ComparedFile, ComparedRow, ComparedSide } from './compared-side.ts';
import { diffLines } from './diff-lines.ts';
import type { IdentifiedFinding } from './finding-identity.ts';
import type { NumberJson } from './sheet-json.ts';
import { showOnSheet } from './show-row.ts';

/** A line of text that made a difference. */
export interface ChangedLine {
  readonly side: 'old' | 'new';
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** A value as it stands on one side. */
export interface SideValue {
  /** As the sheet shows it; `not known` where it is not. */
  readonly display: string;
  readonly value: NumberJson | null;
  readonly unit: string | null;
  readonly assumed: boolean;
  /** Why it is not known. */
  readonly cause?: string;
}

export interface ChangedValue {
  readonly id: string;
  readonly name: string;
  /** Undefined where the side has no such value. */
  readonly old: SideValue | undefined;
  readonly new: SideValue | undefined;
  /** Lines that fed it and that only one side has. */
  readonly because: readonly ChangedLine[];
  /** Of use to a program, and said to people by something else: a mark along a splice, or what the changed line says itself. */
  readonly detail?: true;
}

export interface ComparedFinding {
  /** `aside` of one that a comment sets aside and did not before. */
  readonly change: 'new' | 'gone' | 'changed' | 'aside';
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  /** What was said before, of one that changed. */
  readonly before?: string;
  /** Why it was set aside. */
  readonly reason?: string;
  readonly file: string;
  readonly line: number;
}

/** An entry of a logbook that is no longer there as it was: what a line has been through does not change. */
export interface LostEntry {
  readonly text: string;
  /** Where it stood. */
  readonly file: string;
  readonly line: number;
  /** What stands there instead. */
  readonly now?: string;
}

export interface BlockChange {
  /** Undefined for what stands outside of every block. */
  readonly block: string | undefined;
  readonly file: string;
  readonly change: 'new' | 'gone' | 'changed';
  readonly lines: readonly ChangedLine[];
  readonly values: readonly ChangedValue[];
  readonly findings: readonly ComparedFinding[];
  readonly lostEntries: readonly LostEntry[];
}

export interface Comparison {
  readonly version: 1;
  readonly old: string;
  readonly new: string;
  readonly day: string;
  readonly blocks: readonly BlockChange[];
}

/** What became of a rig: by block, which lines changed, which values with them, and what is found now and was not before. */
export function compareSides(old: ComparedSide, now: ComparedSide, day: string): Comparison {
  const keys = [...new Set([...now.files, ...old.files].map((f) => f.key))];
  const calledBy = ({ was, is }: Pair): string => (is ?? was)!.called;
  const pairs = keys.map((key): Pair => ({ was: old.files.find((f) => f.key === key), is: now.files.find((f) => f.key === key) })).sort((a, b) => (calledBy(a) < calledBy(b) ? -1 : 1));
  const changed = new Changes(old, now, pairs);
  return { version: 1, old: old.name, new: now.name, day, blocks: pairs.flatMap(({ was, is }) => changed.ofFile(was, is)) };
}

interface Pair {
  readonly was: ComparedFile | undefined;
  readonly is: ComparedFile | undefined;
}

const mostReasons = 6;

const linesLeft = (file: ComparedFile | undefined): Set<number> => new Set(file?.lines.map((_, i) => i + 1));

/** The lines of a block among those that are left, which are then no longer left. */
function take(left: Set<number>, { lines: { first, last } }: ComparedBlock): number[] {
  const taken: number[] = [];
  for (let line = first; line <= last; line++) if (left.delete(line)) taken.push(line);
  return taken;
}

class Changes {
  readonly #old: ComparedSide;
  readonly #now: ComparedSide;
  /** Lines that only one side has, by side, file and number. */
  readonly #lines = new Map<string, ChangedLine>();
  readonly #byFile = new Map<ComparedFile, ChangedLine[]>();
  /** Where a line stands among those that changed. */
  readonly #order = new Map<ChangedLine, number>();

  /** A block is compared with itself, wherever it stands; what is left of both texts, with what is left. */
  constructor(old: ComparedSide, now: ComparedSide, pairs: readonly Pair[]) {
    this.#old = old;
    this.#now = now;
    for (const { was, is } of pairs) {
      for (const file of [was, is]) if (file !== undefined) this.#byFile.set(file, []);
      const [leftWas, leftIs] = [linesLeft(was), linesLeft(is)];
      for (const block of is?.blocks ?? []) {
        const before = was?.blocks.find((b) => b.key === block.key);
        if (before !== undefined) this.#compare(was, take(leftWas, before), is, take(leftIs, block));
      }
      this.#compare(was, [...leftWas], is, [...leftIs]);
    }
  }

  #compare(was: ComparedFile | undefined, before: readonly number[], is: ComparedFile | undefined, after: readonly number[]): void {
    const textOf = (file: ComparedFile | undefined, lines: readonly number[]): string[] => lines.map((line) => file!.lines[line - 1]!);
    for (const { side, line: nth, text } of diffLines(textOf(was, before), textOf(is, after))) {
      const file = (side === 'old' ? was : is)!;
      const line = (side === 'old' ? before : after)[nth - 1]!;
      const changed: ChangedLine = { side, file: file.called, line, text };
      this.#byFile.get(file)!.push(changed);
      this.#lines.set(`${side} ${file.called} ${line}`, changed);
      this.#order.set(changed, this.#order.size);
    }
  }

  #within(file: ComparedFile | undefined, test: (line: number) => boolean): ChangedLine[] {
    return file === undefined ? [] : (this.#byFile.get(file) ?? []).filter((c) => test(c.line));
  }

  ofFile(was: ComparedFile | undefined, is: ComparedFile | undefined): BlockChange[] {
    const keys = [...new Set([...(is?.blocks ?? []), ...(was?.blocks ?? [])].map((b) => b.key))];
    const blocks = keys.map((key) => this.#ofBlock(was?.blocks.find((b) => b.key === key), is?.blocks.find((b) => b.key === key)));
    const outside = (file: ComparedFile | undefined): ChangedLine[] => this.#within(file, (line) => !file!.blocks.some((b) => b.lines.first <= line && line <= b.lines.last)).filter((l) => l.text.trim() !== '');
    const lines = this.#inOrder([...outside(was), ...outside(is)]);
    const findings = this.#findings(was?.loose ?? [], is?.loose ?? []);
    const loose: BlockChange[] = lines.length === 0 && findings.length === 0 ? [] : [{ block: undefined, file: (is ?? was)!.called, change: was === undefined ? 'new' : is === undefined ? 'gone' : 'changed', lines, values: [], findings, lostEntries: [] }];
    return [...loose, ...blocks.filter((b) => b.lines.length > 0 || b.values.length > 0 || b.findings.length > 0 || b.lostEntries.length > 0)];
  }

  #ofBlock(was: ComparedBlock | undefined, is: ComparedBlock | undefined): BlockChange {
    const one = (is ?? was)!;
    const linesOf = (block: ComparedBlock | undefined): ChangedLine[] => (block === undefined ? [] : this.#within(block.file, (line) => block.lines.first <= line && line <= block.lines.last));
    const lines = this.#inOrder([...linesOf(was), ...linesOf(is)]);
    const values: ChangedValue[] = [];
    for (const id of new Set([...(is?.rows ?? []), ...(was?.rows ?? [])].map((r) => r.id))) {
      const [a, b] = [was?.rows.find((r) => r.id === id), is?.rows.find((r) => r.id === id)];
      if (a?.row.value === undefined && b?.row.value === undefined && !wordsDiffer(a, b)) continue;
      if (a !== undefined && b !== undefined && isSame(a, b)) continue;
      // Of a block that came or went, every value did: the lines say so already.
      if (was === undefined || is === undefined) continue;
      values.push({ id, name: (b ?? a)!.name, old: sideValue(a), new: sideValue(b), because: this.#because(a, b, lines, is), ...(isDetail(a) && isDetail(b) ? { detail: true } : {}) });
    }
    return { block: one.title, file: one.file.called, change: was === undefined ? 'new' : is === undefined ? 'gone' : 'changed', lines, values, findings: this.#withAside(this.#findings(was?.findings ?? [], is?.findings ?? []), was, is), lostEntries: is === undefined ? [] : lostEntries(was, is) };
  }

  /** Changed lines that fed a value; else those of its block; else those of the blocks that its block looked at. */
  #because(a: ComparedRow | undefined, b: ComparedRow | undefined, own: readonly ChangedLine[], block: ComparedBlock): ChangedLine[] {
    const fed = [...this.#fedBy('old', a, this.#old), ...this.#fedBy('new', b, this.#now)];
    if (fed.length > 0) return this.#inOrder(fed).slice(0, mostReasons);
    if (own.length > 0) return own.slice(0, mostReasons);
    const looked = [...this.#old.files, ...this.#now.files].flatMap((file) => file.blocks.filter((other) => asksFor(block, other)).flatMap((other) => this.#within(file, (line) => other.lines.first <= line && line <= other.lines.last)));
    return looked.slice(0, mostReasons);
  }

  #fedBy(side: 'old' | 'new', row: ComparedRow | undefined, of: ComparedSide): ChangedLine[] {
    const value = row?.row.value;
    const places = value === undefined ? [] : isUnknown(value) ? [value.unknown.place] : writtenPlaces(value);
    const found = new Set<ChangedLine>();
    for (const place of [...places, row?.row.place]) {
      const at = place === undefined ? undefined : of.locate(place);
      const line = at === undefined ? undefined : this.#lines.get(`${side} ${at.file} ${at.line}`);
      if (line !== undefined) found.add(line);
    }
    return [...found];
  }

  #inOrder(lines: readonly ChangedLine[]): ChangedLine[] {
    return [...lines].sort((a, b) => this.#order.get(a)! - this.#order.get(b)!);
  }

  /** With what a comment sets aside now: that is no mend. */
  #withAside(findings: readonly ComparedFinding[], was: ComparedBlock | undefined, is: ComparedBlock | undefined): ComparedFinding[] {
    const left = [...findings];
    const before = new Set(was?.aside.map((a) => `${a.code} ${a.says}`));
    for (const { code, severity, says, reason } of is?.aside ?? []) {
      if (before.has(`${code} ${says}`)) continue;
      const gone = left.findIndex((f) => f.change === 'gone' && f.code === code && (f.message === says || code === missingFact.name));
      const [one] = gone < 0 ? [] : left.splice(gone, 1);
      left.push({ change: 'aside', code, severity, message: one?.message ?? says, reason, file: is!.file.called, line: one?.line ?? is!.lines.first });
    }
    return left;
  }

  #findings(was: readonly IdentifiedFinding[], is: readonly IdentifiedFinding[]): ComparedFinding[] {
    const told = ({ finding }: IdentifiedFinding, change: ComparedFinding['change'], side: ComparedSide, before?: string): ComparedFinding => {
      const at = side.locate(finding.place);
      return { change, code: finding.code, severity: finding.severity, message: finding.message, ...(before === undefined ? {} : { before }), file: at?.file ?? '', line: at?.line ?? 0 };
    };
    const left = new Map(was.map((f) => [f.identity, f]));
    const out: ComparedFinding[] = [];
    const fresh: IdentifiedFinding[] = [];
    for (const f of is) {
      const before = left.get(f.identity);
      if (before === undefined) fresh.push(f);
      else {
        left.delete(f.identity);
        if (before.finding.message !== f.finding.message || before.finding.severity !== f.finding.severity) out.push(told(f, 'changed', this.#now, before.finding.message));
      }
    }
    // A statement that was rewritten and still breaks the same rule is one finding that changed, not two.
    for (const f of fresh) {
      const twin = [...left.values()].find((g) => g.finding.code === f.finding.code);
      if (twin !== undefined) left.delete(twin.identity);
      if (twin === undefined) out.push(told(f, 'new', this.#now));
      else if (twin.finding.message !== f.finding.message) out.push(told(f, 'changed', this.#now, twin.finding.message));
    }
    return [...out, ...[...left.values()].map((f) => told(f, 'gone', this.#old))];
  }
}

/** No news to somebody who reads the changed lines. */
const isDetail = (row: ComparedRow | undefined): boolean => row === undefined || row.isMark || (row.row.value !== undefined && !isUnknown(row.row.value) && row.row.value.origin.from === 'written');

const wordsDiffer = (a: ComparedRow | undefined, b: ComparedRow | undefined): boolean => (a?.row.says ?? '') !== (b?.row.says ?? '');

function isSame(a: ComparedRow, b: ComparedRow): boolean {
  const [x, y] = [a.row.value, b.row.value];
  if (x === undefined || y === undefined) return x === y && !wordsDiffer(a, b);
  if (isUnknown(x) || isUnknown(y)) return isUnknown(x) && isUnknown(y) && x.unknown.says === y.unknown.says && showOnSheet(x) === showOnSheet(y);
  return sameSize(x, y) || showOnSheet(x) === showOnSheet(y);
}

const sameSize = (x: Exclude<Value, { unknown: object }>, y: Exclude<Value, { unknown: object }>): boolean => x.kind === y.kind && isNear(x.amount.low, y.amount.low) && isNear(x.amount.high, y.amount.high);

function sideValue(row: ComparedRow | undefined): SideValue | undefined {
  if (row === undefined) return undefined;
  const { value, says } = row.row;
  if (value === undefined) return { display: says ?? '', value: null, unit: null, assumed: false };
  if (isUnknown(value)) return { display: showOnSheet(value), value: null, unit: null, assumed: false, cause: value.unknown.says };
  const { low, high } = value.amount;
  return { display: showOnSheet(value), value: low === high ? low : { low, high }, unit: dimensions[kinds[value.kind].dimension].si, assumed: restsOnAssumption(value) };
}

/** What the logbook said and no longer says so. An entry of the same words on another day came in its place, or one of the same day that begins alike. */
function lostEntries(was: ComparedBlock | undefined, is: ComparedBlock): LostEntry[] {
  const fresh = [...is.entries];
  const take = (test: (entry: ComparedEntry) => boolean): ComparedEntry | undefined => {
    const at = fresh.findIndex(test);
    return at < 0 ? undefined : fresh.splice(at, 1)[0];
  };
  const words = ({ text }: ComparedEntry): string => text.replace(/^\S+ /, '');
  // The date, what it is, and of damage its kind.
  const begins = ({ text, head }: ComparedEntry): string => text.split(' ').slice(0, head === 'damage' ? 3 : 2).join(' ');
  const lost = (was?.entries ?? []).filter((old) => take(({ text }) => text === old.text) === undefined);
  return lost.map((old): LostEntry => {
    const now = take((entry) => words(entry) === words(old)) ?? take((entry) => begins(entry) === begins(old));
    return { text: old.text, file: was!.file.called, line: old.line, ...(now === undefined ? {} : { now: now.text }) };
  });
}

/** Whether a block was judged with an eye on another. */
const asksFor = (block: ComparedBlock, other: ComparedBlock): boolean => isAskedFor(other.judged.block, block.judged.asked);

/** New findings of a comparison at a severity or above; an entry that is lost weighs as much as a warning. */
export const findsMore = ({ blocks }: Comparison, severities: readonly Severity[]): boolean => blocks.some((b) => b.findings.some((f) => f.change === 'new' && severities.includes(f.severity)) || (b.lostEntries.length > 0 && severities.includes('warning')));
