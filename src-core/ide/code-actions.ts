import type { Span } from '../base/span.ts';
import type { Finding } from '../assess/finding.ts';
import { cutOutFix } from '../assess/repair-text.ts';
import type { Fix } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Project } from '../project.ts';
import { ruleNamed } from '../rules/all.ts';
import type { BoundBlock } from '../model/bound.ts';
import { convertUnit } from './convert-unit.ts';
import { carryOutRepair } from './carry-out-repair.ts';
import { assessedOf, fileSpanOf, viewing, type FileSpan, type Viewing } from './viewing.ts';

export interface FileEdit extends FileSpan {
  readonly text: string;
}

export interface CodeAction {
  readonly title: string;
  /**
   * `set-aside` writes a reason beside a finding; `stub` writes a head whose value a person must look up; `rewrite`
   * says the same in another place.
   */
  readonly kind: 'fix' | 'stub' | 'set-aside' | 'fix-all' | 'rewrite';
  readonly edits: readonly FileEdit[];
  readonly finding?: Finding;
  /** The one that is most likely wanted. */
  readonly preferred?: true;
}

const touches = (a: Span, b: Span): boolean => a.start <= b.end && b.start <= a.end;

/** What may be done about the findings in a stretch of a file. */
export function codeActions(project: Project, path: string, within: Span, day: DayNumber): CodeAction[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const actions: CodeAction[] = [];
  const lineBreak = /\r\n|\n|\r/.exec(view.file.text)?.[0] ?? '\n';
  /** Damage of one piece shares one plan, which is offered once. */
  const planned = new Set<string>();
  for (const finding of project.findings(path, day)) {
    const span = view.file.spanOf(finding.place);
    if (span === undefined || !touches(span, within)) continue;
    finding.fixes.forEach((fix, i) => {
      const edits = editsOf(view, fix);
      if (edits !== undefined) actions.push({ title: fix.title, kind: 'fix', edits, finding, ...(i === 0 && finding.fixes.length === 1 ? { preferred: true as const } : {}) });
    });
    const cut = cutOut(view, finding, planned);
    const cutEdits = cut === undefined ? undefined : editsOf(view, cut);
    if (cutEdits !== undefined) actions.push({ title: cut!.title, kind: 'fix', edits: cutEdits.map((e) => ({ ...e, text: e.text.replaceAll('\n', lineBreak) })), finding });
    const stub = stubFor(view, finding);
    if (stub !== undefined) actions.push(stub);
    const aside = setAside(view, finding, span);
    if (aside !== undefined) actions.push(aside);
  }
  const done = carriedOut(view, within);
  if (done !== undefined) actions.push(done);
  actions.push(...convertUnit(view, within.start));
  return actions;
}

/** On a repair: the repair as entries of the logbook. */
function carriedOut(view: Viewing, within: Span): CodeAction | undefined {
  const here = view.file.chunkAt(within.start);
  const block = here === undefined ? undefined : view.file.bound.flatMap((c) => (c.chunk === here.chunk ? c.blocks : [])).find((b) => b.definition.head === 'repair' && b.place.start <= here.at && here.at <= b.place.end);
  const repair = block === undefined ? undefined : assessedOf(view, block);
  return repair?.kind === 'repair' ? carryOutRepair(view, repair) : undefined;
}

function editsOf(view: Viewing, fix: Fix): FileEdit[] | undefined {
  const edits: FileEdit[] = [];
  for (const { place, text } of fix.edits) {
    const span = fileSpanOf(view, place);
    if (span === undefined) return undefined;
    edits.push({ ...span, text });
  }
  return edits;
}

/** A repair that cuts damage out. Planning it takes longer than judging, so it waits until somebody asks what may be done. */
function cutOut(view: Viewing, finding: Finding, planned: Set<string>): Fix | undefined {
  if (finding.code !== 'damage-left-in-service') return undefined;
  const block = blockOf(view, finding);
  const line = block === undefined ? undefined : assessedOf(view, block);
  if (line?.kind !== 'line') return undefined;
  const { chunk, start } = finding.place;
  for (const piece of line.pieces.values()) {
    if (planned.has(piece.name) || !piece.damages.some(({ fact: { place } }) => place.chunk === chunk && place.start === start)) continue;
    planned.add(piece.name);
    const [carrier] = view.assessing.reader.winchesCarrying(piece.name);
    return cutOutFix(piece, view.assessing, { winch: carrier === undefined ? undefined : view.assessing.winch(carrier) })?.fix;
  }
  return undefined;
}

/** Every spelling that can be mended without a claim about strength, reach or rating, at once. */
export function fixAll(project: Project, path: string, day: DayNumber): CodeAction | undefined {
  const view = viewing(project, path, day);
  if (view === undefined) return undefined;
  const edits: FileEdit[] = [];
  for (const finding of project.findings(path, day)) {
    const fix = finding.fixes.find((f) => f.mechanical === true);
    const more = fix === undefined ? undefined : editsOf(view, fix);
    if (more === undefined || more.some((e) => e.path !== path || edits.some((other) => touches(other, e)))) continue;
    edits.push(...more);
  }
  return edits.length === 0 ? undefined : { title: 'Mend every spelling', kind: 'fix-all', edits };
}

const blockOf = (view: Viewing, finding: Finding): BoundBlock | undefined => {
  for (const chunk of view.file.bound) {
    if (chunk.chunk !== finding.place.chunk) continue;
    return chunk.blocks.find((b) => b.place.start <= finding.place.start && finding.place.end <= b.place.end);
  }
  return undefined;
};

/** Writes the head of a missing fact where it belongs. Its value stays open, because only the tag can say it. */
function stubFor(view: Viewing, finding: Finding): CodeAction | undefined {
  if (finding.code !== 'missing-fact') return undefined;
  const block = blockOf(view, finding);
  if (block === undefined) return undefined;
  const present = new Set(block.statements.map((s) => s.definition.head));
  const wanted = block.definition.statements.find((s) => !present.has(s.head) && finding.help.startsWith(`add \`${s.head}\``));
  if (wanted === undefined) return undefined;
  const { text } = view.file;
  const facts = block.statements.filter((s) => s.day === undefined);
  const after = facts.at(-1)?.place ?? block.headPlace;
  const span = view.file.spanOf(after)!;
  const lineEnd = /[\r\n]|$/.exec(text.slice(span.end))!.index + span.end;
  const lineBreak = /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';
  const column = facts.length === 0 ? wanted.head.length + 2 : Math.max(wanted.head.length + 2, ...facts.map((s) => valueColumn(text, view.file.spanOf(s.place)!)));
  const note = wanted.foundOn === undefined ? '# to be measured' : `# to be read from ${wanted.foundOn}`;
  return { title: `Add \`${wanted.head}\`, to be filled in`, kind: 'stub', edits: [{ path: view.path, start: lineEnd, end: lineEnd, text: `${lineBreak}  ${wanted.head.padEnd(column)}${note}` }], finding };
}

/** How far from its head the first value of a statement stands. */
const valueColumn = (text: string, span: Span): number => /^\S+\s*/.exec(text.slice(span.start, span.end))?.[0].length ?? 0;

/** A comment that sets a finding aside; the reason is for a person to write, and without one the comment is itself a finding. */
function setAside(view: Viewing, finding: Finding, span: Span): CodeAction | undefined {
  const rule = ruleNamed(finding.code);
  if (rule === undefined || rule.on === 'text' || rule.citesRating === true || finding.severity === 'error') return undefined;
  const { file } = view;
  const start = file.lines.lineStart(file.lines.lineColumn(span.start).line);
  const indent = /^[ \t]*/.exec(file.text.slice(start))![0];
  const lineBreak = /\r\n|\n|\r/.exec(file.text)?.[0] ?? '\n';
  return { title: `Set \`${finding.code}\` aside here, with a reason`, kind: 'set-aside', edits: [{ path: view.path, start, end: start, text: `${indent}# allow ${finding.code}: ${lineBreak}` }], finding };
}
