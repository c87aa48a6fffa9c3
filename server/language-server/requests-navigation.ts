import type { CancellationToken } from 'vscode-languageserver';
import { definitionAt } from '../../src-core/ide/definition.ts';
import { documentLinks } from '../../src-core/ide/document-links.ts';
import { documentSymbols } from '../../src-core/ide/document-symbols.ts';
import { foldingRanges } from '../../src-core/ide/folding-ranges.ts';
import { hoverAt } from '../../src-core/ide/hover.ts';
import { furtherReading, type FurtherReading } from '../../src-core/ide/reference-link.ts';
import { highlightsAt, referencesAt } from '../../src-core/ide/references.ts';
import { selectionRanges } from '../../src-core/ide/selection-ranges.ts';
import { semanticTokens } from '../../src-core/ide/semantic-tokens.ts';
import { workspaceSymbols } from '../../src-core/ide/workspace-symbols.ts';
import { fenceAt } from '../../src-core/ide/markdown-fences.ts';
import type { FileSpan } from '../../src-core/ide/viewing.ts';
import type { LanguageServer, Subject } from './language-server.ts';
import { isPosition, isRange, type Position, type Range } from './positions.ts';
import type { Answer } from './requests.ts';
import { encodeTokens, flatSymbols, symbolKindNumber, toDocumentSymbol, tokenEdits } from './to-lsp.ts';

interface Asked {
  readonly textDocument?: { readonly uri?: unknown };
  readonly position?: unknown;
}

const location = ({ positions }: LanguageServer, { folder }: Subject, span: FileSpan): { uri: string; range: Range } => ({
  uri: folder.uriOf(span.path),
  range: positions.range(folder.project.file(span.path)!.lines, span),
});

/** Markdown without its marks, for clients that show text as it comes. */
const plainText = (markdown: string): string => markdown.replace(/\*\*|`{1,3}(?:rig)?/g, '').replace(/^\|[-|]+\|$\n?/gm, '');

/** A picture inside the text: nothing is fetched. */
function pictureText({ svg, title }: { readonly svg: string; readonly title: string }): string {
  const data = encodeURIComponent(svg).replace(/[()']/g, (c) => `%${c.charCodeAt(0).toString(16)}`);
  return `![${title.replace(/[[\]\\]/g, ' ')}](data:image/svg+xml;utf8,${data}|width=600)`;
}

const lastTokens = new WeakMap<LanguageServer, Map<string, { readonly resultId: string; readonly data: readonly number[] }>>();
let tokenResults = 0;

function keepTokens(server: LanguageServer, uri: string, data: readonly number[]): string {
  let kept = lastTokens.get(server);
  if (kept === undefined) lastTokens.set(server, (kept = new Map()));
  // Only open documents are asked for again.
  for (const known of kept.keys()) if (server.workspace.document(known) === undefined) kept.delete(known);
  const resultId = String(++tokenResults);
  kept.set(uri, { resultId, data });
  return resultId;
}

const commandLink = (words: string, command: string, argument: string): string => `[${words}](command:${command}?${encodeURIComponent(JSON.stringify([argument]))})`;

/** Links that our own client follows to the offline pages. */
function linksText({ section, rules }: FurtherReading): string {
  const links = [...rules.slice(0, 3).map((code) => commandLink(code, 'linewright.openRule', code)), ...(section === undefined ? [] : [commandLink('reference', 'linewright.openReference', section)])];
  return links.length === 0 ? '' : `\n\n${links.join(' · ')}`;
}

export const navigation: Readonly<Record<string, Answer>> = {
  async 'textDocument/hover'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const at = await server.point(params, token);
    const hover = at === undefined ? undefined : hoverAt(at.folder.project, at.path, at.offset, at.day);
    if (at === undefined || hover === undefined) return null;
    const picture = server.skills.own && hover.picture !== undefined ? `\n\n${pictureText(hover.picture())}` : '';
    const more = server.skills.own ? linksText(furtherReading(at.folder.project, at.path, at.offset, at.day)) : '';
    const contents = server.skills.markdown ? { kind: 'markdown', value: hover.markdown + more + picture } : { kind: 'plaintext', value: plainText(hover.markdown) };
    return { contents, range: server.positions.range(at.file.lines, hover.span) };
  },

  async 'textDocument/definition'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const at = await server.point(params, token);
    const found = at === undefined ? undefined : definitionAt(at.folder.project, at.path, at.offset, at.day);
    if (at === undefined || found === undefined) return null;
    const target = location(server, at, found.target);
    if (!server.skills.links) return target;
    return [{ originSelectionRange: server.positions.range(at.file.lines, found.from), targetUri: target.uri, targetRange: location(server, at, found.whole).range, targetSelectionRange: target.range }];
  },

  async 'textDocument/references'(server: LanguageServer, params: Asked & { readonly context?: { readonly includeDeclaration?: boolean } }, token: CancellationToken) {
    const at = await server.point(params, token);
    if (at === undefined) return [];
    return referencesAt(at.folder.project, at.path, at.offset, at.day, params.context?.includeDeclaration !== false).map((r) => location(server, at, r));
  },

  async 'textDocument/documentHighlight'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const at = await server.point(params, token);
    if (at === undefined) return [];
    return highlightsAt(at.folder.project, at.path, at.offset, at.day).map((h) => ({ range: server.positions.range(at.file.lines, h), kind: h.declares ? 3 : 2 }));
  },

  async 'textDocument/documentSymbol'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined) return [];
    const symbols = documentSymbols(of.folder.project, of.path, of.day);
    return server.skills.symbolTree ? symbols.map((s) => toDocumentSymbol(s, of.file.lines, server.positions)) : flatSymbols(symbols, of.uri, of.file.lines, server.positions);
  },

  async 'workspace/symbol'(server: LanguageServer, params: { readonly query?: unknown }) {
    const query = typeof params?.query === 'string' ? params.query.slice(0, 200) : '';
    const found = [];
    for (const folder of server.workspace.places) {
      if (!folder.judged) continue;
      await server.workspace.listAll(folder);
      for (const s of workspaceSymbols(folder.project, query)) found.push({ name: s.name, kind: symbolKindNumber(s.kind), containerName: s.container, location: { uri: folder.uriOf(s.path), range: server.positions.range(folder.project.file(s.path)!.lines, s) } });
    }
    return found;
  },

  async 'textDocument/documentLink'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined || of.folder.uri === undefined) return [];
    return documentLinks(of.folder.project, of.path).map((link) => ({ range: server.positions.range(of.file.lines, link), target: of.folder.uriOf(link.target) }));
  },

  async 'textDocument/foldingRange'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined) return [];
    return foldingRanges(of.folder.project, of.path).map(({ from, to, kind }) => ({ startLine: from, endLine: to, ...(kind === 'block' ? {} : { kind: kind === 'comment' ? 'comment' : 'region' }) }));
  },

  async 'textDocument/selectionRange'(server: LanguageServer, params: Asked & { readonly positions?: unknown }, token: CancellationToken) {
    const of = await server.subject(params, token);
    const asked = Array.isArray(params?.positions) ? (params.positions as unknown[]).filter(isPosition) : [];
    if (of === undefined || asked.length === 0) return null;
    return asked.map((position: Position) => {
      // In the prose of a Markdown document there is nothing of ours to select.
      if (of.fences !== undefined && fenceAt(of.fences, server.positions.offset(of.file.lines, position)) === undefined) return { range: { start: position, end: position } };
      const spans = selectionRanges(of.folder.project, of.path, server.positions.offset(of.file.lines, position));
      let range: { range: Range; parent?: object } | undefined;
      for (const span of spans.reverse()) range = { range: server.positions.range(of.file.lines, span), ...(range === undefined ? {} : { parent: range }) };
      return range;
    });
  },

  async 'textDocument/semanticTokens/full'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined) return null;
    const data = encodeTokens(semanticTokens(of.folder.project, of.path), of.file.lines, server.positions);
    return { resultId: keepTokens(server, of.uri, data), data };
  },

  async 'textDocument/semanticTokens/full/delta'(server: LanguageServer, params: Asked & { readonly previousResultId?: unknown }, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined) return null;
    const before = lastTokens.get(server)?.get(of.uri);
    const data = encodeTokens(semanticTokens(of.folder.project, of.path), of.file.lines, server.positions);
    const resultId = keepTokens(server, of.uri, data);
    return before === undefined || before.resultId !== params.previousResultId ? { resultId, data } : { resultId, edits: tokenEdits(before.data, data) };
  },

  async 'textDocument/semanticTokens/range'(server: LanguageServer, params: Asked & { readonly range?: unknown }, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined || !isRange(params.range)) return null;
    return { data: encodeTokens(semanticTokens(of.folder.project, of.path, server.positions.span(of.file.lines, params.range)), of.file.lines, server.positions) };
  },
};
