import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { codeActions } from '../../src-core/ide/code-actions.ts';
import { completionsAt } from '../../src-core/ide/completion.ts';
import { definitionAt } from '../../src-core/ide/definition.ts';
import { documentSymbols, type DocumentSymbol } from '../../src-core/ide/document-symbols.ts';
import { foldingRanges } from '../../src-core/ide/folding-ranges.ts';
import { hoverAt } from '../../src-core/ide/hover.ts';
import { inlayHints } from '../../src-core/ide/inlay-hints.ts';
import { referencesAt } from '../../src-core/ide/references.ts';
import { renameStart } from '../../src-core/ide/rename.ts';
import { selectionRanges } from '../../src-core/ide/selection-ranges.ts';
import { semanticTokens } from '../../src-core/ide/semantic-tokens.ts';
import { signatureAt } from '../../src-core/ide/signature-help.ts';
import { Project } from '../../src-core/project.ts';
import { day } from './cursor.ts';

const folder = new URL('../../examples/', import.meta.url);
const names = readdirSync(folder).filter((n) => n.endsWith('.rig')).sort();

function examples(): Project {
  const project = new Project();
  for (const name of names) project.set(name, readFileSync(new URL(name, folder), 'utf8'));
  return project;
}

test.each(names)('%s: every offset is answered, with spans inside the file', (name) => {
  const project = examples();
  const { text } = project.file(name)!;
  const inside = (span: { start: number; end: number } | undefined): void => {
    if (span !== undefined && !(0 <= span.start && span.start <= span.end && span.end <= text.length)) throw new Error(`a span leaves the file: ${JSON.stringify(span)}`);
  };
  let hovers = 0;
  for (let at = 0; at <= text.length; at++) {
    const hover = hoverAt(project, name, at, day);
    inside(hover?.span);
    if (hover !== undefined) {
      hovers++;
      const lines = hover.markdown.split('\n').filter((l) => l.trim() !== '');
      if (15 < lines.length) throw new Error(`a hover of ${lines.length} lines: ${hover.markdown}`);
      if (/\b(?:safe|OK|NaN|undefined|Infinity|null)\b|\[object/.test(hover.markdown)) throw new Error(`a hover says what it should not: ${hover.markdown}`);
    }
    const completion = completionsAt(project, name, at, day);
    inside(completion?.replace);
    inside(completion?.insert);
    inside(definitionAt(project, name, at, day)?.from);
    inside(renameStart(project, name, at, day));
    const spans = selectionRanges(project, name, at);
    spans.forEach(inside);
    for (const [i, span] of spans.entries()) if (i > 0 && !(span.start <= spans[i - 1]!.start && spans[i - 1]!.end <= span.end)) throw new Error(`a selection shrinks at ${at}`);
    signatureAt(project, name, at);
  }
  // Comments and white space have none.
  expect(hovers).toBeGreaterThan(text.length / 10);
});

test.each(names)('%s: symbols hold their names and their children, tokens do not overlap', (name) => {
  const project = examples();
  const check = (symbol: DocumentSymbol): void => {
    expect(symbol.whole.start <= symbol.nameSpan.start && symbol.nameSpan.end <= symbol.whole.end).toBe(true);
    for (const child of symbol.children) {
      expect(symbol.whole.start <= child.whole.start && child.whole.end <= symbol.whole.end).toBe(true);
      check(child);
    }
  };
  documentSymbols(project, name, day).forEach(check);
  const tokens = semanticTokens(project, name);
  expect(tokens.length).toBeGreaterThan(10);
  tokens.forEach((token, i) => expect(i === 0 || tokens[i - 1]!.end <= token.start).toBe(true));
});

test('every prefix of an example is answered where it ends', () => {
  const text = examples().file('plover.rig')!.text;
  const project = new Project();
  for (let end = 0; end <= text.length; end++) {
    project.set('a.rig', text.slice(0, end));
    hoverAt(project, 'a.rig', end, day);
    completionsAt(project, 'a.rig', end, day);
    signatureAt(project, 'a.rig', end);
    referencesAt(project, 'a.rig', end, day);
    if (end % 7 !== 0) continue;
    documentSymbols(project, 'a.rig', day);
    foldingRanges(project, 'a.rig');
    semanticTokens(project, 'a.rig');
    inlayHints(project, 'a.rig', { start: 0, end }, day);
    codeActions(project, 'a.rig', { start: 0, end }, day);
  }
  expect(project.file('a.rig')!.text).toBe(text);
});

test('hovers after edits equal those of the same text read from scratch', () => {
  const project = examples();
  const fresh = new Project();
  project.edit('plover.rig', { start: 0, end: 0, text: '# one more line\n' });
  const at = project.file('plover.rig')!.text.indexOf('30 m');
  project.edit('plover.rig', { start: at, end: at + 2, text: '28' });
  for (const path of project.paths) fresh.set(path, project.file(path)!.text);
  for (let offset = 0; offset < project.file('plover.rig')!.text.length; offset += 3) {
    const [edited, read] = [project, fresh].map((p) => hoverAt(p, 'plover.rig', offset, day));
    expect({ ...edited, picture: edited?.picture?.().svg }).toEqual({ ...read, picture: read?.picture?.().svg });
  }
});

test('files and offsets that are not there give nothing', () => {
  const project = examples();
  expect(hoverAt(project, 'none.rig', 0, day)).toBeUndefined();
  expect(hoverAt(project, 'plover.rig', 10_000_000, day)).toBeUndefined();
  expect(completionsAt(project, 'none.rig', 0, day)).toBeUndefined();
  expect(documentSymbols(project, 'none.rig', day)).toEqual([]);
});
