import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { commands } from './command-names.ts';
import { rulePage, sheetPage, stagePage } from './pages.ts';
import { mendSample, openedSample, openSample } from './sample.ts';
import { checkWorkspaceRequest, rulesRequest, type CheckWorkspaceResult, type RulesResult } from './protocol.ts';

export interface CommandNeeds {
  readonly client: BaseLanguageClient;
  readonly log: vscode.LogOutputChannel;
  readonly restart: () => Promise<void>;
}

/** A lens above a line names its rig as text. */
async function showSheet(rig: vscode.Uri | string | undefined): Promise<void> {
  const uri = (typeof rig === 'string' ? vscode.Uri.parse(rig, true) : rig) ?? vscode.window.activeTextEditor?.document.uri ?? openedSample();
  if (uri === undefined) return;
  const page = await vscode.workspace.openTextDocument(sheetPage(uri));
  await vscode.window.showTextDocument(page, { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true, preview: true });
}

async function showStage(stage: string): Promise<void> {
  const uri = vscode.window.activeTextEditor?.document.uri;
  if (uri === undefined) return;
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(stagePage(uri, stage)), { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true, preview: true });
}

async function checkWorkspace(client: BaseLanguageClient): Promise<void> {
  const answer = await client.sendRequest<CheckWorkspaceResult>(checkWorkspaceRequest, {});
  await vscode.commands.executeCommand('workbench.actions.view.problems');
  const counted = vscode.l10n.t('Linewright: {0} rigs checked, {1} errors, {2} warnings, {3} other findings', answer.files, answer.errors, answer.warnings, answer.others);
  if (answer.isCut) void vscode.window.showWarningMessage(vscode.l10n.t('{0}. The workspace holds more rigs, which were not read; `linewright check` reads all of them.', counted));
  else void vscode.window.setStatusBarMessage(counted, 10_000);
}

async function openRule(client: BaseLanguageClient, code: string | undefined): Promise<void> {
  const wanted = code ?? (await chooseRule(client));
  if (wanted === undefined) return;
  try {
    await vscode.commands.executeCommand('markdown.showPreview', rulePage(wanted));
  } catch {
    // An editor without the Markdown extension still has the text.
    await vscode.window.showTextDocument(rulePage(wanted), { preview: true });
  }
}

/** The language reference that is shipped with the extension, at a section. */
async function openReference(context: vscode.ExtensionContext, section: string | undefined): Promise<void> {
  const page = vscode.Uri.joinPath(context.extensionUri, 'docs', 'reference', 'language.md').with({ fragment: section ?? '' });
  try {
    await vscode.commands.executeCommand('markdown.showPreview', page);
  } catch {
    await vscode.window.showTextDocument(page.with({ fragment: '' }), { preview: true });
  }
}

async function chooseRule(client: BaseLanguageClient): Promise<string | undefined> {
  const { rules } = await client.sendRequest<RulesResult>(rulesRequest, {});
  const choice = await vscode.window.showQuickPick(
    rules.map(({ code, summary }) => ({ label: code, detail: summary })),
    { placeHolder: vscode.l10n.t('Rule to read about'), matchOnDetail: true },
  );
  return choice?.label;
}

export function addCommands(context: vscode.ExtensionContext, { client, log, restart }: CommandNeeds): void {
  const add = (name: string, run: (...given: never[]) => unknown): void => {
    context.subscriptions.push(
      vscode.commands.registerCommand(name, async (...given: never[]) => {
        try {
          return await run(...given);
        } catch (error) {
          log.error(`${name}: ${error instanceof Error ? error.message : String(error)}`);
          const showLog = vscode.l10n.t('Show the Log');
          const choice = await vscode.window.showErrorMessage(vscode.l10n.t('Linewright could not do that. The log says why.'), showLog);
          if (choice === showLog) log.show(true);
        }
      }),
    );
  };
  add(commands.restartServer, restart);
  add(commands.showLog, () => log.show(true));
  add(commands.openSample, () => openSample(context));
  add(commands.mendSample, () => mendSample(context));
  add(commands.showSheet, (rig?: vscode.Uri | string) => showSheet(rig));
  add(commands.showTokens, () => showStage('tokens'));
  add(commands.showTree, () => showStage('tree'));
  add(commands.showModel, () => showStage('model'));
  add(commands.checkWorkspace, () => checkWorkspace(client));
  add(commands.openReference, (section?: unknown) => openReference(context, typeof section === 'string' ? section : undefined));
  add(commands.openRule, (code?: unknown) => openRule(client, typeof code === 'string' ? code : undefined));
}
