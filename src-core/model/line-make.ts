import { countOf, wordOf, type BoundBlock } from './bound.ts';

const word = (line: BoundBlock, head: string): string | undefined => {
  const statement = line.firsts.get(head);
  return statement === undefined ? undefined : wordOf(statement.values, head);
};

/** The fewest strands of which a hollow braid is made; of fewer a line is laid or plaited: common practice. */
const fewestHollow = 8;

/** Steel: it does not weather like fibre, is not washed, and what was crushed stays weak. */
export const isWire = (line: BoundBlock): boolean => word(line, 'material') === 'wire' || word(line, 'construction') === 'wire-6x19';

/** Whether so few strands are written, and nothing of how they are made, that no tail goes inside the line. */
export function isOfFewStrands(line: BoundBlock): boolean {
  const strands = line.firsts.get('strands');
  const count = strands === undefined ? undefined : countOf(strands.values, 'strands');
  return word(line, 'construction') === undefined && count !== undefined && count < fewestHollow;
}

/** Line whose splices are buried: what is said to be hollow braid, and what nobody said anything else of. */
export const isHollowBraid = (line: BoundBlock): boolean => !isWire(line) && !isOfFewStrands(line) && (word(line, 'construction') ?? 'hollow-braid') === 'hollow-braid';
