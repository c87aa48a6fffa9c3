import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { explainRequest, sheetRequest, type ExplainParams, type ExplainResult, type SheetParams, type SheetResult, stageRequest, type StageParams } from './protocol.ts';

/** Read-only documents that the server writes: `linewright:/sheet/plover.txt?<rig>` and `linewright:/rule/bury-too-short.md`. */
export const pageScheme = 'linewright';

/** A sheet follows the typing, but not every key. */
const settle_ms = 300;

export function sheetPage(rig: vscode.Uri): vscode.Uri {
  const name = rig.path.split('/').at(-1)!.replace(/\.rig$/, '');
  return vscode.Uri.from({ scheme: pageScheme, path: `/sheet/${name}.sheet.txt`, query: rig.toString() });
}

/** What a stage of reading makes of a rig: `linewright:/stage/tree/plover.tree.txt?<rig>`. */
export const stagePage = (rig: vscode.Uri, stage: string): vscode.Uri => vscode.Uri.from({ scheme: pageScheme, path: `/stage/${stage}/${rig.path.split('/').at(-1)!.replace(/\.rig$/, '')}.${stage}.txt`, query: rig.toString() });

export const rulePage = (code: string): vscode.Uri => vscode.Uri.from({ scheme: pageScheme, path: `/rule/${code}.md` });

export function addPages(context: vscode.ExtensionContext, client: BaseLanguageClient): void {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const waiting = new Map<string, ReturnType<typeof setTimeout>>();
  const provider: vscode.TextDocumentContentProvider = {
    onDidChange: changed.event,
    async provideTextDocumentContent(page, cancel) {
      const stage = /^\/stage\/([a-z]+)\//.exec(page.path)?.[1];
      const rule = /^\/rule\/(.+)\.md$/.exec(page.path);
      try {
        if (rule !== null) return (await client.sendRequest<ExplainResult>(explainRequest, { code: rule[1]! } satisfies ExplainParams, cancel)).markdown;
        if (stage !== undefined) return (await client.sendRequest<SheetResult>(stageRequest, { uri: page.query, stage } satisfies StageParams, cancel)).text;
        return (await client.sendRequest<SheetResult>(sheetRequest, { uri: page.query } satisfies SheetParams, cancel)).text;
      } catch (error) {
        return vscode.l10n.t('This page could not be made: {0}', error instanceof Error ? error.message : String(error));
      }
    },
  };
  context.subscriptions.push(
    changed,
    vscode.workspace.registerTextDocumentContentProvider(pageScheme, provider),
    vscode.workspace.onDidChangeTextDocument(({ document }) => {
      if (document.languageId !== 'rig') return;
      const rig = document.uri.toString();
      clearTimeout(waiting.get(rig));
      const page = sheetPage(document.uri);
      if (!vscode.workspace.textDocuments.some((open) => open.uri.toString() === page.toString())) return;
      waiting.set(
        rig,
        setTimeout(() => {
          waiting.delete(rig);
          changed.fire(page);
        }, settle_ms),
      );
    }),
    { dispose: () => waiting.forEach((timer) => clearTimeout(timer)) },
  );
}
