import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { commands } from './command-names.ts';
import { committedText, NoCommit, repositoryOf, type GitRepository } from './git-api.ts';
import { sheetPage } from './pages.ts';
import { sheetOfTextsRequest, type SheetOfTextsParams, type SheetOfTextsResult } from './protocol.ts';

/** Read-only documents with the sheet as the last commit makes it: `linewright-commit:/plover.sheet.txt?<rig>`. */
const scheme = 'linewright-commit';

/** A rig may use files that use files; more steps than this are a fault. */
const mostSteps = 20;

const nameOf = (rig: vscode.Uri): string => rig.path.split('/').at(-1) ?? '';
const committedPage = (rig: vscode.Uri): vscode.Uri => vscode.Uri.from({ scheme, path: `/${nameOf(rig).replace(/\.rig$/, '')}.sheet.txt`, query: rig.toString() });

/** The sheet of the last commit. The server says which other files it needs of it. */
async function committedSheet(client: BaseLanguageClient, repository: GitRepository, rig: vscode.Uri): Promise<string> {
  const texts: Record<string, string | null> = {};
  let wants: readonly string[] = [client.code2ProtocolConverter.asUri(rig)];
  const [uri] = wants;
  let answer: SheetOfTextsResult = { text: '', wants };
  for (let step = 0; step < mostSteps && wants.length > 0; step++) {
    for (const wanted of wants) texts[wanted] = (await committedText(repository, client.protocol2CodeConverter.asUri(wanted))) ?? null;
    if (texts[uri!] === null) throw new NoCommit(vscode.l10n.t('{0} is not in the last commit.', nameOf(rig)));
    answer = await client.sendRequest<SheetOfTextsResult>(sheetOfTextsRequest, { uri: uri!, texts } satisfies SheetOfTextsParams);
    wants = answer.wants.filter((wanted) => !(wanted in texts));
  }
  return answer.text;
}

export function addComparison(context: vscode.ExtensionContext, client: BaseLanguageClient, log: vscode.LogOutputChannel): void {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const watched = new Map<string, vscode.Disposable>();
  const watch = (repository: GitRepository): void => {
    const root = repository.rootUri.toString();
    if (watched.has(root)) return;
    // After the next commit the left side is that one.
    watched.set(root, repository.state.onDidChange(() => {
      for (const { uri } of vscode.workspace.textDocuments) if (uri.scheme === scheme) changed.fire(uri);
    }));
  };

  const compare = async (given: unknown): Promise<void> => {
    const rig = given instanceof vscode.Uri ? given : vscode.window.activeTextEditor?.document.uri;
    if (rig === undefined) return;
    try {
      const repository = await repositoryOf(rig);
      watch(repository);
      // Asked once here, so that what goes wrong is said as a message and not inside a document.
      await committedSheet(client, repository, rig);
      const page = committedPage(rig);
      changed.fire(page);
      await vscode.commands.executeCommand('vscode.diff', page, sheetPage(rig), vscode.l10n.t('{0}: sheet at the last commit ↔ now', nameOf(rig)));
    } catch (error) {
      if (error instanceof NoCommit) return void vscode.window.showInformationMessage(error.message);
      log.error(`${commands.compareWithLastCommit}: ${error instanceof Error ? error.message : String(error)}`);
      void vscode.window.showErrorMessage(vscode.l10n.t('The sheets could not be compared. The log says why.'));
    }
  };

  context.subscriptions.push(
    changed,
    vscode.workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: changed.event,
      async provideTextDocumentContent(page) {
        const rig = vscode.Uri.parse(page.query);
        try {
          return await committedSheet(client, await repositoryOf(rig), rig);
        } catch (error) {
          return error instanceof Error ? error.message : String(error);
        }
      },
    }),
    vscode.commands.registerCommand(commands.compareWithLastCommit, compare),
    { dispose: () => watched.forEach((watching) => watching.dispose()) },
  );
}
