import * as vscode from 'vscode';
import { LanguageClient, TransportKind, type NodeModule } from 'vscode-languageclient/node';
import { addCheckTask } from './check-task.ts';
import { activateLinewright, type Exports } from './extension.ts';

export function activate(context: vscode.ExtensionContext): Exports {
  addCheckTask(context);
  return activateLinewright(context, ({ extensionUri, globalStorageUri }, options) => {
    // The editor takes this folder away with the extension.
    const env = { ...process.env, LINEWRIGHT_CACHE: globalStorageUri.fsPath };
    // With twice the first number a server takes a tenth more memory, and is no faster. What can be let go is looked for first at the second number, and then
    // each time a half more has come: so a workspace of thousands of files takes half the memory.
    const execArgv = ['--max-semi-space-size=2', '--initial-old-space-size=32', '--heap-growing-percent=50'];
    const run: NodeModule = { module: vscode.Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath, transport: TransportKind.stdio, options: { env, execArgv } };
    const debug: NodeModule = { ...run, options: { env, execArgv: [...execArgv, '--inspect=6009'] } };
    return new LanguageClient('linewright', 'Linewright', { run, debug }, options);
  });
}
