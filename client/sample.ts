import * as vscode from 'vscode';

/** The sample that was opened last; untitled, so that a newcomer can change it without a folder to keep it in. */
let sample: vscode.Uri | undefined;

export const openedSample = (): vscode.Uri | undefined => sample;

export async function openSample(context: vscode.ExtensionContext): Promise<void> {
  const file = vscode.Uri.joinPath(context.extensionUri, 'client', 'media', 'sample.rig');
  const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
  const document = await vscode.workspace.openTextDocument({ language: 'rig', content });
  sample = document.uri;
  await vscode.window.showTextDocument(document);
}

/** Does for the sample what the quick fix on its bury does, for who reads the walkthrough. */
export async function mendSample(context: vscode.ExtensionContext): Promise<void> {
  if (sample === undefined) await openSample(context);
  const document = await vscode.workspace.openTextDocument(sample!);
  await vscode.window.showTextDocument(document);
  const at = document.getText().indexOf('bury ', document.getText().indexOf('repair '));
  if (at < 0) return;
  const place = new vscode.Range(document.positionAt(at + 5), document.positionAt(at + 5));
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', document.uri, place, vscode.CodeActionKind.QuickFix.value);
  const edit = actions.find((action) => action.isPreferred === true && action.edit !== undefined)?.edit;
  if (edit !== undefined) await vscode.workspace.applyEdit(edit);
}
