import { execFileSync } from 'node:child_process';
import { realpathSync } from 'node:fs';
import { isAbsolute } from 'node:path';
import { Project, type Absence } from '../../src-core/project.ts';
import { Refusal } from './refusal.ts';
import { decodeText, loadWanted, rigOf, type RigText } from './load-project.ts';

const topOf = (folder: string): string => realpathSync(git(folder, ['rev-parse', '--show-toplevel']).toString('utf8').replace(/\r?\n$/, ''));

/** The working folder of the repository around a folder; undefined outside of every one, and without git. */
export function repositoryOf(folder: string): string | undefined {
  try {
    return topOf(folder);
  } catch {
    return undefined;
  }
}

/** The same where nothing can be done without one: `what` is refused, with the reason when git has another than that there is none. */
export function neededRepository(folder: string, what: string): string {
  try {
    return topOf(folder);
  } catch (error) {
    const why = error instanceof Refusal ? (error.help ?? error.message) : undefined;
    throw new Refusal(`${what} is under no version control that \`git\` knows of`, why?.includes('not a git repository') === true ? undefined : why);
  }
}

/** Runs git itself and nothing through a shell. Where it fails, its own reason is told. */
function git(cwd: string, words: readonly string[]): Buffer {
  try {
    return execFileSync('git', ['-c', 'core.quotePath=false', ...words], { cwd, env: { ...process.env, LC_ALL: 'C' }, maxBuffer: 2 ** 30, stdio: ['pipe', 'pipe', 'pipe'] });
  } catch (error) {
    const said = String((error as { stderr?: unknown }).stderr ?? '').split('\n').map((line) => /^(?:fatal|error): (.+)$/.exec(line)?.[1]).find((line) => line !== undefined);
    throw said === undefined ? new Refusal('`git` cannot be run here') : new Refusal('`git` could not do its part', `it says: ${said}`);
  }
}

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

/** A path that takes more links than this leads round in a circle: as the system counts. */
const mostLinks = 40;

/** The files of a repository as they were at a revision: by path from its top. Undefined when there is no such revision. */
export class Revision {
  readonly #top: string;
  readonly #blobs = new Map<string, string>();
  readonly #links = new Map<string, string>();
  readonly #texts = new Map<string, RigText>();

  private constructor(top: string) {
    this.#top = top;
  }

  static open(top: string, name: string): Revision | undefined {
    const commit = commitOf(top, name);
    if (commit === undefined) return undefined;
    const revision = new Revision(top);
    for (const entry of git(top, ['ls-tree', '-r', '-z', commit]).toString('utf8').split('\0')) {
      const match = /^(\d+) (\w+) ([0-9a-f]+)\t(.+)$/s.exec(entry);
      if (match?.[2] === 'blob') (match[1] === '120000' ? revision.#links : revision.#blobs).set(match[4]!, match[3]!);
    }
    return revision;
  }

  /** Paths of files, and of links, at or below a path. */
  below(path: string): string[] {
    return [...this.#blobs.keys(), ...this.#links.keys()].filter((p) => path === '' || p === path || p.startsWith(`${path}/`));
  }

  /** Where a path leads by the links of the revision, or why it leads to no place in it. */
  real(path: string): { readonly real: string } | { readonly absent: Absence } {
    const at: string[] = [];
    const left = path.split('/').reverse();
    for (let followed = 0; left.length > 0; ) {
      const name = left.pop()!;
      if (name === '..' && at.pop() === undefined) return { absent: 'outside' };
      if (name === '..' || name === '.' || name === '') continue;
      at.push(name);
      const link = this.#links.get(at.join('/'));
      if (link === undefined) continue;
      const target = this.#blob(link).toString('utf8');
      if (isAbsolute(target)) return { absent: 'outside' };
      if (mostLinks < ++followed) return { absent: 'unreadable' };
      at.pop();
      left.push(...target.split('/').reverse());
    }
    return { real: at.join('/') };
  }

  /** As it is stored: no filter of the repository's configuration is run. */
  #blob(name: string): Buffer {
    return git(this.#top, ['cat-file', 'blob', name]);
  }

  read(path: string): RigText {
    const known = this.#texts.get(path);
    if (known !== undefined) return known;
    const found = this.#read(path);
    this.#texts.set(path, found);
    return found;
  }

  #read(path: string): RigText {
    const found = this.real(path);
    if ('absent' in found) return found;
    const blob = this.#blobs.get(found.real);
    if (blob === undefined) return { absent: this.below(found.real).length > 0 ? 'a-folder' : 'missing' };
    const text = decodeText(this.#blob(blob));
    return text === undefined ? { absent: 'not-text' } : { text };
  }

  /** A project of some of its files with all that they use. */
  project(paths: readonly string[]): Project {
    const project = new Project();
    for (const path of paths) {
      const read = this.read(path);
      if ('text' in read) project.set(path, rigOf(path, read.text));
    }
    loadWanted(project, '', (_root, path) => this.read(path));
    return project;
  }
}
