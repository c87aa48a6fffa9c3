import { locateIn } from '../../src-core/papers/locate.ts';
import { sheetDocument } from '../../src-core/papers/sheet-document.ts';
import { sheetJson } from '../../src-core/papers/sheet-json.ts';
import { sheetText } from '../../src-core/papers/sheet-text.ts';
import { dayOf } from './day-of.ts';
import { exit, Refusal, strongFor, type ExitCode, type Io } from './io.ts';
import { openOne } from './open-one.ts';
import type { Words } from './options.ts';
import { openSubject, writePaper } from './paper.ts';
import { plainJson } from './plain-text.ts';

/** Prints what a rig comes to, block by block. */
export function sheet(words: Words, io: Io): ExitCode {
  const { day, text } = dayOf(words, io);
  const format = words.option('format');
  const derivations = words.option('derivations') !== undefined;
  if (format === 'html' || format === 'markdown') {
    if (derivations) throw new Refusal(`--derivations does not go with --format ${format}`, 'text shows them, and JSON holds them anyway');
    writePaper(sheetDocument(openSubject(words, io, 'sheet FILE', words.rest[0])), words, io);
    return exit.nothingFound;
  }
  const { project, path, called } = openOne(words, io, 'sheet FILE');
  const root = project.judge(path, day);
  const { files } = root;
  const blocks = files.get(path)!.blocks;
  const file = called(path);
  if (format === 'json') io.out(plainJson(sheetJson(blocks, { file, day: text, locate: locateIn([...files.values()].map((f) => f.file), called) })));
  else io.out(sheetText(root, path, { file, day: text, derivations, strong: strongFor(io) }));
  return exit.nothingFound;
}
