/** The words of the language by the part they play; every list may hold words with dashes, and units with signs. */
export interface GrammarWords {
  /** Heads that open a block at the outermost level: `line`, `winch`. */
  readonly blocks: readonly string[];
  /** Heads of facts inside a block: `diameter`, `breaking`. */
  readonly statements: readonly string[];
  /** Heads of dated entries in a logbook: `fitted`, `damage`. */
  readonly entries: readonly string[];
  /** Every other word with a fixed meaning: `from`, `inboard`, `HMPE`. */
  readonly words: readonly string[];
  /** As written: `kN`, `ft/min`, `%`. */
  readonly units: readonly string[];
}

interface Pattern {
  readonly [key: string]: unknown;
}

const escape = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** Longest first, so that `ft/min` is not taken for `ft`; sorted, so that the same words give the same bytes. */
const anyOf = (words: readonly string[]): string =>
  [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map(escape).join('|');

// A dash belongs to a name, so `\b` would find words inside `bow-shackle`.
const notInName = '(?<![\\p{L}\\p{N}_-])';
const endOfName = '(?![\\p{L}\\p{N}_-])';
const word = (words: readonly string[]): string => (words.length === 0 ? '(?!)' : `${notInName}(?:${anyOf(words)})${endOfName}`);

const name = '[\\p{L}_][\\p{L}\\p{M}\\p{N}_]*(?:-[\\p{L}\\p{M}\\p{N}_]+)*';
const date = `${notInName}\\d{4}-\\d{1,2}-\\d{1,2}(?![\\w-])`;
const number = '[+-]?(?:\\d{1,3}(?:,\\d{3})+(?!\\d)|\\d+)(?:\\.\\d+)?|[+-]?\\.\\d+';
const fraction = '[+-]?\\d+\\/\\d+';

/** The TextMate grammar of rig files: what an editor colours by before, or without, the server. */
export function makeGrammar({ blocks, statements, entries, words, units }: GrammarWords): Pattern {
  const quantity: Pattern = {
    name: 'meta.quantity.rig',
    match: `${notInName}((?:\\d+(?:[ \\t]+|(?=-\\d)))?${fraction}|${number})(?:[ \\t]*(${anyOf(units)})${endOfName})?`,
    captures: {
      1: { name: 'constant.numeric.rig' },
      2: { name: 'keyword.other.unit.rig' },
    },
  };
  return {
    name: 'Rig',
    scopeName: 'source.rig',
    fileTypes: ['rig'],
    patterns: [{ include: '#comment' }, { include: '#use' }, { include: '#block-head' }, { include: '#entry' }, { include: '#statement' }, { include: '#value' }],
    repository: {
      comment: {
        name: 'comment.line.number-sign.rig',
        begin: '#',
        beginCaptures: { 0: { name: 'punctuation.definition.comment.rig' } },
        end: '$',
      },
      // An unclosed string ends with its line, as it does for the parser, so that it never colours the rest of the file.
      string: {
        name: 'string.quoted.double.rig',
        begin: '"',
        beginCaptures: { 0: { name: 'punctuation.definition.string.begin.rig' } },
        end: '(")|(?=$)',
        endCaptures: { 1: { name: 'punctuation.definition.string.end.rig' } },
      },
      use: { match: `^\\s*(use)${endOfName}`, captures: { 1: { name: 'keyword.control.import.rig' } } },
      // Only a line that opens a brace declares: `hook` and `thimble` are words elsewhere.
      'block-head': {
        match: `^\\s*(${anyOf(blocks)})${endOfName}(?:[ \\t]+(${name}))?(?=[^#{]*\\{)`,
        captures: { 1: { name: 'storage.type.block.rig' }, 2: { name: 'entity.name.type.rig' } },
      },
      entry: {
        match: `^\\s*(${date})(?:[ \\t]+(${anyOf(entries)})${endOfName})?`,
        captures: { 1: { name: 'constant.numeric.date.rig' }, 2: { name: 'keyword.other.entry.rig' } },
      },
      statement: {
        match: `^\\s*(${anyOf(statements)})${endOfName}`,
        captures: { 1: { name: 'keyword.other.statement.rig' } },
      },
      value: {
        patterns: [
          { include: '#comment' },
          { include: '#string' },
          { name: 'keyword.operator.arrow.rig', match: '->|→' },
          { name: 'constant.numeric.date.rig', match: date },
          quantity,
          { name: 'keyword.other.unit.rig', match: '%|°[CF]?' },
          { name: 'support.constant.rig', match: word(words) },
          { name: 'punctuation.section.block.begin.rig', match: '\\{' },
          { name: 'punctuation.section.block.end.rig', match: '\\}' },
          // Taken whole, so that a word list never colours the middle of a name.
          { name: 'variable.other.name.rig', match: name },
        ],
      },
    },
  };
}
