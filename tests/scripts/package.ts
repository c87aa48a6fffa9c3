// Packs dist/linewright.vsix: the same sources give the same bytes. A test holds the list of its files and how large it may be.
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { packExtension } from './pack-extension.ts';
import { root } from './run.ts';

const { bytes, files } = await packExtension(join(root, 'dist'));
for (const file of files) console.log(`  ${file}`);
console.log(`${files.length} files, ${(bytes.length / 1000).toFixed(0)} kB, sha256 ${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}`);
