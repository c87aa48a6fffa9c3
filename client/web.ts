import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient, type MessageTransports } from 'vscode-languageclient/browser';
import { activateLinewright, type Exports } from './extension.ts';

// The browser's own types would also reach the files that run in Node, so only what is used here is named.
type ServerWorker = Worker & { terminate(): void };
interface BrowserGlobals {
  readonly Worker: new (script: string, options: { readonly name: string }) => ServerWorker;
}

export function activate(context: vscode.ExtensionContext): Exports {
  return activateLinewright(context, ({ extensionUri, subscriptions }, options) => {
    const script = vscode.Uri.joinPath(extensionUri, 'dist', 'server-web.js').toString(true);
    let worker: ServerWorker | undefined;
    subscriptions.push({ dispose: () => worker?.terminate() });
    // A fresh worker for every start: one cannot be started twice, and the old one would go on holding its memory. Its two ends are
    // handed over rather than itself, since the editor's own `Worker` makes objects that the library does not take for workers.
    const connect = async (): Promise<MessageTransports> => {
      worker?.terminate();
      worker = new (globalThis as unknown as BrowserGlobals).Worker(script, { name: 'Linewright server' });
      return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) };
    };
    return new LanguageClient('linewright', 'Linewright', connect, options);
  });
}
