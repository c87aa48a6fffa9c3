import { readdirSync, type Dirent } from 'node:fs';
import { join } from 'node:path';

/** Every file of these kinds under a folder, by absolute path, in an order that is the same on every machine. `cannot` is told each folder that cannot be read. */
export function findRigs(folder: string, cannot: (folder: string) => void, isWanted: (name: string) => boolean = (name) => name.endsWith('.rig')): string[] {
  const found: string[] = [];
  const folders = [folder];
  while (folders.length > 0) {
    const at = folders.pop()!;
    let entries: Dirent[];
    try {
      entries = readdirSync(at, { withFileTypes: true });
    } catch {
      cannot(at);
      continue;
    }
    for (const entry of entries) {
      if (entry.isDirectory()) {
        // Dot folders and installed packages hold other people's files. A link to a folder is not followed: it may lead in a circle.
        if (!entry.name.startsWith('.') && entry.name !== 'node_modules') folders.push(join(at, entry.name));
      } else if (isWanted(entry.name)) found.push(join(at, entry.name));
    }
  }
  return found.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
}
