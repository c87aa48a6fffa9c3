import { Refusal } from './io.ts';
import type { Words } from './options.ts';

/** Hands over to the language server, which ends the program when its editor does. */
export async function serve(words: Words): Promise<undefined> {
  if (words.option('stdio') === undefined || words.rest.length > 0) throw new Refusal('an editor starts this as linewright serve --stdio');
  const { serveStdio } = await import('../stdio.ts');
  serveStdio();
  return undefined;
}
