import { createConnection } from 'vscode-languageserver/node';
import { serveLanguage } from './language-server/serve.ts';

// Whatever the command line says, this program speaks over its standard streams.
serveLanguage(createConnection(process.stdin, process.stdout), async () => {
  const { languageEngine, diskFolder } = await import('./node-engine.ts');
  return { engine: await languageEngine(), disk: await diskFolder() };
});
