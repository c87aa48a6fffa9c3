import * as vscode from 'vscode';
import { serverTrace } from './settings.ts';

/**
 * The client library traces only while its channel's log level is Trace, which a person would have to set by hand in a second place.
 * This channel takes its level from `linewright.trace.server` instead, so that the one setting is enough; it is made when first written to.
 */
export function makeTraceChannel(context: vscode.ExtensionContext): vscode.LogOutputChannel {
  const name = vscode.l10n.t('Linewright Trace');
  let made: vscode.LogOutputChannel | undefined;
  const channel = (): vscode.LogOutputChannel => {
    if (made === undefined) {
      made = vscode.window.createOutputChannel(name, { log: true });
      context.subscriptions.push(made);
    }
    return made;
  };
  const level = (): vscode.LogLevel => (serverTrace() === 'off' ? vscode.LogLevel.Info : vscode.LogLevel.Trace);
  const changed = new vscode.EventEmitter<vscode.LogLevel>();
  context.subscriptions.push(
    changed,
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration('linewright.trace')) changed.fire(level());
    }),
  );
  return {
    name,
    get logLevel() {
      return level();
    },
    onDidChangeLogLevel: changed.event,
    trace: (message) => channel().info(message),
    debug: (message) => channel().info(message),
    info: (message) => channel().info(message),
    warn: (message) => channel().warn(message),
    error: (error) => channel().error(error),
    append: (value) => channel().append(value),
    appendLine: (value) => channel().appendLine(value),
    replace: (value) => channel().replace(value),
    clear: () => made?.clear(),
    show: () => channel().show(true),
    hide: () => made?.hide(),
    dispose: () => made?.dispose(),
  };
}
