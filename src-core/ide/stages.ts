import type { BoundValue } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import type { RigFile } from '../project.ts';
import { lexemesOf } from '../syntax/lexemes.ts';
import type { Statement, Token } from '../syntax/tree.ts';
import type { ReadonlyValues } from '../model/values.ts';

/** What each stage of reading makes of a file, as text, for those who work on the language. */
export type Stage = 'tokens' | 'tree' | 'model';
export const stages: readonly Stage[] = ['tokens', 'tree', 'model'];

export function stageText(file: RigFile, stage: Stage): string {
  const lines = stage === 'tokens' ? tokenLines(file) : stage === 'tree' ? treeLines(file) : modelLines(file);
  return [...lines].map((line) => `${line}\n`).join('');
}

const at = (file: RigFile, offset: number): string => {
  const { line, column } = file.lines.lineColumn(offset);
  return `${line + 1}:${column + 1}`;
};

function* tokenLines(file: RigFile): Generator<string> {
  for (const { chunk, offset } of file.chunks) for (const { start, kind, text } of lexemesOf(chunk.text)) yield `${at(file, offset + start)} ${kind} ${text}`;
}

function* treeLines(file: RigFile): Generator<string> {
  function* print(statements: readonly Statement[], depth: number): Generator<string> {
    for (const { tokens: own, block } of statements) {
      yield `${'  '.repeat(depth)}${own.map((t: Token) => t.text).join(' ')}${block === undefined ? '' : block.close === undefined ? ' { not closed' : ' {'}`;
      if (block !== undefined) yield* print(block.statements, depth + 1);
    }
  }
  for (const { chunk, offset } of file.chunks) {
    yield* print(chunk.tree.statements, 0);
    for (const problem of chunk.tree.problems) yield `! ${at(file, offset + problem.start)} ${problem.code}: ${problem.message}`;
  }
}

function* modelLines(file: RigFile): Generator<string> {
  for (const { uses, blocks } of file.bound) {
    for (const use of uses) yield `use ${use.path}`;
    for (const block of blocks) {
      yield `${block.definition.head} ${block.name ?? ''}${valuesText(block.header)}`.trimEnd();
      for (const { definition, day, values, broken } of block.statements) {
        yield `  ${day === undefined ? '' : `${printDay(day)} `}${definition.head || 'route'}${valuesText(values)}${broken.size > 0 ? ` broken: ${[...broken].join(', ')}` : ''}`;
      }
      if (block.brokenHeads.size > 0) yield `  not understood: ${[...block.brokenHeads].join(', ')}`;
    }
  }
}

const valuesText = (values: ReadonlyValues): string => [...values].map(([key, value]) => ` ${key}=${valueText(value)}`).join('');

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
