import * as vscode from 'vscode';
import { State, type BaseLanguageClient } from 'vscode-languageclient';
import { commands } from './command-names.ts';

/** The item behind the braces in the status bar: whether the server runs, and the way to its log or back to life. */
export function addStatusItem(context: vscode.ExtensionContext, client: BaseLanguageClient, selector: vscode.DocumentSelector): void {
  const item = vscode.languages.createLanguageStatusItem('linewright.server', selector);
  item.name = vscode.l10n.t('Linewright');
  const show = (state: State): void => {
    const running = state === State.Running;
    item.busy = state === State.Starting;
    item.severity = state === State.Stopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
    const version = client.initializeResult?.serverInfo?.version;
    item.text = running && version !== undefined ? vscode.l10n.t('Linewright {0}', version) : vscode.l10n.t('Linewright');
    item.detail = running ? vscode.l10n.t('server running') : state === State.Starting ? vscode.l10n.t('server starting') : vscode.l10n.t('server stopped');
    item.command =
      state === State.Stopped
        ? { command: commands.restartServer, title: vscode.l10n.t('Restart') }
        : { command: commands.showLog, title: vscode.l10n.t('Log') };
  };
  show(State.Starting);
  context.subscriptions.push(
    item,
    client.onDidChangeState((change) => show(change.newState)),
  );
}
