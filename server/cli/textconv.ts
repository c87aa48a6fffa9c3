import { realpathSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { isMarkdownPath } from '../../src-core/ide/markdown-fences.ts';
import { comparedSide, linesOf } from '../../src-core/papers/compared-side.ts';
import { textconv } from '../../src-core/papers/textconv.ts';
import { Project } from '../../src-core/project.ts';
import { findRigs } from '../files/find-rigs.ts';
import { decodeText, loadWanted, projectPath, readBytes, rigOf } from '../files/load-project.ts';
import { absenceSays } from '../files/open-rigs.ts';
import { dayOf } from './day-of.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';

/** Prints a rig with what it comes to, for a version control that compares lines. */
export function printTextconv(words: Words, io: Io): ExitCode {
  const [name, ...more] = words.rest;
  if (name === undefined || more.length > 0) throw new Refusal('this takes one file: linewright textconv FILE');
  const { day } = dayOf(words, io);
  const full = resolve(io.cwd, name);
  const read = readBytes(full);
  if ('absent' in read) throw new Refusal(`${name} ${absenceSays[read.absent]}`);
  const text = decodeText(read.bytes);
  if (text === undefined) {
    // A difference can still be shown of what is no rig, where a failure would show none at all.
    io.out(read.bytes.toString('latin1'));
    return exit.nothingFound;
  }
  const root = realpathSync(io.cwd);
  const path = placeOf(full, root);
  const project = new Project();
  project.set(path, rigOf(path, text));
  loadWanted(project, root);
  const side = comparedSide(project, { name, day, keyOf: (p) => p, called: (p) => p });
  const file = side.files.find((f) => f.key === path)!;
  // Of a document its own lines are shown, where the rig that it is read as has blanks.
  io.out(textconv(isMarkdownPath(path) ? { ...file, lines: linesOf(text) } : file));
  return exit.nothingFound;
}

/**
 * Where a file belongs. An old version comes as a copy elsewhere, of which only the name is left: it takes the place of
 * the one rig of that name under the present folder, so that both versions find the same files to use.
 */
function placeOf(full: string, root: string): string {
  const base = basename(full);
  const names = new Set([base, base.replace(/^[A-Za-z0-9]{6}_/, '')]);
  const twins = findRigs(root, () => undefined, (found) => names.has(found));
  return twins.length === 1 ? projectPath(root, twins[0]!) : base;
}
