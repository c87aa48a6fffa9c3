import { codeActions, fixAll } from '../../src-core/ide/code-actions.ts';
import { completionsAt } from '../../src-core/ide/completion.ts';
import { definitionAt } from '../../src-core/ide/definition.ts';
import { documentLinks } from '../../src-core/ide/document-links.ts';
import { documentSymbols } from '../../src-core/ide/document-symbols.ts';
import { foldingRanges } from '../../src-core/ide/folding-ranges.ts';
import { formattingEdits } from '../../src-core/ide/formatting.ts';
import { hoverAt } from '../../src-core/ide/hover.ts';
import { inlayHints } from '../../src-core/ide/inlay-hints.ts';
import { loadedBy, loadedThingAt, loads } from '../../src-core/ide/load-path.ts';
import { highlightsAt, referencesAt } from '../../src-core/ide/references.ts';
import { renameAt, renameStart } from '../../src-core/ide/rename.ts';
import { selectionRanges } from '../../src-core/ide/selection-ranges.ts';
import { semanticTokens } from '../../src-core/ide/semantic-tokens.ts';
import { signatureAt } from '../../src-core/ide/signature-help.ts';
import { workspaceSymbols } from '../../src-core/ide/workspace-symbols.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Project, type RigFile } from '../../src-core/project.ts';
import { formatFile } from '../../src-core/syntax/format.ts';
import type { Statement } from '../../src-core/syntax/tree.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { picturesOf } from '../pictures/pictures-of.ts';

const day = readDay('2026-06-22')!;
export const fuzzPath = 'x.rig';

/** A project of one file, the files it uses missing. */
export function fuzzProject(text: string): Project {
  const project = new Project();
  project.set(fuzzPath, text);
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  return project;
}

/** Reads, binds and judges; gives what stands outside of where it belongs. Throws what the program throws. */
export function judgeFuzz(project: Project): string[] {
  const file = project.file(fuzzPath)!;
  const wrong = outOfChunks(file);
  for (const finding of project.findings(fuzzPath, day)) {
    const spans = [finding.place, ...finding.related.map((r) => r.place), ...finding.fixes.flatMap((fix) => fix.edits.map((e) => e.place))];
    for (const place of spans) {
      const span = file.spanOf(place);
      if (span === undefined || span.start < 0 || span.end < span.start || file.length < span.end) wrong.push(`${finding.code} speaks of ${JSON.stringify(span)} in a text of ${file.length}`);
    }
    if (finding.message === '' || /undefined|NaN|\[object/.test(finding.message + finding.help)) {
      // A name of the text may read like that; nothing else may.
      if (!/undefined|NaN|\[object/.test(file.text)) wrong.push(`${finding.code} says: ${finding.message} / ${finding.help}`);
    }
  }
  return wrong;
}

function outOfChunks(file: RigFile): string[] {
  const wrong: string[] = [];
  let at = 0;
  for (const { chunk, offset } of file.chunks) {
    if (offset !== at) wrong.push(`a chunk begins at ${offset}, not at ${at}`);
    at = offset + chunk.text.length;
    const inside = (what: string, start: number, end: number): void => {
      if (start < 0 || end < start || chunk.text.length < end) wrong.push(`${what} ${start}..${end} lies outside of its chunk of ${chunk.text.length}`);
    };
    const visit = (s: Statement): void => {
      inside('statement', s.start, s.end);
      for (const t of s.tokens) if (chunk.text.slice(t.start, t.end) !== t.text) wrong.push(`token ${t.text} is not what stands at ${t.start}`);
      s.block?.statements.forEach(visit);
    };
    chunk.tree.statements.forEach(visit);
    for (const p of chunk.tree.problems) inside(p.code, p.start, p.end);
    for (const c of chunk.tree.comments) inside('comment', c.start, c.end);
  }
  if (at !== file.length) wrong.push(`the chunks end at ${at} of ${file.length}`);
  return wrong;
}

/** Every object with a start and an end must lie within the text. Chunks and derivations are not gone into. */
function spansOutside(answer: unknown, length: number, what: string): string[] {
  const wrong: string[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    if (Array.isArray(value)) return value.forEach(visit);
    const { start, end } = value as { start?: unknown; end?: unknown };
    if (typeof start === 'number' && typeof end === 'number' && !(0 <= start && start <= end && end <= length)) wrong.push(`${what} answers ${start}..${end} of ${length}`);
    for (const [key, inner] of Object.entries(value)) if (key !== 'finding' && key !== 'view') visit(inner);
  };
  visit(answer);
  return wrong;
}

/** Every feature that a cursor or a whole file can ask for, at some offsets. */
export function askFuzz(project: Project, offsets: readonly number[]): string[] {
  const wrong: string[] = [];
  const { length, text } = project.file(fuzzPath)!;
  const check = (what: string, answer: unknown): void => void wrong.push(...spansOutside(answer, length, what));
  for (const at of offsets) {
    const within = { start: at, end: Math.min(length, at + 200) };
    check('hover', hoverAt(project, fuzzPath, at, day));
    check('completion', completionsAt(project, fuzzPath, at, day));
    check('definition', definitionAt(project, fuzzPath, at, day));
    check('references', referencesAt(project, fuzzPath, at, day));
    check('highlights', highlightsAt(project, fuzzPath, at, day));
    check('rename start', renameStart(project, fuzzPath, at, day));
    check('rename', renameAt(project, fuzzPath, at, day, 'other-name'));
    check('selection', selectionRanges(project, fuzzPath, at));
    check('load path', [loadedThingAt(project, fuzzPath, at, day), loadedBy(project, fuzzPath, at, day), loads(project, fuzzPath, at, day)]);
    check('code actions', codeActions(project, fuzzPath, within, day));
    check('inlay hints', inlayHints(project, fuzzPath, within, day));
    check('formatting', formattingEdits(project, fuzzPath, within));
    check('semantic tokens', semanticTokens(project, fuzzPath, within));
    signatureAt(project, fuzzPath, at);
  }
  check('fix all', fixAll(project, fuzzPath, day));
  check('links', documentLinks(project, fuzzPath));
  check('symbols', documentSymbols(project, fuzzPath, day));
  check('workspace symbols', workspaceSymbols(project, 'a'));
  foldingRanges(project, fuzzPath);
  const once = formatFile(text, topHeads);
  if (formatFile(once, topHeads) !== once) wrong.push('formatting again changes the text');
  const edits = [...formattingEdits(project, fuzzPath)].sort((a, b) => b.start - a.start || b.end - a.end);
  if (edits.reduce((now, e) => now.slice(0, e.start) + e.text + now.slice(e.end), text) !== once) wrong.push('the edits of formatting do not make the formatted text');
  return wrong;
}

/** Draws every block; a drawing must be one element and hold no number that is none. */
export function drawFuzz(project: Project): string[] {
  const wrong: string[] = [];
  const judged = project.judge(fuzzPath, day).files.get(fuzzPath)!;
  for (const [name, picture] of picturesOf(judged.blocks.map((b) => b.assessed))) {
    if (!/^<svg[\s\S]*<\/svg>\s*$/.test(picture.svg)) wrong.push(`${name} is not one element`);
    if (/="[^"]*(?:NaN|Infinity|undefined)[^"]*"/.test(picture.svg)) wrong.push(`${name} holds a number that is none`);
  }
  return wrong;
}
