import { show, writtenSystem } from '../assess/show.ts';
import type { SheetRow, SheetSection } from '../assess/sheet-rows.ts';
import { isUnknown, restsOnAssumption, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { allSources, assumedValues, printDerivation } from '../mechanics/explain.ts';
import { printSource, type Source } from '../trade/source.ts';
import type { JudgedRoot } from '../project.ts';
import { blockSheet, counted, sayChecks, type BlockSheet, type CheckCounts } from './block-sheet.ts';
import { ownPractice } from './own-practice.ts';
import { deference } from './paper-subject.ts';
import { showOnSheet } from './show-row.ts';
import { wrapIndented, wrapText } from './wrap-text.ts';

export interface SheetTextOptions {
  /** The file, and the day it is judged on, for the first line. */
  readonly file: string;
  readonly day: string;
  readonly width?: number;
  /** Prints under each derived value how it came about. */
  readonly derivations?: boolean;
  /** Makes a heading stand out; plain unless given. */
  readonly strong?: (text: string) => string;
}

const labelWidth = 34;
const valueWidth = 18;
const gap = '  ';

/** The sheet of a file as text: what each block comes to, where each number comes from, and what is not known. */
export function sheetText(root: JudgedRoot | undefined, path: string, { file, day, width = 96, derivations = false, strong = (text) => text }: SheetTextOptions): string {
  const { blocks, findings } = root?.files.get(path) ?? { blocks: [], findings: [] };
  const lines = [strong(`Sheet of ${file}, judged as of ${day}`), ''];
  if (blocks.length === 0) lines.push('This file has no blocks.', '');
  const assumed = new Map<string, string>();
  const sources = new Map<string, Source>();
  for (const judged of blocks) {
    const sheet = blockSheet(judged);
    lines.push(strong(sheet.title), ...blockLines(sheet, new Footnotes(assumed, sources), width), ...(derivations ? derivationLines(sheet) : []), '');
  }
  if (findings.length > 0) {
    lines.push(strong('What is found'));
    for (const { severity, code, message } of findings) lines.push(...wrapIndented(`${severity}[${code}] ${message}`, width, gap, gap.repeat(3)));
    lines.push('');
  }
  if (assumed.size > 0) {
    lines.push(strong('Assumed'), ...wrapText('These values are not written in the file. Every value marked * is one of them or rests on one.', width - 2).map((line) => gap + line));
    for (const note of assumed.values()) lines.push(...wrapIndented(note, width, gap.repeat(2), gap.repeat(3)));
    lines.push('');
  }
  if (sources.size > 0) {
    lines.push(strong('Sources'));
    for (const source of sources.values()) lines.push(...wrapIndented(printSource(source), width, gap.repeat(2), gap.repeat(3)));
    lines.push('');
  }
  for (const sentence of [...(root === undefined ? [] : ownPractice({ root })), ...deference]) lines.push(...wrapText(sentence, width));
  lines.push('');
  return lines.join('\n');
}

/** What a block's rows refer to: causes below the block, assumed values at the end of the sheet. */
class Footnotes {
  readonly causes: Cause[] = [];
  readonly #assumed: Map<string, string>;

  readonly #sources: Map<string, Source>;

  constructor(assumed: Map<string, string>, sources: Map<string, Source>) {
    this.#assumed = assumed;
    this.#sources = sources;
  }

  /** Where the value comes from: in a word, or by the name of its calculation. */
  originOf(value: Value, label: string): string {
    if (isUnknown(value)) {
      let at = this.causes.findIndex((cause) => cause.key === value.unknown.key);
      if (at < 0) at = this.causes.push(value.unknown) - 1;
      return `see [${at + 1}]`;
    }
    this.#note(value, label);
    const { origin } = value;
    const name = origin.from === 'derived' ? origin.derivation.calculation : origin.from === 'constant' ? '' : origin.from;
    return restsOnAssumption(value) ? `${name} *` : name;
  }

  #note(value: Given, label: string): void {
    const { origin } = value;
    if (origin.from === 'assumed') this.#assume(show(value), label, printSource(origin.source), origin.means);
    else if (origin.from === 'derived') {
      for (const source of allSources(origin.derivation)) if (source.trust !== 'derived') this.#sources.set(source.key, source);
      for (const { input, source, means } of assumedValues(origin.derivation)) this.#assume(show(input.given), input.meaning, printSource(source), means);
    }
  }

  #assume(text: string, meaning: string, source: string, means: string): void {
    // One assumption may be called differently by each calculation that takes it in: it is told once.
    const key = `${text}\n${source}\n${means}`;
    if (!this.#assumed.has(key)) this.#assumed.set(key, `${meaning}, ${text}: ${source}; ${means}`);
  }
}

function blockLines(sheet: BlockSheet, notes: Footnotes, width: number): string[] {
  const lines: string[] = [];
  for (const section of sheet.sections) {
    if (section.title !== undefined || section.layout === 'table') lines.push('');
    if (section.title !== undefined) lines.push(`${gap}${section.title}`);
    lines.push(...(section.layout === 'table' ? tableLines(section, notes, width) : section.rows.flatMap((row) => rowLines(row, notes, width))));
  }
  lines.push('', ...wrapIndented(sayChecks(sheet.checks), width, gap, gap));
  for (const [mark, cause, checks] of waiting(notes.causes, sheet.checks)) {
    const wait = checks === 0 ? '' : `; ${counted(checks, 'check')} not judged`;
    lines.push(...wrapIndented(`${cause.says}${wait}; ${cause.help}`, width, gap + mark, gap.repeat(3)));
  }
  return lines;
}

/** What is not known, with the checks that wait for it: first what the rows refer to, then what no row shows. */
function waiting(causes: readonly Cause[], { notJudged }: CheckCounts): (readonly [mark: string, cause: Cause, checks: number])[] {
  const shown = causes.map((cause, i) => [`[${i + 1}] `, cause, notJudged.find((w) => w.cause.key === cause.key)?.checks ?? 0] as const);
  return [...shown, ...notJudged.filter((w) => !causes.some((cause) => cause.key === w.cause.key)).map((w) => ['', w.cause, w.checks] as const)];
}

/** Every derivation of a block, each under the id of its row. */
function derivationLines(sheet: BlockSheet): string[] {
  const lines: string[] = [];
  for (const { id, value } of sheet.sections.flatMap((section) => section.rows)) {
    if (value === undefined || isUnknown(value) || value.origin.from !== 'derived') continue;
    const { derivation } = value.origin;
    const [first, ...rest] = printDerivation(derivation, { system: writtenSystem(derivation) });
    lines.push('', `${gap}${id}: ${first}`, ...rest.map((line) => gap + line));
  }
  return lines;
}

function rowLines(row: SheetRow, notes: Footnotes, width: number): string[] {
  const indent = gap.repeat(2);
  const value = row.value === undefined ? '' : showOnSheet(row.value);
  const origin = row.value === undefined ? '' : notes.originOf(row.value, row.label);
  const behind = indent.length + labelWidth + gap.length;
  const beside = `${value.padEnd(valueWidth)}${gap}${origin}${row.says === undefined ? '' : `, ${row.says}`}`;
  const fits = row.value !== undefined && behind + beside.length <= width;
  const says = row.says === undefined || fits ? [] : wrapText(row.says, width - behind);
  const first = row.value === undefined ? (says.shift() ?? '') : fits ? beside : `${value.padEnd(valueWidth)}${gap}${origin}`;
  const pad = ' '.repeat(behind);
  const labels = wrapText(row.label, labelWidth);
  const head = labels.pop()!;
  return [...labels.map((l) => indent + l), `${indent}${head.padEnd(labelWidth)}${gap}${first}`.trimEnd(), ...says.map((line) => pad + line)];
}

/** Rows of one group make one line; a column for each label. */
function tableLines({ rows }: SheetSection, notes: Footnotes, width: number): string[] {
  const columns = [...new Set(rows.map((row) => row.label))];
  const groups = [...new Set(rows.map((row) => row.group ?? ''))];
  const cell = (group: string, label: string): { text: string; says: string | undefined } => {
    const row = rows.find((r) => (r.group ?? '') === group && r.label === label);
    if (row?.value === undefined) return { text: '', says: row?.says };
    const origin = notes.originOf(row.value, row.label);
    const mark = isUnknown(row.value) ? ` ${origin.replace('see ', '')}` : origin.endsWith('*') ? ' *' : '';
    return { text: showOnSheet(row.value) + mark, says: row.says };
  };
  const table = [['', ...columns], ...groups.map((group) => [group, ...columns.map((label) => cell(group, label).text)])];
  const widths = table[0]!.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
  const indent = gap.repeat(2);
  return table.flatMap((line, i) => {
    const text = indent + line.map((t, j) => t.padEnd(widths[j]!)).join('   ');
    const says = i === 0 ? undefined : columns.map((label) => cell(groups[i - 1]!, label).says).find((s) => s !== undefined);
    if (says === undefined) return [text.trimEnd()];
    const behind = text.length + 3;
    const narrow = width - behind < 24;
    const wrapped = wrapText(says, width - (narrow ? 8 : behind));
    return narrow ? [text.trimEnd(), ...wrapped.map((w) => ' '.repeat(8) + w)] : wrapped.map((w, k) => (k === 0 ? `${text}   ` : ' '.repeat(behind)) + w);
  });
}
