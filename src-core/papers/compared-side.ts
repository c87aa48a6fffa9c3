import type { SheetRow } from '../assess/sheet-rows.ts';
import type { Place } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project, RigFile } from '../project.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { blockSheet } from './block-sheet.ts';
import { blockTitle, identified, statementText, type IdentifiedFinding } from './finding-identity.ts';
import { locateIn, type Locate } from './locate.ts';
import { setAsideOn, type SetAside } from './paper-subject.ts';

export interface ComparedRow {
  readonly id: string;
  /** Told in full: `outboard end of main, breaking strength there`. */
  readonly name: string;
  /** A mark along a splice: one of many numbers that follow from its bury. */
  readonly isMark: boolean;
  readonly row: SheetRow;
}

/** A dated entry of a logbook. */
export interface ComparedEntry {
  readonly head: string;
  /** Its words one space apart. */
  readonly text: string;
  readonly line: number;
}

export interface ComparedBlock {
  /** The same on both sides for what is compared. */
  readonly key: string;
  readonly title: string;
  readonly file: ComparedFile;
  /** Lines that it takes, counted from 1. */
  readonly lines: { readonly first: number; readonly last: number };
  readonly judged: JudgedBlock;
  readonly rows: readonly ComparedRow[];
  readonly findings: readonly IdentifiedFinding[];
  readonly entries: readonly ComparedEntry[];
  readonly aside: readonly SetAside[];
}

export interface ComparedFile {
  /** Path that the two sides share. */
  readonly key: string;
  readonly called: string;
  readonly lines: readonly string[];
  readonly blocks: readonly ComparedBlock[];
  /** Findings that stand outside of every block. */
  readonly loose: readonly IdentifiedFinding[];
}

/** One of two states of a rig: every block with its values and findings. */
export interface ComparedSide {
  readonly name: string;
  readonly files: readonly ComparedFile[];
  readonly locate: Locate;
}

export interface SideOptions {
  readonly name: string;
  readonly day: DayNumber;
  /** Path that the two sides share, from a path in the project. */
  keyOf(path: string): string;
  called(path: string): string;
}

export function comparedSide(project: Project, { name, day, keyOf, called }: SideOptions): ComparedSide {
  const paths = [...project.paths].sort();
  const files = paths.map((path) => project.file(path)!);
  const locate = locateIn(files, called);
  return {
    name,
    locate,
    files: files.map((file) => {
      const found = identified(file, project.findings(file.path, day));
      // A file that several roots take in is shown as the first of them judges it.
      const root = project.rootsOf(file.path)[0] ?? file.path;
      const state = project.judge(root, day);
      const judged = state.files.get(file.path)?.blocks ?? [];
      const made: { called: string; key: string; lines: string[]; blocks: ComparedBlock[]; loose: IdentifiedFinding[] } = { key: keyOf(file.path), called: called(file.path), lines: linesOf(file.text), blocks: [], loose: found.filter((f) => f.block === undefined) };
      const seen = new Map<string, number>();
      for (const one of judged) {
        const title = blockTitle(one.block);
        const n = (seen.get(title) ?? 0) + 1;
        seen.set(title, n);
        made.blocks.push({ key: n === 1 ? title : `${title} (${n})`, title, file: made, lines: lineSpan(file, one.block.place), judged: one, rows: rowsOf(one), findings: found.filter((f) => f.block === one.block), entries: entriesOf(file, one.block), aside: setAsideOn({ root: state }, [one.block]) });
      }
      return made;
    }),
  };
}

export const linesOf = (text: string): string[] => {
  const lines = text.split(/\r\n|\r|\n/);
  if (lines.at(-1) === '') lines.pop();
  return lines;
};

function lineSpan(file: RigFile, place: Place): ComparedBlock['lines'] {
  const span = file.spanOf(place)!;
  return { first: file.lines.lineColumn(span.start).line + 1, last: file.lines.lineColumn(Math.max(span.start, span.end - 1)).line + 1 };
}

const entriesOf = (file: RigFile, { statements }: BoundBlock): ComparedEntry[] => statements.flatMap((s) => (s.day === undefined ? [] : [{ head: s.definition.head, text: statementText(s.place), line: lineSpan(file, s.place).first }]));

function rowsOf(judged: JudgedBlock): ComparedRow[] {
  return blockSheet(judged).sections.flatMap(({ title, layout, rows }) => {
    // A row that goes on from the one above it is told with what that one is of.
    let above = '';
    return rows.map((row): ComparedRow => {
      if (!row.label.startsWith('…')) above = row.label.replace(/, (?:at|from)$/, '');
      const label = row.label.startsWith('…') ? `${above}, ${row.label.replace(/^…\s*/, '')}` : row.label;
      return { id: row.id, isMark: layout === 'table' && title === undefined, name: [title, row.group, label].filter((t) => t !== undefined).join(', '), row };
    });
  });
}
