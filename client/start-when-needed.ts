import * as vscode from 'vscode';
import { mayHoldRig } from '../src-core/ide/markdown-fences.ts';

const needsServer = (document: vscode.TextDocument): boolean => document.languageId === 'rig' || (document.languageId === 'markdown' && mayHoldRig(document.getText()));

/**
 * Starts the server with the first document that has a rig in it. Many folders hold Markdown and no rig: there nothing is
 * started, and looking costs one search for each change.
 */
export function startWhenNeeded(context: vscode.ExtensionContext, start: () => Promise<void>): Promise<void> {
  if (vscode.workspace.textDocuments.some(needsServer)) return start();
  const look = (document: vscode.TextDocument): void => {
    if (!needsServer(document)) return;
    for (const watch of watches) watch.dispose();
    void start();
  };
  const watches = [vscode.workspace.onDidOpenTextDocument(look), vscode.workspace.onDidChangeTextDocument(({ document }) => look(document))];
  context.subscriptions.push(...watches);
  return Promise.resolve();
}
