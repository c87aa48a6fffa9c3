// Writes the files that are made from others. `--check` writes nothing and fails when one is stale.
import { readFile, writeFile } from 'node:fs/promises';
import { generatedFiles } from './generated-files.ts';

const check = process.argv.includes('--check');
let stale = 0;
for (const [path, bytes] of await generatedFiles()) {
  const url = new URL(`../../${path}`, import.meta.url);
  const before = await readFile(url).catch(() => undefined);
  if (before !== undefined && before.equals(bytes)) continue;
  stale += 1;
  if (check) console.log(`stale: ${path}`);
  else {
    await writeFile(url, bytes);
    console.log(`written: ${path}`);
  }
}
if (check && stale > 0) {
  console.log('run: npm run generate');
  process.exitCode = 1;
}
