import type { CompletionItem as LspCompletionItem, CompletionItemKind, DocumentSymbol as LspDocumentSymbol, SymbolInformation, SymbolKind as LspSymbolKind, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { LineIndex } from '../../src-core/base/line-index.ts';
import type { Completion, CompletionItem, CompletionKind } from '../../src-core/ide/completion.ts';
import type { FileEdit } from '../../src-core/ide/code-actions.ts';
import type { DocumentSymbol, SymbolKind } from '../../src-core/ide/document-symbols.ts';
import { fenceAt, textInFence } from '../../src-core/ide/markdown-fences.ts';
import { tokenTypes, type SemanticToken } from '../../src-core/ide/semantic-tokens.ts';
import type { ClientSkills } from './capabilities.ts';
import type { Positions } from './positions.ts';
import type { Folder } from './workspace.ts';

// Numbers of the protocol's own lists, written out so that its tables need not be loaded.
const completionKinds: Readonly<Record<CompletionKind, CompletionItemKind>> = { block: 15, statement: 10, entry: 23, choice: 20, name: 6, unit: 11, value: 12, word: 14, date: 12, file: 17 };
const symbolKinds: Readonly<Record<SymbolKind, LspSymbolKind>> = { vehicle: 19, winch: 5, line: 23, gear: 14, anchor: 20, plan: 12, practice: 3, entry: 24, part: 8 };

export function toCompletionItem(item: CompletionItem, index: number, { insert, replace }: Completion, lines: LineIndex, positions: Positions, skills: ClientSkills, batch: number): LspCompletionItem {
  const snippet = skills.snippets && item.snippet !== undefined;
  const newText = snippet ? item.snippet! : (item.insert ?? item.label);
  const [short, long] = [positions.range(lines, insert), positions.range(lines, replace)];
  return {
    label: item.label,
    kind: completionKinds[item.kind],
    sortText: String(item.rank + 1000).padStart(5, '0'),
    ...(item.detail === undefined ? {} : { detail: item.detail }),
    ...(snippet ? { insertTextFormat: 2 as const } : {}),
    textEdit: skills.insertReplace ? { newText, insert: short, replace: long } : { newText, range: long },
    ...(item.documentation === undefined ? {} : { data: { batch, index } }),
    // Behind a word that wants a value, the list of values comes next.
    ...(skills.own && newText.endsWith(' ') ? { command: { title: '', command: 'editor.action.triggerSuggest' } } : {}),
  };
}

export function toDocumentSymbol(symbol: DocumentSymbol, lines: LineIndex, positions: Positions): LspDocumentSymbol {
  return {
    name: symbol.name,
    detail: symbol.detail,
    kind: symbolKinds[symbol.kind],
    range: positions.range(lines, symbol.whole),
    selectionRange: positions.range(lines, symbol.nameSpan),
    ...(symbol.children.length === 0 ? {} : { children: symbol.children.map((child) => toDocumentSymbol(child, lines, positions)) }),
  };
}

/** The tree laid flat, for clients that know no tree. */
export function flatSymbols(symbols: readonly DocumentSymbol[], uri: string, lines: LineIndex, positions: Positions, container?: string): SymbolInformation[] {
  return symbols.flatMap((s) => [
    { name: s.name, kind: symbolKinds[s.kind], location: { uri, range: positions.range(lines, s.whole) }, ...(container === undefined ? {} : { containerName: container }) },
    ...flatSymbols(s.children, uri, lines, positions, s.name),
  ]);
}

export const symbolKindNumber = (kind: SymbolKind): LspSymbolKind => symbolKinds[kind];

/** Edits of files of one folder. */
export function toWorkspaceEdit(folder: Folder, edits: readonly FileEdit[], positions: Positions, skills: ClientSkills): WorkspaceEdit {
  const byPath = new Map<string, TextEdit[]>();
  for (const { path, start, end, text } of edits) {
    const file = folder.project.file(path);
    if (file === undefined) continue;
    const list = byPath.get(path) ?? [];
    const range = positions.range(file.lines, { start, end });
    const fence = fenceAt(folder.open.get(path)?.fences ?? [], start);
    list.push({ range, newText: fence === undefined ? text : textInFence(text, fence, range.start.character === 0) });
    byPath.set(path, list);
  }
  if (!skills.versionedEdits) return { changes: Object.fromEntries([...byPath].map(([path, list]) => [folder.uriOf(path), list])) };
  return { documentChanges: [...byPath].map(([path, list]) => ({ textDocument: { uri: folder.uriOf(path), version: folder.open.get(path)?.version ?? null }, edits: list })) };
}

/** Edits of several folders as one. */
export function joinedEdit(edits: readonly WorkspaceEdit[]): WorkspaceEdit {
  if (edits.some((edit) => edit.documentChanges !== undefined)) return { documentChanges: edits.flatMap((edit) => edit.documentChanges ?? []) };
  return { changes: Object.assign({}, ...edits.map((edit) => edit.changes ?? {})) as NonNullable<WorkspaceEdit['changes']> };
}

/** An edit of several files says what it is for in each of them, so that a person can look through it before. */
export function annotatedEdit(edit: WorkspaceEdit, label: string, { skills }: { readonly skills: ClientSkills }): WorkspaceEdit {
  const changes = edit.documentChanges;
  if (!skills.changeAnnotations || changes === undefined || changes.length < 2) return edit;
  const id = 'linewright';
  return {
    changeAnnotations: { [id]: { label, needsConfirmation: false } },
    documentChanges: changes.map((change) => ('edits' in change ? { ...change, edits: change.edits.map((e) => ({ ...e, annotationId: id })) } : change)),
  };
}

/** Five numbers a token, each counted from the token before. */
export function encodeTokens(tokens: readonly SemanticToken[], lines: LineIndex, positions: Positions): number[] {
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const token of tokens) {
    const { start, end } = positions.range(lines, token);
    data.push(start.line - line, start.line === line ? start.character - character : start.character, end.character - start.character, tokenTypes.indexOf(token.type), token.declares ? 1 : 0);
    ({ line, character } = start);
  }
  return data;
}

/** The one stretch in which two lists of numbers differ. */
export function tokenEdits(before: readonly number[], after: readonly number[]): { start: number; deleteCount: number; data: number[] }[] {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let tail = 0;
  while (tail < most - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  if (start === before.length && start === after.length) return [];
  return [{ start, deleteCount: before.length - tail - start, data: after.slice(start, after.length - tail) }];
}
