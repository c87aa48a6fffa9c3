import './no-parent-watch.ts';
import { createConnection, StreamMessageReader, StreamMessageWriter, type DataCallback, type Disposable } from 'vscode-languageserver/node';
import { serveLanguage } from './language-server/serve.ts';

interface Received {
  readonly method?: string;
  readonly params?: { processId?: unknown };
}

let shutDown = false;

/** The same request to the library for editors that say their process in the first message. */
class Input extends StreamMessageReader {
  override listen(take: DataCallback): Disposable {
    return super.listen((message) => {
      const { method, params } = message as Received;
      if (method === 'initialize' && typeof params === 'object') params.processId = null;
      if (method === 'shutdown') shutDown = true;
      take(message);
    });
  }
}

/** Serves the editor at the other end of the standard streams, whatever the command line says. */
export function serveStdio(): void {
  // Without an editor there is nobody to serve. One that asked for the end before ended well.
  for (const event of ['end', 'close']) process.stdin.on(event, () => process.exit(shutDown ? 0 : 1));
  serveLanguage(createConnection(new Input(process.stdin), new StreamMessageWriter(process.stdout)), async () => {
    const engine = await import('./language-server/engine.ts');
    const { diskFiles } = await import('./language-server/disk-files.ts');
    return { engine, disk: diskFiles };
  });
}
