import { ResponseError, type CancellationToken, type Connection, type InitializeError, type InitializeParams } from 'vscode-languageserver';
import { behind } from './breath.ts';
import { readSkills, serverCapabilities } from './capabilities.ts';
import type { OpenFolder } from './folder-files.ts';
import type { LanguageServer } from './language-server.ts';
import { recordsIn, wrongFolders } from './params.ts';

type Engine = typeof import('./engine.ts');

/** Everything that knows the trade, and the way to this machine's disk where there is one. */
export type LoadEngine = () => Promise<{ readonly engine: Engine; readonly disk?: OpenFolder | undefined }>;

/** When the first document was looked at, what answers questions is loaded before one is asked. */
const warmAfter_ms = 50;

/** The protocol's numbers. */
const codes = {
  invalidRequest: -32600,
  invalidParams: -32602,
  notInitialized: -32002,
  cancelled: -32800,
  /** A request that is understood and cannot be done. */
  failed: -32803,
} as const;

/** Requests and the answer to give when one makes no sense. */
const fallbacks: Readonly<Record<string, unknown>> = {
  'textDocument/hover': null,
  'textDocument/completion': null,
  'completionItem/resolve': undefined,
  'textDocument/signatureHelp': null,
  'textDocument/definition': null,
  'textDocument/references': [],
  'textDocument/documentHighlight': [],
  'textDocument/documentSymbol': [],
  'workspace/symbol': [],
  'textDocument/documentLink': [],
  'textDocument/formatting': [],
  'textDocument/rangeFormatting': [],
  'textDocument/onTypeFormatting': [],
  'textDocument/codeLens': [],
  'textDocument/prepareRename': null,
  'textDocument/rename': null,
  'textDocument/codeAction': [],
  'textDocument/foldingRange': [],
  'textDocument/selectionRange': null,
  'textDocument/inlayHint': [],
  'textDocument/prepareCallHierarchy': null,
  'callHierarchy/incomingCalls': [],
  'callHierarchy/outgoingCalls': [],
  'workspace/willRenameFiles': null,
  'textDocument/semanticTokens/full': null,
  'textDocument/semanticTokens/full/delta': null,
  'textDocument/semanticTokens/range': null,
  'linewright/sheet': { text: '' },
  'linewright/sheetOfTexts': { text: '', wants: [] },
  'linewright/pictures': { pictures: [], leftOut: 0, broken: [] },
  'linewright/fences': { fences: [] },
  'linewright/explain': { markdown: '' },
  'linewright/rules': { rules: [] },
  'linewright/checkWorkspace': { files: 0, errors: 0, warnings: 0, others: 0, isCut: false },
};

/**
 * Answers a language client. Only what the first answer needs is loaded before it; everything that knows the trade
 * comes behind it, while the editor reads what this server can do.
 */
export function serveLanguage(connection: Connection, load: LoadEngine): void {
  let params: InitializeParams | undefined;
  let loaded: Promise<{ engine: Engine; server: LanguageServer }> | undefined;
  let running: LanguageServer | undefined;
  let warmed = false;
  let isOver = false;
  /** Notifications that wait for the engine. */
  let waiting = 0;

  const start = (): Promise<{ engine: Engine; server: LanguageServer }> => {
    loaded ??= load().then(({ engine, disk }) => {
      running = new engine.LanguageServer(connection, params!, disk);
      return { engine, server: running };
    });
    return loaded;
  };

  const complain = (what: string, error: unknown): void => connection.console.error(`${what}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);

  connection.onInitialize((given) => {
    if (params !== undefined) return new ResponseError(codes.invalidRequest, 'the session has begun already') as ResponseError<InitializeError>;
    const wrong = wrongFolders(given.workspaceFolders);
    if (wrong !== undefined) return new ResponseError(codes.invalidParams, wrong) as ResponseError<InitializeError>;
    params = given;
    // The library has put a handler of its own before this one meanwhile.
    on('workspace/didChangeWorkspaceFolders', (server, changed) => server.foldersChanged(changed));
    // Behind the answer: the editor reads it meanwhile.
    behind(() => void start().catch(() => undefined));
    return { capabilities: serverCapabilities(readSkills(given)), serverInfo: { name: 'linewright' } };
  });

  /** Notifications are taken in the order in which they came, before and after the engine is there; those outside the session are not. */
  const on = (method: string, take: (server: LanguageServer, given: never) => unknown): void => {
    connection.onNotification(method, (given: unknown) => {
      if (params === undefined || isOver) return;
      const failed = (error: unknown): void => complain(method, error);
      if (waiting === 0 && running !== undefined) {
        try {
          const taken = take(running, (given ?? {}) as never);
          if (taken instanceof Promise) taken.catch(failed);
        } catch (error) {
          failed(error);
        }
        return;
      }
      waiting++;
      void start()
        .then(({ server }) => take(server, (given ?? {}) as never))
        .catch(failed)
        .finally(() => waiting--);
    });
  };

  on('initialized', (server) => server.register());
  on('textDocument/didOpen', (server, given) => {
    server.opened(given);
    if (warmed) return;
    warmed = true;
    setTimeout(() => void start().then(({ engine }) => engine.requests()).catch(() => undefined), warmAfter_ms);
  });
  on('textDocument/didChange', (server, given) => server.edited(given));
  on('textDocument/didClose', (server, given) => server.closed(given));
  on('workspace/didChangeWatchedFiles', (server, given) => server.filesChanged(given));
  on('workspace/didChangeConfiguration', (server, given) => server.settingsChanged(given));

  const answer = (method: string, fallback: unknown, make: (ready: { engine: Engine; server: LanguageServer }, given: never, token: CancellationToken) => unknown): void => {
    // The token comes last, behind whatever the request has of parameters.
    connection.onRequest(method, async (...said: unknown[]) => {
      const token = said.at(-1) as CancellationToken;
      const given = said.length > 1 ? said[0] : undefined;
      if (params === undefined) return new ResponseError(codes.notInitialized, 'the session has not begun: `initialize` comes first');
      if (isOver) return new ResponseError(codes.invalidRequest, 'the session is over: `shutdown` was asked for');
      const cancelled = (): ResponseError<void> => new ResponseError(codes.cancelled, 'cancelled');
      const ready = await start();
      if (token.isCancellationRequested) return cancelled();
      try {
        const made = await make(ready, (given ?? {}) as never, token);
        // What was left off in the middle is not taken for nothing found.
        return token.isCancellationRequested ? cancelled() : made;
      } catch (error) {
        // Known by its name: what was loaded later may not share its classes with this file.
        if (error instanceof Error && error.name === 'RequestRefused') return new ResponseError(codes.failed, error.message);
        complain(method, error);
        return fallback === undefined ? given : fallback;
      }
    });
  };

  for (const [method, fallback] of Object.entries(fallbacks)) answer(method, fallback, async ({ engine, server }, given, token) => (await engine.requests())[method]!(server, given, token));

  answer('textDocument/diagnostic', { kind: 'full', items: [] }, ({ server }, given: { textDocument?: { uri?: unknown }; previousResultId?: unknown }) => {
    const uri = given.textDocument?.uri;
    const before = typeof given.previousResultId === 'string' ? given.previousResultId : undefined;
    return typeof uri === 'string' ? server.diagnostics.pull(uri, before) : { kind: 'full', items: [] };
  });
  answer('workspace/diagnostic', { items: [] }, ({ server }, given: { previousResultIds?: unknown }, token) =>
    server.diagnostics.pullWorkspace(new Map(recordsIn(given.previousResultIds).flatMap(({ uri, value }) => (typeof uri === 'string' && typeof value === 'string' ? [[uri, value]] : []))), token),
  );

  connection.onShutdown(() => {
    isOver = true;
    running?.diagnostics.stop();
  });
  connection.listen();
}
