import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { resolve, sep } from 'node:path';

const types: Readonly<Record<string, string>> = { js: 'text/javascript', json: 'application/json', svg: 'image/svg+xml' };

/** Serves the files of one folder under `/extension`, on this machine only. */
export async function serveFolder(folder: string): Promise<{ readonly port: number; readonly close: () => void }> {
  const server = createServer(async (request, answer) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname).replace(/^\/extension/, '.');
    const file = resolve(folder, path);
    const bytes = file.startsWith(folder + sep) ? await readFile(file).catch(() => undefined) : undefined;
    if (bytes === undefined) answer.writeHead(404).end();
    else answer.writeHead(200, { 'content-type': types[file.split('.').at(-1)!] ?? 'application/octet-stream' }).end(bytes);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('no port to serve the extension on');
  return { port: address.port, close: () => server.close() };
}
