import { unitWords } from '../src-core/units/unit-table.ts';
import type { GrammarWords } from './make-grammar.ts';

/** The words that colour a rig file before the server is up. */
export const grammarWords = (): GrammarWords => ({
  blocks: ['vehicle', 'winch', 'line', 'shackle', 'soft-shackle', 'strap', 'thimble', 'hook', 'anchor', 'chain', 'pull', 'repair', 'kit', 'practice'],
  statements: [
    'mass', 'point', 'rated', 'barrel', 'width', 'flange', 'keep', 'carries', 'fairlead', 'sealing', 'material', 'strands', 'diameter', 'length',
    'breaking', 'inboard', 'outboard', 'form', 'body', 'pin', 'wll', 'kind', 'girth', 'cut', 'splice', 'load', 'surface', 'grade', 'mired', 'reach',
  ],
  entries: ['fitted', 'inspected', 'damage', 'cut', 'splice', 'washed', 'reversed', 'pulled', 'retired'],
  words: [
    'HMPE', 'abrasion', 'after', 'at', 'bow', 'bury', 'cut', 'eye', 'from', 'hawse', 'heavy', 'inboard', 'layer', 'lug', 'on', 'outboard', 'tail', 'taper',
    'temporary', 'thimble', 'through', 'to', 'tree', 'tube', 'with', 'wraps',
  ],
  units: [...unitWords()],
});
