import { readFileSync, realpathSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { comparedSide } from '../../src-core/papers/compared-side.ts';
import { textconv } from '../../src-core/papers/textconv.ts';
import { Project } from '../../src-core/project.ts';
import { findRigs } from '../files/find-rigs.ts';
import { decodeText, loadWanted, projectPath } from '../files/load-project.ts';
import { dayOf } from './day-of.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';

/** Prints a rig with what it comes to, for a version control that compares lines. */
export function printTextconv(words: Words, io: Io): ExitCode {
  const [name, ...more] = words.rest;
  if (name === undefined || more.length > 0) throw new Refusal('this takes one file: linewright textconv FILE');
  const { day } = dayOf(words, io);
  const full = resolve(io.cwd, name);
  if (statSync(full, { throwIfNoEntry: false })?.isFile() !== true) throw new Refusal(`${name} is no file that can be read`);
  const bytes = readFileSync(full);
  const text = decodeText(bytes);
  if (text === undefined) {
    // A difference can still be shown of what is no rig, where a failure would show none at all.
    io.out(bytes.toString('latin1'));
    return exit.nothingFound;
  }
  const root = realpathSync(io.cwd);
  const path = placeOf(full, root);
  const project = new Project();
  project.set(path, text);
  loadWanted(project, root);
  const side = comparedSide(project, { name, day, keyOf: (p) => p, called: (p) => p });
  io.out(textconv(side.files.find((f) => f.key === path)!));
  return exit.nothingFound;
}

/**
 * Where a file belongs. An old version comes as a copy elsewhere, of which only the name is left: it takes the place of
 * the one rig of that name under the present folder, so that both versions find the same files to use.
 */
function placeOf(full: string, root: string): string {
  const base = basename(full);
  const names = new Set([base, base.replace(/^[A-Za-z0-9]{6}_/, '')]);
  const twins = findRigs(root).filter((rig) => names.has(basename(rig)));
  return twins.length === 1 ? projectPath(root, twins[0]!) : base;
}
