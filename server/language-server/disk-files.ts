import { readdirSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isMarkdownPath } from '../../src-core/ide/markdown-fences.ts';
import { readInside } from '../files/load-project.ts';
import type { FolderFiles, Listed, Wanted } from './folder-files.ts';

/** A folder with more rigs than this is not read whole. */
const mostFiles = 5000;
const mostFolders = 20_000;

/** Files of a folder on this machine's disk. */
export function diskFiles(folderUri: string, most = mostFiles): FolderFiles | undefined {
  let root: string;
  try {
    root = realpathSync(fileURLToPath(folderUri));
  } catch {
    return undefined;
  }
  return { read: async (path) => readInside(root, path), list: async (wanted) => listFiles(root, isOf[wanted], most) };
}

const isOf: Readonly<Record<Wanted, (name: string) => boolean>> = { rigs: (name) => name.endsWith('.rig'), documents: isMarkdownPath };

/** What the command line would find here, as much as an editor can hold; what cannot be read is passed over. */
function listFiles(root: string, isWanted: (name: string) => boolean, most: number): Listed {
  const found: string[] = [];
  const waiting = [''];
  for (let visited = 0; visited < mostFolders && waiting.length > 0 && found.length < most; visited++) {
    const folder = waiting.shift()!;
    let entries;
    try {
      entries = readdirSync(join(root, folder), { withFileTypes: true });
    } catch {
      continue;
    }
    for (const entry of entries) {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (!entry.isDirectory()) {
        if (isWanted(entry.name)) found.push(path);
      } else if (!entry.name.startsWith('.') && entry.name !== 'node_modules') waiting.push(path);
    }
  }
  return { paths: found.sort(), isCut: waiting.length > 0 };
}
