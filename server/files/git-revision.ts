import { execFileSync } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { Project } from '../../src-core/project.ts';
import { decodeText, loadWanted, type RigText } from './load-project.ts';

/** The working folder of the repository around a folder; undefined outside of every one, and without git. */
export function repositoryOf(folder: string): string | undefined {
  try {
    return realpathSync(git(folder, ['rev-parse', '--show-toplevel']).toString('utf8').replace(/\r?\n$/, ''));
  } catch {
    return undefined;
  }
}

/** Runs git itself and nothing through a shell; what it says on standard error is for whoever catches. */
const git = (cwd: string, words: readonly string[], input?: string): Buffer => execFileSync('git', ['-c', 'core.quotePath=false', ...words], { cwd, input, maxBuffer: 2 ** 30, stdio: ['pipe', 'pipe', 'pipe'] });

/** What the working folder of a repository has that a revision has not. Paths are counted from its top. */
export interface Changes {
  /** Changed, added or taken away since. */
  differs(path: string): boolean;
  /** False for a file that nobody has put under version control, so that nothing is known of it. */
  isTracked(path: string): boolean;
}

/** The full name of the commit that somebody means; undefined when there is none. */
function commitOf(top: string, name: string): string | undefined {
  // A revision that looks like an option would be taken for one.
  if (name === '' || name.startsWith('-')) return undefined;
  try {
    return git(top, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`]).toString('utf8').trim();
  } catch {
    return undefined;
  }
}

/** What changed from a revision to the files as they now lie there; undefined when there is no such revision. */
export function changesSince(top: string, name: string): Changes | undefined {
  const commit = commitOf(top, name);
  if (commit === undefined) return undefined;
  const list = (words: readonly string[]): Set<string> => new Set(git(top, ['-c', 'core.fsmonitor=false', ...words]).toString('utf8').split('\0').filter((path) => path !== ''));
  const changed = list(['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', '--no-textconv', '--no-relative', commit, '--']);
  const tracked = list(['ls-files', '-z', '--full-name']);
  return { differs: (path) => changed.has(path), isTracked: (path) => tracked.has(path) };
}

/** The files of a repository as they were at a revision: by path from its top. Undefined when there is no such revision. */
export class Revision {
  readonly #top: string;
  readonly #blobs = new Map<string, string>();
  readonly #texts = new Map<string, RigText>();

  private constructor(top: string) {
    this.#top = top;
  }

  static open(top: string, name: string): Revision | undefined {
    const commit = commitOf(top, name);
    if (commit === undefined) return undefined;
    const revision = new Revision(top);
    try {
      for (const entry of git(top, ['ls-tree', '-r', '-z', commit]).toString('utf8').split('\0')) {
        const match = /^(\d+) (\w+) ([0-9a-f]+)\t(.+)$/s.exec(entry);
        // A link holds the path of another file, which may lead anywhere.
        if (match !== null && match[2] === 'blob' && match[1] !== '120000') revision.#blobs.set(match[4]!, match[3]!);
      }
    } catch {
      return undefined;
    }
    return revision;
  }

  /** Paths of files at or below a path. */
  below(path: string): string[] {
    return [...this.#blobs.keys()].filter((p) => path === '' || p === path || p.startsWith(`${path}/`));
  }

  read(path: string): RigText {
    const known = this.#texts.get(path);
    if (known !== undefined) return known;
    const blob = this.#blobs.get(path);
    let found: RigText = { absent: this.below(path).length > 0 ? 'a-folder' : 'missing' };
    if (blob !== undefined) {
      // As it is stored: no filter of the repository's configuration is run.
      const text = decodeText(git(this.#top, ['cat-file', 'blob', blob]));
      found = text === undefined ? { absent: 'not-text' } : { text };
    }
    this.#texts.set(path, found);
    return found;
  }

  /** A project of some of its files with all that they use. */
  project(paths: readonly string[]): Project {
    const project = new Project();
    for (const path of paths) {
      const read = this.read(path);
      if ('text' in read) project.set(path, read.text);
    }
    loadWanted(project, '', (_root, path) => this.read(path));
    return project;
  }
}
