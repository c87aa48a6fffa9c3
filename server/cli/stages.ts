import type { BoundValue } from '../../src-core/model/bound.ts';
import { printDay } from '../../src-core/model/day.ts';
import { rigLexer, tokenKind } from '../../src-core/syntax/tokens.ts';
import type { Statement, Token } from '../../src-core/syntax/tree.ts';
import { exit, type ExitCode, type Io } from './io.ts';
import { openOne } from './open-one.ts';
import type { Words } from './options.ts';

// What each stage of reading makes of a file, for those who work on the language.

export function tokens(words: Words, io: Io): ExitCode {
  const { project, path } = openOne(words, io, 'tokens FILE');
  const file = project.file(path)!;
  const tell = (offset: number, kind: string, text: string): void => {
    const { line, column } = file.lines.lineColumn(offset);
    io.out(`${line + 1}:${column + 1} ${kind} ${text}\n`);
  };
  for (const { chunk, offset } of file.chunks) {
    const lexed = rigLexer().tokenize(chunk.text);
    const comments = (lexed.groups['comments'] ?? []).map((t) => ({ kind: 'comment', start: t.startOffset, text: t.image }));
    const others = lexed.tokens.filter((t) => t.tokenType.name !== 'Newline').map((t) => ({ kind: tokenKind(t.tokenType), start: t.startOffset, text: t.image }));
    for (const { start, kind, text } of [...comments, ...others].sort((x, y) => x.start - y.start)) tell(offset + start, kind, text);
  }
  return exit.nothingFound;
}

export function tree(words: Words, io: Io): ExitCode {
  const { project, path } = openOne(words, io, 'tree FILE');
  const print = (statements: readonly Statement[], depth: number): void => {
    for (const { tokens: own, block } of statements) {
      io.out(`${'  '.repeat(depth)}${own.map((t: Token) => t.text).join(' ')}${block === undefined ? '' : block.close === undefined ? ' { not closed' : ' {'}\n`);
      if (block !== undefined) print(block.statements, depth + 1);
    }
  };
  const file = project.file(path)!;
  for (const { chunk, offset } of file.chunks) {
    print(chunk.tree.statements, 0);
    for (const problem of chunk.tree.problems) {
      const { line, column } = file.lines.lineColumn(offset + problem.start);
      io.out(`! ${line + 1}:${column + 1} ${problem.code}: ${problem.message}\n`);
    }
  }
  return exit.nothingFound;
}

export function model(words: Words, io: Io): ExitCode {
  const { project, path } = openOne(words, io, 'model FILE');
  for (const { uses, blocks } of project.file(path)!.bound) {
    for (const use of uses) io.out(`use ${use.path}\n`);
    for (const block of blocks) {
      io.out(`${block.definition.head} ${block.name ?? ''}${valuesText(block.header)}`.trimEnd() + '\n');
      for (const { definition, day, values, broken } of block.statements) {
        io.out(`  ${day === undefined ? '' : `${printDay(day)} `}${definition.head || 'route'}${valuesText(values)}${broken.size > 0 ? ` broken: ${[...broken].join(', ')}` : ''}\n`);
      }
      if (block.brokenHeads.size > 0) io.out(`  not understood: ${[...block.brokenHeads].join(', ')}\n`);
    }
  }
  return exit.nothingFound;
}

const valuesText = (values: ReadonlyMap<string, BoundValue>): string => [...values].map(([key, value]) => ` ${key}=${valueText(value)}`).join('');

function valueText(value: BoundValue): string {
  switch (value.type) {
    case 'quantity':
      return `${value.value} ${value.inDiameters === true ? 'd' : value.kind}`;
    case 'count':
      return String(value.count);
    case 'word':
      return value.word;
    case 'text':
      return `"${value.text}"`;
    case 'name':
    case 'new-name':
      return value.name;
    case 'date':
      return printDay(value.day);
    case 'flag':
    case 'clause':
      return 'yes';
    case 'station':
      return [value.from, ...(value.to === undefined ? [] : [value.to])].map((end) => `${end.distance.value} from ${end.end}`).join(' to ');
    case 'route':
      return value.links.map((link) => (link.link === 'sized' ? link.gear : link.part === undefined ? link.name : `${link.name} ${link.part.name}`)).join(' -> ');
  }
}
