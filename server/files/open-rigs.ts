import { existsSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { Project, type Absence } from '../../src-core/project.ts';
import { isMarkdownPath, rigFences } from '../../src-core/ide/markdown-fences.ts';
import { findRigs } from './find-rigs.ts';
import { isInside, loadWanted, projectPath, readInside, rigOf, wholeText, type Keep } from './load-project.ts';

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
}

/** Reads the named rigs, every rig under the named folders, and what all of them use. `keep` says what of each text is needed. */
export function openRigs(paths: readonly string[], where: Where, keep: Keep = wholeText): OpenedRigs {
  const cwd = realpathSync(where.cwd);
  const given = where.root === undefined ? undefined : realpathSync(resolve(cwd, where.root));
  const problems: { path: string; says: string }[] = [];
  const open = new Map<string, { project: Project; asked: Set<string> }>();
  const called = (root: string) => calledFrom(cwd, root);
  const take = (root: string, file: string, name: string, isNamed: boolean): void => {
    const path = projectPath(root, file);
    const folder = open.get(root) ?? { project: new Project(), asked: new Set<string>() };
    if (folder.asked.has(path)) return;
    const read = readInside(root, path);
    if ('absent' in read) {
      problems.push({ path: name, says: absenceSays[read.absent] });
      return;
    }
    // Of the documents in a folder only those count that hold a rig; one that is named is read whatever it holds.
    if (!isNamed && isMarkdownPath(path) && rigFences(read.text).length === 0) return;
    folder.project.set(path, keep(rigOf(path, read.text)));
    folder.asked.add(path);
    open.set(root, folder);
  };
  for (const path of paths) {
    let real: string;
    let isFolder: boolean;
    try {
      real = realpathSync(resolve(cwd, path));
      isFolder = statSync(real).isDirectory();
    } catch (error) {
      problems.push({ path, says: absenceSays[['ENOENT', 'ENOTDIR'].includes(String((error as { code?: unknown }).code)) ? 'missing' : 'unreadable'] });
      continue;
    }
    const root = rootOf(real, isFolder, cwd, given);
    if (root === undefined) {
      problems.push({ path, says: `lies outside of ${where.root!}` });
      continue;
    }
    if (!isFolder) {
      take(root, real, path, true);
      continue;
    }
    let rigs: string[];
    try {
      rigs = findRigs(real, (name) => name.endsWith('.rig') || (where.markdown === true && isMarkdownPath(name)));
    } catch {
      problems.push({ path, says: absenceSays.unreadable });
      continue;
    }
    if (rigs.length === 0) problems.push({ path, says: 'holds no rig files' });
    for (const rig of rigs) take(root, rig, called(root)(projectPath(root, rig)), false);
  }
  const folders = [...open].map(([root, { project, asked }]): OpenFolder => {
    loadWanted(project, root, readInside, keep);
    return { root, project, asked: [...asked], called: called(root) };
  });
  return { folders, problems };
}
