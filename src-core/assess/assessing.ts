import { nameOf, type BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { Reader } from '../model/scope.ts';
import { assessAnchor, type AssessedAnchor } from './assess-anchor.ts';
import { assessChain, type AssessedChain } from './assess-chain.ts';
import { assessGear, gearHeads, type AssessedGear, type GearHead } from './assess-gear.ts';
import { assessKit, type AssessedKit } from './assess-kit.ts';
import { assessLine, assessRepaired, type AssessedLine, type AssessedPiece } from './assess-line.ts';
import { assessPull, type AssessedPull } from './assess-pull.ts';
import { assessVehicle, type AssessedVehicle } from './assess-vehicle.ts';
import { assessWinch, carriedName, type AssessedWinch } from './assess-winch.ts';
import { AssessedBlocks } from './assessed-blocks.ts';
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

export type Assessed = AssessedLine | AssessedWinch | AssessedGear | AssessedChain | AssessedRepair | AssessedPull | AssessedAnchor | AssessedVehicle | AssessedKit | AssessedOther;

/**
 * The assessment of one block. Whatever it takes from other blocks goes through the reader, which remembers what was
 * asked; each block is worked out once, and with what is kept of it comes what it had asked.
 */
export class Assessing {
  readonly reader: Reader;
  readonly day: DayNumber;
  readonly practice: Practice;
  readonly #blocks: AssessedBlocks;

  constructor(reader: Reader, day: DayNumber, blocks = new AssessedBlocks()) {
    this.reader = reader;
    this.day = day;
    this.practice = new Practice(reader);
    this.#blocks = blocks;
  }

  #once<T>(block: BoundBlock, work: (own: Assessing) => T): T {
    let kept = this.#blocks.get(block);
    if (kept === undefined) {
      const own = new Assessing(new Reader(this.reader.scope), this.day, this.#blocks);
      kept = { result: work(own), asked: [...own.reader.asked] };
      this.#blocks.keep(block, kept);
    }
    this.reader.askedToo(kept.asked);
    return kept.result as T;
  }

  line(block: BoundBlock): AssessedLine {
    return this.#once(block, (own) => assessLine(block, own.practice, own.day));
  }

  /** The piece of a name, as it is on the day. */
  piece(name: string): AssessedPiece | undefined {
    const declaration = this.reader.find(name, ['line', 'piece']);
    if (declaration === undefined || declaration.block.definition.head !== 'line') return undefined;
    return this.line(declaration.block).pieces.get(name);
  }

  winch(block: BoundBlock): AssessedWinch {
    return this.#once(block, (own) => {
      const name = carriedName(block);
      return assessWinch(block, name === undefined ? undefined : own.piece(name), own.practice);
    });
  }

  gear(block: BoundBlock): AssessedGear {
    return assessGear(block, this.practice);
  }

  lineOfRepair(repair: BoundBlock): BoundBlock | undefined {
    const named = nameOf(repair.header, 'line');
    return named === undefined ? undefined : this.reader.find(named.name, ['line'])?.block;
  }

  repaired(repair: BoundBlock): AssessedRepair | undefined {
    return this.#once(repair, (own): AssessedRepair | undefined => {
      const block = own.lineOfRepair(repair);
      const before = block === undefined ? undefined : own.line(block);
      return before === undefined ? undefined : { kind: 'repair', block: repair, name: repair.name ?? 'repair', before, after: assessRepaired(before, repair) };
    });
  }

  chain(block: BoundBlock): AssessedChain {
    return this.#once(block, (own) => assessChain(block, own));
  }

  vehicle(block: BoundBlock): AssessedVehicle {
    return this.#once(block, (own) => assessVehicle(block, own.practice));
  }

  anchor(block: BoundBlock): AssessedAnchor {
    return this.#once(block, (own) => assessAnchor(block, own));
  }

  pull(block: BoundBlock): AssessedPull {
    return this.#once(block, (own) => assessPull(block, own));
  }

  kit(block: BoundBlock): AssessedKit {
    return this.#once(block, (own) => assessKit(block, own));
  }

  block(block: BoundBlock): Assessed {
    const { head } = block.definition;
    if (head === 'line') return this.line(block);
    if (head === 'winch') return this.winch(block);
    if (head === 'chain') return this.chain(block);
    if (head === 'pull') return this.pull(block);
    if (head === 'anchor') return this.anchor(block);
    if (head === 'vehicle') return this.vehicle(block);
    if (head === 'kit') return this.kit(block);
    if (head === 'repair') return this.repaired(block) ?? { kind: 'other', block };
    if ((gearHeads as readonly string[]).includes(head)) return this.gear(block) as AssessedGear & { head: GearHead };
    return { kind: 'other', block };
  }
}
