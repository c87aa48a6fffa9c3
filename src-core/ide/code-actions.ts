import type { Span } from '../base/span.ts';
import type { Finding } from '../assess/finding.ts';
import { cutOutText } from '../assess/repair-text.ts';
import type { BoundBlock, TextEdit } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import type { Project, RigFile } from '../project.ts';
import { ruleNamed } from '../rules/all.ts';
import { whyItStays } from '../rules/why-it-stays.ts';
import type { Edit } from '../syntax/chunk.ts';
import type { Part, StatementDefinition } from '../vocabulary/shape.ts';
import { convertUnit } from './convert-unit.ts';
import { carryOutRepair } from './carry-out-repair.ts';
import { assessedOf, fileSpanOf, viewing, type FileSpan, type Viewing } from './viewing.ts';
import { blockBehind, indentAt, lineBreakOf, statementsInto } from './written-lines.ts';

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
  /** It changes every file that speaks of the same thing: those that nobody reads would be left behind. */
  readonly everywhere?: true;
  /** Why it cannot be done here; it has no edits then. */
  readonly disabled?: string;
}

const touches = (a: Span, b: Span): boolean => a.start <= b.end && b.start <= a.end;

/** What may be done about the findings in a stretch of a file. */
export function codeActions(project: Project, path: string, within: Span, day: DayNumber): CodeAction[] {
  const view = viewing(project, path, day);
  if (view === undefined) return [];
  const actions: CodeAction[] = [];
  /** Damage of one piece shares one plan, which is offered once. */
  const planned = new Set<string>();
  for (const finding of project.findings(path, day)) {
    const span = view.file.spanOf(finding.place);
    if (span === undefined || !touches(span, within)) continue;
    finding.fixes.forEach((fix, i) => {
      const edits = editsOf(view, fix.edits);
      if (edits !== undefined) actions.push({ title: fix.title, kind: 'fix', edits, finding, ...(i === 0 && finding.fixes.length === 1 ? { preferred: true as const } : {}) });
    });
    const cut = cutOut(view, finding, planned);
    if (cut !== undefined) actions.push(cut);
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

/** The repair in which a stretch begins. What may be done there concerns every rig that speaks of it. */
export function repairAt(file: RigFile, { start }: Span): BoundBlock | undefined {
  const here = file.chunkAt(start);
  return here === undefined ? undefined : file.bound.flatMap((c) => (c.chunk === here.chunk ? c.blocks : [])).find((b) => b.definition.head === 'repair' && b.place.start <= here.at && here.at <= b.place.end);
}

/** On a repair: the repair as entries of the logbook. */
function carriedOut(view: Viewing, within: Span): CodeAction | undefined {
  const block = repairAt(view.file, within);
  const repair = block === undefined ? undefined : assessedOf(view, block);
  return repair?.kind === 'repair' ? carryOutRepair(view, repair) : undefined;
}

function editsOf(view: Viewing, changes: readonly TextEdit[]): FileEdit[] | undefined {
  const edits: FileEdit[] = [];
  for (const { place, text } of changes) {
    const span = fileSpanOf(view, place);
    if (span === undefined) return undefined;
    edits.push({ ...span, text });
  }
  return edits;
}

/** A repair that cuts damage out. Planning it takes longer than judging, so it waits until somebody asks what may be done. */
function cutOut(view: Viewing, finding: Finding, planned: Set<string>): CodeAction | undefined {
  if (finding.code !== 'damage-left-in-service' && finding.code !== 'line-heated') return undefined;
  const block = blockOf(view, finding);
  const line = block === undefined ? undefined : assessedOf(view, block);
  if (block === undefined || line?.kind !== 'line') return undefined;
  const { chunk, start } = finding.place;
  const piece = [...line.pieces.values()].find((p) => !planned.has(p.name) && [...p.damages, ...p.heats].some(({ fact: { place } }) => place.chunk === chunk && place.start <= start && start < place.end));
  if (piece === undefined) return undefined;
  planned.add(piece.name);
  const [carrier] = view.assessing.reader.winchesCarrying(piece.name);
  const found = cutOutText(piece, view.assessing, { winch: carrier === undefined ? undefined : view.assessing.winch(carrier) });
  if (found === undefined) return undefined;
  const action = { title: 'Plan a repair that cuts the damage out', kind: 'fix', finding } as const;
  if (isUnknown(found)) return { ...action, edits: [], disabled: `${found.unknown.says}: ${found.unknown.help}` };
  const edit = blockBehind(block, found.text.trimEnd(), lineBreakOf(view.file.text));
  const edits = edit === undefined ? undefined : editsOf(view, [inChunk(block, edit)]);
  return edits === undefined ? { ...action, edits: [], disabled: `\`${block.name ?? 'line'}\` is not closed: add \`}\` where it ends` } : { ...action, edits };
}

const inChunk = ({ chunk }: BoundBlock, { text, ...span }: Edit): TextEdit => ({ place: { ...span, chunk }, text });

/** Every spelling that can be mended without a claim about strength, reach or rating, at once. */
export function fixAll(project: Project, path: string, day: DayNumber): CodeAction | undefined {
  const view = viewing(project, path, day);
  if (view === undefined) return undefined;
  const edits: FileEdit[] = [];
  for (const finding of project.findings(path, day)) {
    const fix = finding.fixes.find((f) => f.mechanical === true);
    const more = fix === undefined ? undefined : editsOf(view, fix.edits);
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
  const facts = block.statements.filter((s) => s.day === undefined && s.definition.head !== '');
  const column = Math.max(wanted.head.length + 2, ...facts.map((s) => valueColumn(block.chunk.text, s.place)));
  const written = statementsInto(block, facts.at(-1)?.end, [`${wanted.head.padEnd(column)}${toFillIn(wanted)}`], lineBreakOf(view.file.text));
  const edits = written === undefined ? undefined : editsOf(view, written.map((edit) => inChunk(block, edit)));
  return edits === undefined ? undefined : { title: `Add \`${wanted.head}\`, to be filled in`, kind: 'stub', edits, finding };
}

/** What a person has to find out before the stub says anything. */
function toFillIn({ foundOn, parts }: StatementDefinition): string {
  if (foundOn !== undefined) return `# to be read from ${foundOn}`;
  const says = (part: Part): string => {
    switch (part.part) {
      case 'name':
        return `the name of the ${part.of.join(' or the ')}`;
      case 'choice':
        return Object.keys(part.of).join(', ');
      case 'count':
        return 'a count';
      case 'quantity':
        return `a measured ${part.measure.kind}`;
      default:
        return 'a value';
    }
  };
  // Parts that may be left out stand for each other here: a level way or its angle, a vehicle or a weight.
  const first = parts.findIndex((part) => !('optional' in part && part.optional === true));
  const open = parts.slice(0, first < 0 ? parts.length : Math.max(1, first)).filter((p) => p.part === 'name' || p.part === 'choice' || p.part === 'count' || p.part === 'quantity');
  return `# to be filled in: ${(open.length === 0 ? parts.slice(0, 1) : open).map(says).join(', or ')}`;
}

/** How far from its head the first value of a statement stands. */
const valueColumn = (text: string, span: Span): number => /^\S+\s*/.exec(text.slice(span.start, span.end))?.[0].length ?? 0;

/** A comment that sets a finding aside; the reason is for a person to write, and without one the comment is itself a finding. */
function setAside(view: Viewing, finding: Finding, span: Span): CodeAction | undefined {
  const rule = ruleNamed(finding.code);
  if (rule === undefined || rule.on === 'text' || whyItStays(rule, finding.severity) !== undefined) return undefined;
  const { file } = view;
  const start = file.lines.lineStart(file.lines.lineColumn(span.start).line);
  return { title: `Set \`${finding.code}\` aside here, with a reason`, kind: 'set-aside', edits: [{ path: view.path, start, end: start, text: `${indentAt(file.text, start)}# allow ${finding.code}: ${lineBreakOf(file.text)}` }], finding };
}
