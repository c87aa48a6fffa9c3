import * as vscode from 'vscode';
import { CloseAction, ErrorAction, ErrorCodes, ResponseError, RevealOutputChannelOn, State, type BaseLanguageClient, type ErrorHandler, type LanguageClientOptions } from 'vscode-languageclient';
import { commands } from './command-names.ts';
import { addCommands } from './commands.ts';
import { addComparison } from './compare-with-commit.ts';
import { answerFileRequests } from './file-requests.ts';
import { addPages } from './pages.ts';
import { addPictures } from './pictures/panel.ts';
import type { InitializationOptions } from './protocol.ts';
import { addMarkdownPreview } from './markdown-preview.ts';
import { makeRestartPolicy, type RestartPolicy } from './restart-policy.ts';
import { startWhenNeeded } from './start-when-needed.ts';
import { addStatusItem } from './status-item.ts';
import { makeTraceChannel } from './trace-channel.ts';

/** No scheme: untitled rigs, the old side of a diff and folders on no disk are read too. */
const selector = [{ language: 'rig' }, { language: 'markdown' }];

/** What the editor's Markdown preview takes from an extension. */
export interface Exports {
  extendMarkdownIt<T>(md: T): T;
}

/** Desktop and browser differ only in how the server is reached. */
export type MakeClient = (context: vscode.ExtensionContext, options: LanguageClientOptions) => BaseLanguageClient;

export function activateLinewright(context: vscode.ExtensionContext, makeClient: MakeClient): Exports {
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
      if (isGone(error)) throw error;
      return false;
    },
    initializationOptions: { files: true } satisfies InitializationOptions,
    markdown: { isTrusted: { enabledCommands: [commands.openRule, commands.openReference, commands.showSheet, commands.openPictures] }, supportHtml: false },
  });
  logOnly(client);

  // A server that cannot start must not take the colours, the sample and the log down with it.
  let starting: Promise<void> | undefined;
  const start = (): Promise<void> => (starting ??= client.start().catch((error: unknown) => log.error(error instanceof Error ? error : String(error))));

  addStatusItem(context, client, [{ language: 'rig' }]);
  addPages(context, client);
  addPictures(context, client, log);
  addComparison(context, client, log);
  addCommands(context, { client, log, restart: restarter(client, policy, log) });
  context.subscriptions.push(...answerFileRequests(client), { dispose: () => void client.dispose().catch(() => undefined) });

  void startWhenNeeded(context, start);
  return addMarkdownPreview(context, client, start);
}

/** Restarts are quiet, because nothing that was typed is lost: the editor holds the text and sends it again. */
const errorHandler = (policy: RestartPolicy, log: vscode.LogOutputChannel): ErrorHandler => ({
  // A write that meets a server that just stopped fails before its end is known; to give up then would be to stop without a word.
  error: () => ({ action: ErrorAction.Continue, handled: true }),
  closed() {
    const restart = policy.mayRestart();
    if (!restart) void tellThatItStopped(log);
    return { action: restart ? CloseAction.Restart : CloseAction.DoNotRestart, handled: true };
  },
});

/**
 * Whether a server ended while it was being started, which its closed connection tells too and starts another for. The library
 * must not be asked to stop it then: it would stop the other one in its place, and take note of neither.
 */
const isGone = (error: unknown): boolean => !(error instanceof ResponseError) || error.code === ErrorCodes.PendingResponseRejected;

/** Asked for again while it is being done, it is done once: a client that is stopping cannot be started. */
function restarter(client: BaseLanguageClient, policy: RestartPolicy, log: vscode.LogOutputChannel): () => Promise<void> {
  let restarting: Promise<void> | undefined;
  const restart = async (): Promise<void> => {
    policy.forgive();
    // A server that hangs does not answer to being stopped; the library ends its process all the same.
    if (client.state === State.Running || client.state === State.Stopped) await client.stop().catch((error: unknown) => log.warn(String(error)));
    await client.start();
  };
  return () => (restarting ??= restart().finally(() => (restarting = undefined)));
}

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
