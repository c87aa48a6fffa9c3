import { loadEngine } from './compiled-code.ts';

void loadEngine('server', true)
  .languageServer()
  .then((serveStdio) => serveStdio());
