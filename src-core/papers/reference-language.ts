import { drawnBlocks } from './reference-pictures.ts';
import { kinds, type Dimension } from '../units/dimension.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { ambiguousUnits, unitsOf, unitNamed, type Unit } from '../units/unit-table.ts';
import type { BlockDefinition, Measure, Part, StatementDefinition } from '../vocabulary/shape.ts';
import { useStatement, vocabulary } from '../vocabulary/vocabulary.ts';
import { partMeaning, partText } from './part-text.ts';
import { contents, listOfWords, page, rigFence, table } from './reference-text.ts';

const dimensionOf = (measure: Measure): Dimension => kinds[measure.kind].dimension;
const symbols = (units: readonly Unit[]): string => listOfWords(units.map((u) => u.symbol), 'or');

/** The units in which a quantity may be written. */
function unitsAccepted(measure: Measure): string {
  const dimension = dimensionOf(measure);
  const more = [
    ...(measure.load === true ? unitsOf('mass') : []),
    ...(measure.diameters === true && dimension !== 'diameters' ? unitsOf('diameters') : []),
    ...(measure.share === true ? unitsOf('ratio') : []),
  ];
  const all = [...unitsOf(dimension), ...more];
  return all.length === 0 ? 'a plain number' : `in ${symbols(all)}`;
}

function limits(measure: Measure): string {
  const dimension = dimensionOf(measure);
  const said = (si: number): string => printAmount(exactly(si), dimension, measure.kind === 'temperature' ? { unit: unitNamed('degC') } : {});
  const from = measure.above !== undefined ? `above ${said(measure.above)}` : measure.min !== undefined ? `from ${said(measure.min)}` : '';
  return [from, `up to ${said(measure.max)}`].filter((t) => t !== '').join(' ');
}

const quantityText = (measure: Measure): string => `${measure.kind}, ${unitsAccepted(measure)}; ${limits(measure)}; such as \`${measure.example}\``;

/** One line for each part of a statement, clauses with their own parts below. */
function partLines(part: Part, indent = ''): string[] {
  const optional = 'optional' in part && part.optional === true ? ', may be left out' : '';
  const line = (name: string, meaning: string): string => `${indent}- \`${name}\`${optional}: ${meaning}`;
  const bare = partText(part).replace(/^\[(.*)\]$/s, '$1');
  switch (part.part) {
    case 'quantity':
      return [line(bare, quantityText(part.measure))];
    case 'choice':
      return [line(bare, 'one of'), ...Object.entries(part.of).map(([word, meaning]) => `${indent}  - \`${word}\`: ${meaning}`)];
    case 'clause':
      return [line(bare, part.meaning), ...part.parts.flatMap((inner) => partLines(inner, `${indent}  `))];
    case 'station':
      return [line(bare, `${partMeaning(part)}${part.stretch ? '; a stretch is `from 7.9 m to 9.1 m from inboard`' : ''}`)];
    default:
      return [line(bare, partMeaning(part))];
  }
}

const synopsis = (words: readonly string[]): string => `    ${words.filter((w) => w !== '').join('  ')}`;

function statementBlocks(heading: string, definition: StatementDefinition, synopsisHead: string, example: string): string[] {
  const needed = definition.needed === undefined ? '' : `Needed for: ${definition.needed}${definition.foundOn === undefined ? '' : `. Found on ${definition.foundOn}`}.`;
  return [
    `### ${heading}`,
    [definition.summary, definition.many === true ? 'It may stand more than once.' : '', needed, `Since ${definition.since}.`].filter((t) => t !== '').join(' '),
    synopsis([synopsisHead, ...definition.parts.map(partText)]),
    definition.parts.flatMap((part) => partLines(part)).join('\n'),
    rigFence(example),
  ];
}

/** The example of a statement inside its block, so that it can be read as it stands. */
const inBlock = (block: BlockDefinition, example: string): string => `${block.example.split('\n', 1)[0]!}\n  ${example}\n}`;

function blockBlocks(block: BlockDefinition): string[] {
  const statements = block.statements.flatMap((s) => statementBlocks(`${block.head} ${s.head}`, s, s.head, inBlock(block, s.example)));
  const entries = (block.entries ?? []).flatMap((s) => statementBlocks(`${block.head} entry ${s.head}`, s, `DATE ${s.head}`, inBlock(block, s.example)));
  const headless = block.headless === undefined ? [] : statementBlocks(`${block.head} route`, block.headless, '', inBlock(block, block.headless.example));
  return [
    `## ${block.head}`,
    `${block.summary} Since ${block.since}.`,
    synopsis([block.head, ...block.header.map(partText), '{ ... }']),
    block.header.flatMap((part) => partLines(part)).join('\n'),
    rigFence(block.example),
    ...(drawnBlocks[block.head] === undefined ? [] : [`![A ${block.head}, drawn: ${drawnBlocks[block.head]}](pictures/${block.head}.svg)`]),
    ...headless,
    ...statements,
    ...entries,
  ];
}

function unitRows(): string[][] {
  const dimensions = [...new Set(['length', 'diameters', 'mass', 'force', 'angle', 'time', 'speed', 'temperature', 'ratio', 'area'] as const)];
  return dimensions.flatMap((dimension) => unitsOf(dimension).map((u) => [dimension === 'ratio' ? 'share' : dimension, u.words.map((w) => `\`${w}\``).join(', '), u.meaning]));
}

/** The language: how a file is written, every block and every statement. */
export function languageReference(): string {
  const heads = ['How a file is written', 'Units', 'use', ...vocabulary.map((b) => b.head)];
  return page([
    '# The rig language',
    'Every block and statement, with its parts, the units that may be written, and an example.',
    contents(heads),
    '## How a file is written',
    [
      '- One fact stands on one line: a head, then its values. A block holds its statements between `{` and `}`.',
      '- A quantity has a unit: `30 m`, `9,500 lbf`, `3/8 in`, `22 ft 6 in`. A bare number is an error wherever a quantity is meant.',
      '- Where the trade writes a load as a mass (`wll 4.7 t`), it is taken by standard gravity.',
      '- A name is plain (`main`, `bow-22`), prose stands in quotes, and `#` begins a comment.',
      '- A position says from which end: `at 8.4 m from inboard`, measured on the line as it was on that date.',
      '- A logbook entry begins with its date: `2026-06-21  inspected`.',
      '- `# allow CODE: reason`, on the line of a finding or above it, sets it aside. An error and a finding that compares with a rating stay.',
    ].join('\n'),
    'In the synopses below, `[ ]` holds what may be left out and `|` stands between words of which one is written. Words in capitals stand for a value.',
    '## Units',
    table(['measures', 'written', 'meaning'], unitRows()),
    `Words that could mean more than one unit are refused: ${Object.entries(ambiguousUnits).map(([word, { meanings, choices }]) => `\`${word}\` (${meanings}; write ${listOfWords(choices.map((c) => `\`${c}\``), 'or')})`).join('; ')}.`,
    '## use',
    `${useStatement.summary} Since ${useStatement.since}.`,
    synopsis([useStatement.head, ...useStatement.parts.map(partText)]),
    useStatement.parts.flatMap((part) => partLines(part)).join('\n'),
    rigFence(useStatement.example),
    ...vocabulary.flatMap(blockBlocks),
  ]);
}
