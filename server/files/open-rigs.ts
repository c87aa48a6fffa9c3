import { existsSync, realpathSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { Project, type Absence } from '../../src-core/project.ts';
import { isMarkdownPath, rigFences } from '../../src-core/ide/markdown-fences.ts';
import { findRigs } from './find-rigs.ts';
import { isInside, loadWanted, lookAt, projectPath, readInside, rigOf, wholeText, type Keep } from './load-project.ts';

/** A workspace folder with the rigs that were asked for, and what they use. */
export interface OpenFolder {
  /** Real path. */
  readonly root: string;
  readonly project: Project;
  /** Paths in the project of the files that were asked for. */
  readonly asked: readonly string[];
  /** How a file is called towards the person who asked. */
  called(path: string): string;
}

export interface OpenedRigs {
  readonly folders: readonly OpenFolder[];
  /** What could not be read, a sentence each. */
  readonly problems: readonly { readonly path: string; readonly says: string }[];
}

export const absenceSays: Record<Absence, string> = {
  missing: 'is not there',
  unreadable: 'cannot be read',
  'not-text': 'is not text in UTF-8',
  'too-large': 'is too large to be read',
  'a-folder': 'is a folder',
  outside: 'leads out of the workspace folder',
};

/**
 * The workspace folder of a path: the given one, or the folder we stand in, when the path lies inside it; otherwise the
 * nearest folder above it that is under version control, or its own.
 */
function rootOf(real: string, isFolder: boolean, cwd: string, given: string | undefined): string | undefined {
  if (given !== undefined) return isInside(given, real) ? given : undefined;
  if (isInside(cwd, real)) return cwd;
  const own = isFolder ? real : dirname(real);
  for (let at = own; ; at = dirname(at)) {
    if (existsSync(join(at, '.git'))) return at;
    if (dirname(at) === at) return own;
  }
}

/** How files of a workspace folder are called towards a person who stands in another: from there when they lie below it. */
export const calledFrom = (cwd: string, root: string) => (path: string): string => {
  const full = join(root, ...path.split('/'));
  return isInside(cwd, full) ? relative(cwd, full).split(sep).join('/') : full;
};

export interface Where {
  readonly cwd: string;
  readonly root?: string | undefined;
  readonly markdown?: boolean;
  /** Documents count that hold no rig fence, as what they were or will be. */
  readonly fenceless?: boolean;
}

/** Reads the named rigs, every rig under the named folders, and what all of them use. `keep` says what of each text is needed. */
export function openRigs(paths: readonly string[], where: Where, keep: Keep = wholeText): OpenedRigs {
  const cwd = realpathSync(where.cwd);
  const given = where.root === undefined ? undefined : realpathSync(resolve(cwd, where.root));
  const problems: { path: string; says: string }[] = [];
  /** What was looked at, by its full path: whatever is named twice counts once. */
  const seen = new Set<string>();
  const isNew = (full: string): boolean => !seen.has(full) && seen.add(full) !== undefined;
  const open = new Map<string, { project: Project; asked: Set<string> }>();
  const called = (root: string) => calledFrom(cwd, root);
  const take = (root: string, file: string, name: string, isNamed: boolean): void => {
    if (!isNew(file)) return;
    const path = projectPath(root, file);
    const folder = open.get(root) ?? { project: new Project(), asked: new Set<string>() };
    const read = readInside(root, path);
    if ('absent' in read) {
      problems.push({ path: name, says: absenceSays[read.absent] });
      return;
    }
    // Of the documents in a folder only those count that hold a rig.
    if (isMarkdownPath(path) && where.fenceless !== true && rigFences(read.text).length === 0) {
      if (isNamed) problems.push({ path: name, says: 'holds no rig fence' });
      return;
    }
    folder.project.set(path, keep(rigOf(path, read.text)));
    folder.asked.add(path);
    open.set(root, folder);
  };
  for (const path of paths) {
    const found = lookAt(resolve(cwd, path));
    if ('absent' in found) {
      if (isNew(resolve(cwd, path))) problems.push({ path, says: absenceSays[found.absent] });
      continue;
    }
    const { real, isFolder } = found;
    const root = rootOf(real, isFolder, cwd, given);
    if (root === undefined) {
      if (isNew(real)) problems.push({ path, says: `lies outside of ${where.root!}` });
      continue;
    }
    if (!isFolder) {
      take(root, real, path, true);
      continue;
    }
    if (!isNew(real)) continue;
    let unread = false;
    const cannot = (folder: string): void => {
      unread = true;
      if (isNew(join(folder, sep))) problems.push({ path: folder === real ? path : called(root)(projectPath(root, folder)), says: absenceSays.unreadable });
    };
    const rigs = findRigs(real, cannot, (name) => name.endsWith('.rig') || (where.markdown === true && isMarkdownPath(name)));
    if (rigs.length === 0 && !unread) problems.push({ path, says: 'holds no rig files' });
    for (const rig of rigs) take(root, rig, called(root)(projectPath(root, rig)), false);
  }
  const folders = [...open].map(([root, { project, asked }]): OpenFolder => {
    loadWanted(project, root, readInside, keep);
    return { root, project, asked: [...asked], called: called(root) };
  });
  return { folders, problems };
}
