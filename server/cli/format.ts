import { join, relative, resolve } from 'node:path';
import { formatFile } from '../../src-core/syntax/format.ts';
import { isMarkdownPath } from '../../src-core/ide/markdown-fences.ts';
import { nameOnOneLine } from '../../src-core/papers/clean-text.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { findRigs } from '../files/find-rigs.ts';
import { decodeText, isInside, lookAt, readBytes } from '../files/load-project.ts';
import { absenceSays } from '../files/open-rigs.ts';
import { replaceFile } from '../files/replace-file.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';

/** Puts files into the one layout, or with `--check` names those that are not in it. */
export function format(words: Words, io: Io): ExitCode {
  if (words.rest.length === 0) throw new Refusal('this takes files or folders: linewright format FILE ...');
  const onlyCheck = words.option('check') !== undefined;
  let [changed, problems, unchanged] = [0, 0, 0];
  const cannot = (path: string, says: string): void => {
    problems++;
    io.err(`linewright format: ${nameOnOneLine(path)} ${says}\n`);
  };
  for (const [real, path] of filesOf(words.rest, io, cannot)) {
    const read = readBytes(real);
    const before = 'absent' in read ? undefined : decodeText(read.bytes);
    if ('absent' in read || before === undefined) {
      cannot(path, absenceSays['absent' in read ? read.absent : 'not-text']);
      continue;
    }
    const after = formatFile(before, topHeads);
    if (after === before) {
      unchanged++;
      continue;
    }
    try {
      if (!onlyCheck) replaceFile(real, markOf(read.bytes) + after);
    } catch {
      cannot(path, 'cannot be written');
      continue;
    }
    changed++;
    io.out(`${nameOnOneLine(path)}${onlyCheck ? ' is not in layout' : ''}\n`);
  }
  io.out(`${changed} ${onlyCheck ? 'not in layout' : 'formatted'}, ${unchanged} left as ${unchanged === 1 ? 'it was' : 'they were'}.\n`);
  if (problems > 0) return exit.couldNot;
  return onlyCheck && changed > 0 ? exit.found : exit.nothingFound;
}

/** A byte order mark is no part of the text, and stays where it was. */
const markOf = (bytes: Uint8Array): string => (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? '\ufeff' : '');

/** The files that the words stand for: each once, by its real path, with the name it is told under. */
function filesOf(words: readonly string[], io: Io, cannot: (path: string, says: string) => void): Map<string, string> {
  const files = new Map<string, string>();
  const take = (full: string, path: string, within?: string): void => {
    const found = lookAt(full);
    if ('absent' in found || found.isFolder) cannot(path, absenceSays['absent' in found ? found.absent : 'a-folder']);
    else if (within !== undefined && !isInside(within, found.real)) cannot(path, 'is a link that leads out of the folder');
    else if (!files.has(found.real)) files.set(found.real, path);
  };
  for (const word of new Set(words)) {
    const full = resolve(io.cwd, word);
    const found = lookAt(full);
    if ('absent' in found) cannot(word, absenceSays[found.absent]);
    else if (!found.isFolder) {
      if (isMarkdownPath(word)) cannot(word, 'is a Markdown document, which is laid out by hand');
      else if (!word.endsWith('.rig')) cannot(word, 'is no rig file: its name does not end with .rig');
      else take(full, word);
    } else {
      const called = (path: string): string => join(word, relative(full, path));
      let unread = false;
      const rigs = findRigs(full, (folder) => {
        unread = true;
        cannot(folder === full ? word : called(folder), absenceSays.unreadable);
      });
      if (rigs.length === 0 && !unread) cannot(word, 'holds no rig files');
      for (const rig of rigs) take(rig, called(rig), found.real);
    }
  }
  return files;
}
