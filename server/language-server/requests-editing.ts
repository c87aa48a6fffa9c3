import type { CancellationToken, CompletionItem as LspCompletionItem, Diagnostic, WorkspaceEdit } from 'vscode-languageserver';
import { codeActions, fixAll, repairAt, type CodeAction } from '../../src-core/ide/code-actions.ts';
import { completionsAt, type CompletionItem } from '../../src-core/ide/completion.ts';
import { useEdits } from '../../src-core/ide/file-rename.ts';
import { codeLenses } from '../../src-core/ide/code-lenses.ts';
import { formattingEdits, typedEdits } from '../../src-core/ide/formatting.ts';
import { inlayHints } from '../../src-core/ide/inlay-hints.ts';
import { renameAt, renameStart } from '../../src-core/ide/rename.ts';
import { signatureAt } from '../../src-core/ide/signature-help.ts';
import type { LanguageServer, Subject } from './language-server.ts';
import { isRange } from './positions.ts';
import { recordsIn } from './params.ts';
import type { Answer } from './requests.ts';
import { today } from './settings.ts';
import type { Folder } from './workspace.ts';
import { annotatedEdit, joinedEdit, toCompletionItem, toWorkspaceEdit } from './to-lsp.ts';

interface Asked {
  readonly textDocument?: { readonly uri?: unknown };
  readonly position?: unknown;
  readonly range?: unknown;
}

/** A request that is understood and cannot be done; its message is for the person who asked. */
class RequestRefused extends Error {
  override readonly name = 'RequestRefused';
}

/** Items of the last list, whose documentation is asked for one by one. */
const lastItems = new WeakMap<LanguageServer, { readonly batch: number; readonly items: readonly CompletionItem[] }>();
let batches = 0;

const kindOf: Readonly<Record<CodeAction['kind'], string>> = { fix: 'quickfix', stub: 'quickfix', 'set-aside': 'quickfix', 'fix-all': 'source.fixAll.linewright', rewrite: 'refactor.rewrite' };
/** A kind takes in those below it, and the empty one all of them. */
const isWanted = (kind: string, only: readonly string[] | undefined): boolean => only === undefined || only.some((wanted) => wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`));

function toAction(server: LanguageServer, of: Subject, action: CodeAction, shown: readonly Diagnostic[]) {
  const { finding, disabled } = action;
  const does = disabled === undefined ? { edit: toWorkspaceEdit(of.folder, action.edits, server.positions, server.skills) } : { disabled: { reason: disabled } };
  const span = finding === undefined ? undefined : of.file.spanOf(finding.place);
  const start = span === undefined ? undefined : server.positions.position(of.file.lines, span.start);
  const diagnostics = finding === undefined || start === undefined ? [] : shown.filter((d) => d?.code === finding.code && d.range?.start?.line === start.line && d.range.start.character === start.character);
  return { title: action.title, kind: kindOf[action.kind], ...does, ...(diagnostics.length > 0 ? { diagnostics } : {}), ...(action.preferred === true ? { isPreferred: true } : {}) };
}

async function format(server: LanguageServer, params: Asked, token: CancellationToken, ranged: boolean) {
  const of = await server.subject(params, token);
  // The prose of a Markdown document is laid out by whoever wrote it, and its fences with it.
  if (of === undefined || of.fences !== undefined || (ranged && !isRange(params.range))) return [];
  const within = ranged && isRange(params.range) ? server.positions.span(of.file.lines, params.range) : undefined;
  return formattingEdits(of.folder.project, of.path, within).map((edit) => ({ range: server.positions.range(of.file.lines, edit), newText: edit.text }));
}

export const editing: Readonly<Record<string, Answer>> = {
  async 'textDocument/completion'(server: LanguageServer, params: Asked & { readonly context?: { readonly triggerCharacter?: unknown } }, token: CancellationToken) {
    const at = await server.point(params, token);
    if (at === undefined) return null;
    // A space that indents a line asks for nothing.
    const { lines, text } = at.file;
    if (params.context?.triggerCharacter === ' ' && text.slice(lines.lineStart(lines.lineColumn(at.offset).line), at.offset).trim() === '') return null;
    const found = completionsAt(at.folder.project, at.path, at.offset, at.day, today());
    if (found === undefined) return null;
    const batch = ++batches;
    lastItems.set(server, { batch, items: found.items });
    return { isIncomplete: false, items: found.items.map((item, i) => toCompletionItem(item, i, found, lines, server.positions, server.skills, batch)) };
  },

  'completionItem/resolve'(server: LanguageServer, item: LspCompletionItem) {
    const { batch, index } = (item?.data ?? {}) as { batch?: unknown; index?: unknown };
    const last = lastItems.get(server);
    const documentation = last !== undefined && last.batch === batch && typeof index === 'number' ? last.items[index]?.documentation : undefined;
    return documentation === undefined ? item : { ...item, documentation: { kind: 'markdown', value: documentation } };
  },

  async 'textDocument/signatureHelp'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const at = await server.point(params, token);
    const signature = at === undefined ? undefined : signatureAt(at.folder.project, at.path, at.offset);
    if (signature === undefined) return null;
    const parameters = signature.parts.map(({ start, end, meaning }) => ({ label: [start, end], documentation: { kind: 'markdown', value: meaning } }));
    // A number beyond the last part lights none of them.
    const activeParameter = signature.active ?? parameters.length;
    return { signatures: [{ label: signature.label, documentation: signature.summary, parameters }], activeSignature: 0, activeParameter };
  },

  'textDocument/formatting': (server: LanguageServer, params: Asked, token: CancellationToken) => format(server, params, token, false),
  'textDocument/rangeFormatting': (server: LanguageServer, params: Asked, token: CancellationToken) => format(server, params, token, true),

  async 'textDocument/onTypeFormatting'(server: LanguageServer, params: Asked & { readonly ch?: unknown }, token: CancellationToken) {
    const at = await server.point(params, token);
    if (at === undefined || at.fences !== undefined || typeof params.ch !== 'string') return [];
    const edits = typedEdits(at.folder.project, at.path, at.offset, params.ch);
    return edits.map((edit) => ({ range: server.positions.range(at.file.lines, edit), newText: edit.text }));
  },

  async 'textDocument/codeLens'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined || !(await server.settings.showsLenses(of.folder.uri))) return [];
    const command = server.skills.own ? 'linewright.showSheet' : '';
    return codeLenses(of.folder.project, of.path, of.day).map(({ start, end, title }) => ({
      range: server.positions.range(of.file.lines, { start, end }),
      command: { title, command, ...(command === '' ? {} : { arguments: [of.uri] }) },
    }));
  },

  async 'textDocument/prepareRename'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const at = await server.point(params, token);
    const start = at === undefined ? undefined : renameStart(at.folder.project, at.path, at.offset, at.day);
    return at === undefined || start === undefined ? null : { range: server.positions.range(at.file.lines, start), placeholder: start.name };
  },

  async 'textDocument/rename'(server: LanguageServer, params: Asked & { readonly newName?: unknown }, token: CancellationToken) {
    const at = await server.point(params, token);
    if (at === undefined || typeof params.newName !== 'string') return null;
    const newName = params.newName.trim();
    // Files that were never opened may use the name too.
    return server.workspace.withAll(at.folder, (isCut) => {
      const rename = renameAt(at.folder.project, at.path, at.offset, at.day, newName);
      if (rename === undefined) return null;
      if ('refused' in rename) throw new RequestRefused(rename.refused);
      if (isCut) throw new RequestRefused('this folder holds more files than are read, and those that are left out may use the name');
      return annotatedEdit(toWorkspaceEdit(at.folder, rename.edits.map((e) => ({ ...e, text: newName })), server.positions, server.skills), `Rename to ${newName}`, server);
    });
  },

  async 'workspace/willRenameFiles'(server: LanguageServer, params: { readonly files?: unknown }) {
    const moves = new Map<Folder, { from: string; to: string }[]>();
    for (const { oldUri, newUri } of recordsIn(params.files)) {
      const from = typeof oldUri === 'string' ? server.workspace.locate(oldUri) : undefined;
      const to = typeof newUri === 'string' ? server.workspace.locate(newUri) : undefined;
      // Moved to another folder, nothing here can use it any more.
      if (from === undefined || to === undefined || from.folder !== to.folder) continue;
      moves.set(from.folder, [...(moves.get(from.folder) ?? []), { from: from.path, to: to.path }]);
    }
    const edits: WorkspaceEdit[] = [];
    for (const [folder, list] of moves) {
      await server.workspace.withAll(folder, (isCut) => {
        const followed = useEdits(folder.project, list);
        if (followed.length > 0) edits.push(toWorkspaceEdit(folder, followed, server.positions, server.skills));
        if (isCut) server.warn('Linewright: the folder holds more files than are read, and those that are left out may use what was moved.');
      });
    }
    return edits.length === 0 ? null : annotatedEdit(joinedEdit(edits), 'Follow the moved file', server);
  },

  async 'textDocument/codeAction'(server: LanguageServer, params: Asked & { readonly context?: { readonly only?: readonly string[]; readonly diagnostics?: readonly Diagnostic[] } }, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined || !isRange(params.range) || !server.skills.actionLiterals) return [];
    const only = Array.isArray(params.context?.only) ? params.context.only : undefined;
    const shown = Array.isArray(params.context?.diagnostics) ? params.context.diagnostics : [];
    const within = server.positions.span(of.file.lines, params.range);
    const answer = (isCut: boolean) => {
      const actions = ['quickfix', 'refactor.rewrite'].some((kind) => isWanted(kind, only)) ? codeActions(of.folder.project, of.path, within, of.day) : [];
      // Mending everything at once is done when it is asked for by its name.
      const all = only !== undefined && isWanted(kindOf['fix-all'], only) ? fixAll(of.folder.project, of.path, of.day) : undefined;
      const possible = actions.map((action) => (isCut && action.everywhere === true ? { ...action, edits: [], disabled: 'this folder holds more files than are read, and those that are left out may speak of it' } : action));
      const wanted = possible.filter((action) => isWanted(kindOf[action.kind], only) && (action.disabled === undefined || server.skills.disabledActions));
      return [...wanted, ...(all === undefined ? [] : [all])].map((action) => toAction(server, of, action, shown));
    };
    // Whoever speaks of a repair is concerned by its end, in files that were never opened too.
    return isWanted(kindOf.rewrite, only) && repairAt(of.file, within) !== undefined ? server.workspace.withAll(of.folder, answer) : answer(false);
  },

  async 'textDocument/inlayHint'(server: LanguageServer, params: Asked, token: CancellationToken) {
    const of = await server.subject(params, token);
    if (of === undefined || !isRange(params.range)) return [];
    return inlayHints(of.folder.project, of.path, server.positions.span(of.file.lines, params.range), of.day).map(({ at, text }) => ({ position: server.positions.position(of.file.lines, at), label: text, paddingLeft: true }));
  },
};
