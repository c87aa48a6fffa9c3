import * as vscode from 'vscode';
import { LanguageClient, TransportKind, type NodeModule } from 'vscode-languageclient/node';
import { addCheckTask } from './check-task.ts';
import { activateLinewright, type Exports } from './extension.ts';

export function activate(context: vscode.ExtensionContext): Exports {
  addCheckTask(context);
  return activateLinewright(context, ({ extensionUri, globalStorageUri }, options) => {
    // The editor takes this folder away with the extension.
    const env = { ...process.env, LINEWRIGHT_CACHE: globalStorageUri.fsPath };
    // Twice the first number would make a server of long files a third larger, and no faster.
    // A long file fits into the second number without a stop to look for what can be let go. Beyond it that is looked for each time a half more
    // has come: for a workspace of thousands of files that takes a third of the memory away, and adds a tenth to the time to open them all.
    const execArgv = ['--max-semi-space-size=4', '--initial-old-space-size=64', '--heap-growing-percent=50'];
    const run: NodeModule = { module: vscode.Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath, transport: TransportKind.stdio, options: { env, execArgv } };
    const debug: NodeModule = { ...run, options: { env, execArgv: [...execArgv, '--inspect=6009'] } };
    return new LanguageClient('linewright', 'Linewright', { run, debug }, options);
  });
}
