import * as vscode from 'vscode';
import { CloseAction, ErrorAction, RevealOutputChannelOn, type BaseLanguageClient, type ErrorHandler, type LanguageClientOptions } from 'vscode-languageclient';
import { commands } from './command-names.ts';
import { addCommands } from './commands.ts';
import { answerFileRequests } from './file-requests.ts';
import { addPages } from './pages.ts';
import type { InitializationOptions } from './protocol.ts';
import { makeRestartPolicy, type RestartPolicy } from './restart-policy.ts';
import { addStatusItem } from './status-item.ts';
import { makeTraceChannel } from './trace-channel.ts';

/** No scheme: untitled rigs, the old side of a diff and folders on no disk are read too. */
const selector = [{ language: 'rig' }];

/** Desktop and browser differ only in how the server is reached. */
export type MakeClient = (context: vscode.ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export async function activateLinewright(context: vscode.ExtensionContext, makeClient: MakeClient): Promise<void> {
  const log = vscode.window.createOutputChannel('Linewright', { log: true });
  context.subscriptions.push(log);

  const policy = makeRestartPolicy(Date.now);
  const client = makeClient(context, {
    documentSelector: selector,
    outputChannel: log,
    traceOutputChannel: makeTraceChannel(context),
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    errorHandler: errorHandler(policy, log),
    initializationFailedHandler: (error) => {
      log.error(error instanceof Error ? error : String(error));
      return false;
    },
    initializationOptions: { files: true } satisfies InitializationOptions,
    markdown: { isTrusted: { enabledCommands: [commands.openRule, commands.showSheet] }, supportHtml: false },
  });
  logOnly(client);

  addStatusItem(context, client, selector);
  addPages(context, client);
  addCommands(context, {
    client,
    log,
    restart: async () => {
      policy.forgive();
      if (client.isRunning()) await client.stop();
      await client.start();
    },
  });
  context.subscriptions.push(...answerFileRequests(client), { dispose: () => void client.dispose().catch(() => undefined) });

  // A server that cannot start must not take the colours, the sample and the log down with it.
  await client.start().catch((error: unknown) => log.error(error instanceof Error ? error : String(error)));
}

/** Restarts are quiet, because nothing that was typed is lost: the editor holds the text and sends it again. */
const errorHandler = (policy: RestartPolicy, log: vscode.LogOutputChannel): ErrorHandler => ({
  error: (_error, _message, count) => ({ action: count !== undefined && count <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown, handled: true }),
  closed() {
    const restart = policy.mayRestart();
    if (!restart) void tellThatItStopped(log);
    return { action: restart ? CloseAction.Restart : CloseAction.DoNotRestart, handled: true };
  },
});

/** The library shows a message for each failed step of a restart; those go to the log, and a person reads one message at most. */
function logOnly(client: BaseLanguageClient): void {
  const write = client.error.bind(client);
  client.error = (message, data) => write(message, data, false);
}

async function tellThatItStopped(log: vscode.LogOutputChannel): Promise<void> {
  const showLog = vscode.l10n.t('Show the Log');
  const restart = vscode.l10n.t('Restart');
  const choice = await vscode.window.showErrorMessage(
    vscode.l10n.t('The Linewright server stopped five times within three minutes and stays stopped. Rigs keep their colours but are not judged.'),
    showLog,
    restart,
  );
  if (choice === showLog) log.show(true);
  if (choice === restart) await vscode.commands.executeCommand(commands.restartServer);
}
