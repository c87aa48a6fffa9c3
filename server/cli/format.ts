import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { formatFile } from '../../src-core/syntax/format.ts';
import { isMarkdownPath } from '../../src-core/ide/markdown-fences.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { findRigs } from '../files/find-rigs.ts';
import { decodeText, readText } from '../files/load-project.ts';
import { absenceSays } from '../files/open-rigs.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';

/** Puts files into the one layout, or with `--check` names those that are not in it. */
export function format(words: Words, io: Io): ExitCode {
  if (words.rest.length === 0) throw new Refusal('this takes files or folders: linewright format FILE ...');
  const onlyCheck = words.option('check') !== undefined;
  let [changed, problems, unchanged] = [0, 0, 0];
  const cannot = (path: string, says: string): void => {
    problems++;
    io.err(`linewright format: ${path} ${says}\n`);
  };
  for (const path of words.rest.flatMap((word) => filesOf(word, io, cannot))) {
    const full = resolve(io.cwd, path);
    if (isMarkdownPath(path)) {
      cannot(path, 'is a Markdown document, which is laid out by hand');
      continue;
    }
    const read = readText(full);
    if ('absent' in read) {
      cannot(path, absenceSays[read.absent]);
      continue;
    }
    const before = withMark(full);
    const after = before.mark + formatFile(before.text, topHeads);
    if (after === before.mark + before.text) {
      unchanged++;
      continue;
    }
    changed++;
    io.out(`${path}${onlyCheck ? ' is not in layout' : ''}\n`);
    if (onlyCheck) continue;
    try {
      writeFileSync(full, after);
    } catch {
      cannot(path, 'cannot be written');
    }
  }
  io.out(`${changed} ${onlyCheck ? 'not in layout' : 'formatted'}, ${unchanged} left as ${unchanged === 1 ? 'it was' : 'they were'}.\n`);
  if (problems > 0) return exit.couldNot;
  return onlyCheck && changed > 0 ? exit.found : exit.nothingFound;
}

/** A byte order mark is no part of the text, and stays where it was. */
function withMark(path: string): { readonly mark: string; readonly text: string } {
  const bytes = readFileSync(path);
  const mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? '\ufeff' : '';
  return { mark, text: decodeText(bytes)! };
}

function filesOf(path: string, io: Io, cannot: (path: string, says: string) => void): string[] {
  const full = resolve(io.cwd, path);
  if (statSync(full, { throwIfNoEntry: false })?.isDirectory() !== true) return [path];
  let rigs: string[];
  try {
    rigs = findRigs(full);
  } catch {
    cannot(path, absenceSays.unreadable);
    return [];
  }
  if (rigs.length === 0) cannot(path, 'holds no rig files');
  return rigs.map((rig) => join(path, relative(full, rig)));
}
