/** Hands over to the language server. It reads `--stdio` by itself and ends the program when its editor does. */
export async function serve(): Promise<undefined> {
  const { serveStdio } = await import('../stdio.ts');
  serveStdio();
  return undefined;
}
