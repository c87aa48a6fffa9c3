import { readdirSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readInside } from '../files/load-project.ts';
import type { FolderFiles } from './folder-files.ts';

/** A folder with more rigs than this is not read whole. */
const mostFiles = 5000;
const mostFolders = 20_000;

/** Files of a folder on this machine's disk. */
export function diskFiles(folderUri: string): FolderFiles | undefined {
  let root: string;
  try {
    root = realpathSync(fileURLToPath(folderUri));
  } catch {
    return undefined;
  }
  return { read: async (path) => readInside(root, path), list: async () => listRigs(root) };
}

/** Rig files below a folder, links to folders not followed; what begins with a dot and what package managers fill is passed over. */
function listRigs(root: string): string[] {
  const found: string[] = [];
  const waiting = [''];
  for (let visited = 0; visited < mostFolders && waiting.length > 0 && found.length < mostFiles; visited++) {
    const folder = waiting.shift()!;
    let entries;
    try {
      entries = readdirSync(join(root, folder), { withFileTypes: true });
    } catch {
      continue;
    }
    for (const entry of entries) {
      if (entry.name.startsWith('.') || entry.name === 'node_modules') continue;
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) waiting.push(path);
      else if (entry.name.endsWith('.rig')) found.push(path);
    }
  }
  return found.sort();
}
