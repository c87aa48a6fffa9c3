import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { serveLanguage } from './language-server/serve.ts';

// The worker's own types would reach the files that run in Node, so only what is used here is named.
const port = globalThis as unknown as ConstructorParameters<typeof BrowserMessageReader>[0];

serveLanguage(createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port)), async () => ({ engine: await import('./language-server/engine.ts') }));
