import * as vscode from 'vscode';
import { LanguageClient, TransportKind, type NodeModule } from 'vscode-languageclient/node';
import { addCheckTask } from './check-task.ts';
import { activateLinewright, type Exports } from './extension.ts';

export function activate(context: vscode.ExtensionContext): Exports {
  addCheckTask(context);
  return activateLinewright(context, ({ extensionUri }, options) => {
    const run: NodeModule = { module: vscode.Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath, transport: TransportKind.stdio };
    const debug: NodeModule = { ...run, options: { execArgv: ['--inspect=6009'] } };
    return new LanguageClient('linewright', 'Linewright', { run, debug }, options);
  });
}
