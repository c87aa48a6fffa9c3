import { notKnown, show } from '../assess/show.ts';
import type { SheetRow, SheetSection } from '../assess/sheet-rows.ts';
import { isUnknown, restsOnAssumption, type Cause, type Derivation, type Given } from '../mechanics/derivation.ts';
import { allSources, assumedValues } from '../mechanics/explain.ts';
import { lineMap } from '../pictures/line-map.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { printSource, type Source } from '../trade/source.ts';
import { blockSheet, sayChecks, type BlockSheet } from './block-sheet.ts';
import { heading, points, quiet, text, type PaperDocument, type PaperPart, type PaperText } from './document.ts';
import { ownPractice } from './own-practice.ts';
import { deference, findingParts, findingsOn, leftOut, type PaperSubject } from './paper-subject.ts';
import { showOnSheet } from './show-row.ts';

/** The build sheet: what is found first, then what every block comes to, what was assumed, and on whose word. */
export function sheetDocument(subject: PaperSubject): PaperDocument {
  const blocks = subject.root.files.get(subject.path)?.blocks ?? [];
  const notes = new Notes();
  const findings = findingsOn(subject, blocks.map((b) => b.block));
  const rest = leftOut(findings);
  const sheets = blocks.flatMap((judged): PaperPart[] => blockParts(judged, notes));
  return {
    title: `Build sheet: ${subject.file}`,
    subtitle: `Judged as of ${subject.day}. ${blocks.length} ${blocks.length === 1 ? 'block' : 'blocks'}.`,
    parts: [
      ...(blocks.length === 0 ? [text('This file has no blocks.')] : []),
      ...(findings.length === 0 ? [] : [heading('What is found'), ...findingParts(findings), ...(rest === undefined ? [] : [quiet(rest)])]),
      ...sheets,
      ...(notes.assumed.size === 0 ? [] : [heading('Assumed'), quiet('Not written in the file. Every value marked * is one of these, or rests on one.'), points([...notes.assumed.values()])]),
      ...(notes.sources.size === 0 ? [] : [heading('Sources'), points([...notes.sources.values()].map(printSource))]),
    ],
    foot: [...ownPractice(subject), ...deference],
  };
}

/** What the values of a sheet rest on, told once at its end. */
class Notes {
  readonly assumed = new Map<string, PaperText>();
  readonly sources = new Map<string, Source>();

  take(value: Given, label: string): void {
    const { origin } = value;
    if (origin.from === 'assumed') this.#assume(value, label, origin.source, origin.means);
    else if (origin.from === 'derived') this.#derived(origin.derivation);
  }

  #derived(derivation: Derivation): void {
    for (const { input, source, means } of assumedValues(derivation)) this.#assume(input.given, input.meaning, source, means);
    for (const source of allSources(derivation)) if (source.trust !== 'derived') this.sources.set(source.key, source);
  }

  #assume(value: Given, label: string, source: Source, means: string): void {
    const key = `${show(value)}\n${source.key}\n${means}`;
    if (!this.assumed.has(key)) this.assumed.set(key, `${label}, ${show(value)}: ${printSource(source)}; ${means}`);
  }
}

function blockParts(judged: JudgedBlock, notes: Notes): PaperPart[] {
  const sheet = blockSheet(judged);
  const causes: Cause[] = [];
  const parts: PaperPart[] = [heading(sheet.title)];
  if (judged.assessed.kind === 'line') parts.push({ part: 'picture', picture: lineMap(judged.assessed), share: 0.75, tableElsewhere: true });
  for (const section of sheet.sections) parts.push(...sectionParts(section, causes, notes));
  parts.push(quiet(`${sayChecks(sheet.checks)}.`), ...causeParts(causes, sheet));
  return parts;
}

/** What is not known, with the checks that wait for it. */
function causeParts(causes: readonly Cause[], { checks }: BlockSheet): PaperPart[] {
  const others = checks.notJudged.map((w) => w.cause).filter((cause) => !causes.some((c) => c.key === cause.key));
  const say = (cause: Cause, mark: string): string => {
    const waiting = checks.notJudged.find((w) => w.cause.key === cause.key)?.checks ?? 0;
    return `${mark}${cause.says}${waiting === 0 ? '' : `; ${waiting} not judged`}; ${cause.help}`;
  };
  const items = [...causes.map((cause, i) => say(cause, `(${i + 1}) `)), ...others.map((cause) => say(cause, ''))];
  return items.length === 0 ? [] : [points(items)];
}

function valueText(row: SheetRow, causes: Cause[], notes: Notes): string {
  const { value } = row;
  if (value === undefined) return '';
  if (isUnknown(value)) {
    let at = causes.findIndex((c) => c.key === value.unknown.key);
    if (at < 0) at = causes.push(value.unknown) - 1;
    return `${notKnown(value)} (${at + 1})`;
  }
  notes.take(value, row.label);
  return `${showOnSheet(value)}${restsOnAssumption(value) ? ' *' : ''}`;
}

const from = ({ value }: SheetRow): string => {
  if (value === undefined || isUnknown(value)) return '';
  return value.origin.from === 'derived' ? value.origin.derivation.calculation : value.origin.from === 'constant' ? '' : value.origin.from;
};

function sectionParts(section: SheetSection, causes: Cause[], notes: Notes): PaperPart[] {
  const { rows } = section;
  const title: PaperPart[] = section.title === undefined ? [] : [{ part: 'text', says: section.title, strong: true }];
  if (section.layout === 'list') {
    const cells = rows.map((row): [label: string, value: string, from: string] => [row.label, row.value === undefined ? (row.says ?? '') : `${valueText(row, causes, notes)}${row.says === undefined ? '' : `; ${row.says}`}`, from(row)]);
    const brief = cells.every((c) => c[1].length < 24);
    return [...title, { part: 'table', head: ['', '', ''], rows: cells, ...(brief ? { folded: true, widths: [0.44, 0.26, 0.3] } : { widths: [0.3, 0.5, 0.2] }) }];
  }
  const columns = [...new Set(rows.map((row) => row.label))];
  const groups = [...new Set(rows.map((row) => row.group ?? ''))];
  const find = (group: string, label: string): SheetRow | undefined => rows.find((r) => (r.group ?? '') === group && r.label === label);
  const says = (group: string): string => columns.map((label) => find(group, label)?.says).find((s) => s !== undefined) ?? '';
  const wordy = groups.some((group) => says(group) !== '');
  const cell = (group: string, label: string): string => {
    const row = find(group, label);
    return row === undefined ? '' : valueText(row, causes, notes);
  };
  return [...title, { part: 'table', head: ['', ...columns, ...(wordy ? [''] : [])], rows: groups.map((group) => [group, ...columns.map((label) => cell(group, label)), ...(wordy ? [says(group)] : [])]) }];
}
