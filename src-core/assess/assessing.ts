import { nameOf, type BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { Reader } from '../model/scope.ts';
import { assessChain, type AssessedChain } from './assess-chain.ts';
import { assessGear, gearHeads, type AssessedGear, type GearHead } from './assess-gear.ts';
import { assessLine, assessRepaired, type AssessedLine, type AssessedPiece } from './assess-line.ts';
import { assessWinch, carriedName, type AssessedWinch } from './assess-winch.ts';
import { Practice } from './practice.ts';

export interface AssessedRepair {
  readonly kind: 'repair';
  readonly block: BoundBlock;
  readonly name: string;
  readonly before: AssessedLine;
  readonly after: AssessedLine;
}

export interface AssessedOther {
  readonly kind: 'other';
  readonly block: BoundBlock;
}

export type Assessed = AssessedLine | AssessedWinch | AssessedGear | AssessedChain | AssessedRepair | AssessedOther;

/**
 * The assessment of one block. Whatever it takes from other blocks goes through the reader, which remembers what was
 * asked; within one assessment each block is worked out once.
 */
export class Assessing {
  readonly reader: Reader;
  readonly day: DayNumber;
  readonly practice: Practice;
  readonly #lines = new Map<BoundBlock, AssessedLine>();
  readonly #winches = new Map<BoundBlock, AssessedWinch>();
  readonly #repairs = new Map<BoundBlock, AssessedRepair | undefined>();
  readonly #chains = new Map<BoundBlock, AssessedChain>();

  constructor(reader: Reader, day: DayNumber) {
    this.reader = reader;
    this.day = day;
    this.practice = new Practice(reader);
  }

  line(block: BoundBlock): AssessedLine {
    let line = this.#lines.get(block);
    if (line === undefined) {
      line = assessLine(block, this.practice, this.day);
      this.#lines.set(block, line);
    }
    return line;
  }

  /** The piece of a name, as it is on the day. */
  piece(name: string): AssessedPiece | undefined {
    const declaration = this.reader.find(name, ['line', 'piece']);
    if (declaration === undefined || declaration.block.definition.head !== 'line') return undefined;
    return this.line(declaration.block).pieces.get(name);
  }

  winch(block: BoundBlock): AssessedWinch {
    let winch = this.#winches.get(block);
    if (winch === undefined) {
      const name = carriedName(block);
      winch = assessWinch(block, name === undefined ? undefined : this.piece(name), this.practice);
      this.#winches.set(block, winch);
    }
    return winch;
  }

  gear(block: BoundBlock): AssessedGear {
    return assessGear(block, this.practice);
  }

  lineOfRepair(repair: BoundBlock): BoundBlock | undefined {
    const named = nameOf(repair.header, 'line');
    return named === undefined ? undefined : this.reader.find(named.name, ['line'])?.block;
  }

  repaired(repair: BoundBlock): AssessedRepair | undefined {
    if (this.#repairs.has(repair)) return this.#repairs.get(repair);
    const block = this.lineOfRepair(repair);
    const before = block === undefined ? undefined : this.line(block);
    const result: AssessedRepair | undefined = before === undefined ? undefined : { kind: 'repair', block: repair, name: repair.name ?? 'repair', before, after: assessRepaired(before, repair) };
    this.#repairs.set(repair, result);
    return result;
  }

  chain(block: BoundBlock): AssessedChain {
    let chain = this.#chains.get(block);
    if (chain === undefined) {
      chain = assessChain(block, this);
      this.#chains.set(block, chain);
    }
    return chain;
  }

  block(block: BoundBlock): Assessed {
    const { head } = block.definition;
    if (head === 'line') return this.line(block);
    if (head === 'winch') return this.winch(block);
    if (head === 'chain') return this.chain(block);
    if (head === 'repair') return this.repaired(block) ?? { kind: 'other', block };
    if ((gearHeads as readonly string[]).includes(head)) return this.gear(block) as AssessedGear & { head: GearHead };
    return { kind: 'other', block };
  }
}
