import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Refusal } from './io.ts';

/**
 * Hands over to the language server. It is the very file that editors start, which lies beside this one, so that no
 * other command has to carry it. It reads `--stdio` by itself and ends the program when its editor does.
 */
export async function serve(): Promise<undefined> {
  const server = join(__dirname, 'server.cjs');
  if (!existsSync(server)) throw new Refusal('the language server, server.cjs, is not beside this file', 'install the whole package');
  await import(pathToFileURL(server).href);
  return undefined;
}
