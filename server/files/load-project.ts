import { constants } from 'node:buffer';
import { readFileSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, join, relative, sep } from 'node:path';
import { isMarkdownPath, rigTextOf } from '../../src-core/ide/markdown-fences.ts';
import { Project, type Absence } from '../../src-core/project.ts';

/** Text of a file, or why there is none. */
export type RigText = { readonly text: string } | { readonly absent: Absence };

/** The text of bytes in UTF-8, a byte order mark left out; undefined when they are anything else. */
export function decodeText(bytes: Uint8Array): string | undefined {
  // UTF-16 without its mark passes for UTF-8, and no text holds this byte.
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** True when a real path is a folder's own or lies below it. */
export function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way === '' || (way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way));
}

/** The path of a real file as a project knows it: from the workspace folder, with `/` between names. */
export const projectPath = (root: string, path: string): string => relative(root, path).split(sep).join('/');

const isGone = (error: unknown): boolean => ['ENOENT', 'ENOTDIR'].includes(String((error as { code?: unknown }).code));

const whyAbsent = (error: unknown): Absence => (isGone(error) ? 'missing' : 'unreadable');

/** What lies at a path when every link is followed, or why that cannot be told. */
export function lookAt(path: string): { readonly real: string; readonly isFolder: boolean } | { readonly absent: Absence } {
  try {
    const real = realpathSync(path);
    return { real, isFolder: statSync(real).isDirectory() };
  } catch (error) {
    return { absent: whyAbsent(error) };
  }
}

/** Reads a file by its absolute path. A pipe or a device is not a rig, and reading one might never end. */
export function readBytes(path: string): { readonly bytes: Buffer } | { readonly absent: Absence } {
  try {
    const kind = statSync(path);
    if (kind.isDirectory()) return { absent: 'a-folder' };
    if (!kind.isFile()) return { absent: 'unreadable' };
    return constants.MAX_STRING_LENGTH < kind.size ? { absent: 'too-large' } : { bytes: readFileSync(path) };
  } catch (error) {
    return { absent: whyAbsent(error) };
  }
}

export function readText(path: string): RigText {
  const read = readBytes(path);
  if ('absent' in read) return read;
  const text = decodeText(read.bytes);
  return text === undefined ? { absent: 'not-text' } : { text };
}

/** Reads a file of a workspace. `root` is a real path; a link that leads out of it is not followed. */
export function readInside(root: string, path: string): RigText {
  const found = lookAt(join(root, ...path.split('/')));
  if ('absent' in found) return found;
  return isInside(root, found.real) ? readText(found.real) : { absent: 'outside' };
}

/** What a file is read as: a Markdown file is the rig of its fences. */
export const rigOf = (path: string, text: string): string => (isMarkdownPath(path) ? rigTextOf(text) : text);

/** What of a rig's text is put into a project: all of it, unless somebody asks for less. */
export type Keep = (text: string) => string;
export const wholeText: Keep = (text) => text;

/** Reads what the files of a project use, and what those use, until nothing is left to read. */
export function loadWanted(project: Project, root: string, read: (root: string, path: string) => RigText = readInside, keep: Keep = wholeText): void {
  for (let wanted = project.wanted(); wanted.length > 0; wanted = project.wanted()) {
    for (const path of wanted) {
      const found = read(root, path);
      if ('text' in found) project.set(path, keep(rigOf(path, found.text)));
      else project.setAbsent(path, found.absent);
    }
  }
}
