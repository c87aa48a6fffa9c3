import { hookBlock, kitBlock, pulleyBlock, ringBlock, shackleBlock, softShackleBlock, strapBlock, thimbleBlock } from './blocks/gear.ts';
import { lineBlock } from './blocks/line.ts';
import { anchorBlock, chainBlock, practiceBlock, pullBlock, repairBlock } from './blocks/plans.ts';
import { vehicleBlock } from './blocks/vehicle.ts';
import { winchBlock } from './blocks/winch.ts';
import { statement, type BlockDefinition, type BlockHead, type StatementDefinition } from './shape.ts';

/** The language: every block with its statements, in the order in which a file tells them. */
export const vocabulary: readonly BlockDefinition[] = [
  vehicleBlock, winchBlock, lineBlock, shackleBlock, softShackleBlock, strapBlock, pulleyBlock, ringBlock, hookBlock, thimbleBlock, anchorBlock, kitBlock, repairBlock, chainBlock, pullBlock, practiceBlock,
];

/** `use` stands outside blocks and takes a path. */
export const useStatement: StatementDefinition = statement('use', 'Takes in another file: its names and its practice count here. The path starts at this file\'s folder.', [{ part: 'text', key: 'path', meaning: 'path of a rig file, with `/` between folders' }], 'use "practice.rig"', { many: true });

const byHead = new Map<string, BlockDefinition>(vocabulary.map((b) => [b.head, b]));

export const blockNamed = (head: string): BlockDefinition | undefined => byHead.get(head);
export const blockHeads: readonly BlockHead[] = vocabulary.map((b) => b.head);
/** Words that begin a top-level statement: where reading can start again after a forgotten brace. */
export const topHeads: ReadonlySet<string> = new Set<string>([...blockHeads, 'use']);

interface Indexed {
  readonly statements: ReadonlyMap<string, StatementDefinition>;
  readonly entries: ReadonlyMap<string, StatementDefinition>;
}

const indexes = new Map<BlockDefinition, Indexed>();
const indexOf = (block: BlockDefinition): Indexed => {
  let index = indexes.get(block);
  if (index === undefined) {
    index = { statements: new Map(block.statements.map((s) => [s.head, s])), entries: new Map((block.entries ?? []).map((s) => [s.head, s])) };
    indexes.set(block, index);
  }
  return index;
};

export const statementNamed = (block: BlockDefinition, head: string): StatementDefinition | undefined => indexOf(block).statements.get(head);
export const entryNamed = (block: BlockDefinition, head: string): StatementDefinition | undefined => indexOf(block).entries.get(head);
