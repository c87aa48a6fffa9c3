import { asGiven, isUnknown, unknown, type Given, type Value } from '../mechanics/derivation.ts';
import { breakingFromWorkingLimit } from '../mechanics/breaking-from-working-limit.ts';
import { shackleLimitGradeA } from '../mechanics/shackle-limit-grade-a.ts';
import { shackleLimitGradeS } from '../mechanics/shackle-limit-grade-s.ts';
import { shackleSideLoadShare } from '../mechanics/shackle-side-load-share.ts';
import { sideLoadedLimit } from '../mechanics/side-loaded-limit.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { wordOf, type BoundBlock, type BoundLink } from '../model/bound.ts';
import type { BlockHead } from '../vocabulary/shape.ts';
import { factOf, maybeFact, missingFact, statementOf, writtenValue } from './facts.ts';
import type { Practice } from './practice.ts';

export type GearHead = Extract<BlockHead, 'shackle' | 'soft-shackle' | 'strap' | 'block' | 'ring' | 'hook'>;
export const gearHeads: readonly GearHead[] = ['shackle', 'soft-shackle', 'strap', 'block', 'ring', 'hook'];

/** Where a working limit came from: it is never better than that. */
export type LimitFrom = 'written' | 'table' | 'breaking strength' | 'none';

export interface AssessedGear {
  readonly kind: 'gear';
  readonly block: BoundBlock;
  readonly head: GearHead;
  readonly name: string;
  /** In line, before any side load. */
  readonly limit: Value;
  readonly limitFrom: LimitFrom;
  /** As it is loaded. */
  readonly workingLimit: Value;
  readonly breakingStrength: Value;
  readonly breakingWritten: boolean;
  readonly marking: string | undefined;
  /** Limit that a published table gives for the size, to compare with. */
  readonly tableLimit: Value | undefined;
  readonly designFactor: Value;
}

const wordIn = (block: BoundBlock, head: string, key = head): string | undefined => {
  const statement = statementOf(block, head);
  return statement === undefined ? undefined : wordOf(statement.values, key);
};

function tableLimit(size: Value, standard: string | undefined): Value | undefined {
  if (standard === 'AS-2741') return asGiven(shackleLimitGradeS({ D: size }));
  if (standard === 'RR-C-271') return asGiven(shackleLimitGradeA({ D: size }));
  return undefined;
}

export function assessGear(block: BoundBlock, practice: Practice): AssessedGear {
  const head = block.definition.head as GearHead;
  const name = block.name ?? head;
  const wll = maybeFact(block, 'wll');
  const breaking = maybeFact(block, 'breaking');
  const designFactor = practice.value('design-factor', head);
  const standard = head === 'shackle' ? wordIn(block, 'made-to', 'standard') : undefined;
  const table = head === 'shackle' && standard !== undefined ? tableLimit(factOf(block, 'body'), standard) : undefined;
  let limit: Value;
  let limitFrom: LimitFrom;
  if (wll !== undefined) [limit, limitFrom] = [wll, 'written'];
  else if (table !== undefined) [limit, limitFrom] = [table, 'table'];
  else if (breaking !== undefined) [limit, limitFrom] = [asGiven(workingLimitFromBreaking({ MBL: breaking, f: designFactor })), 'breaking strength'];
  else [limit, limitFrom] = [unknown({ ...missingFact(block, 'wll'), ...(head === 'shackle' ? { help: 'add `wll` from the marking on it, or `made-to` with the standard it is marked to' } : {}) }), 'none'];
  const angle = head === 'shackle' ? maybeFact(block, 'load-from', 'angle') : undefined;
  return {
    kind: 'gear',
    block,
    head,
    name,
    limit,
    limitFrom,
    workingLimit: angle === undefined ? limit : asGiven(sideLoadedLimit({ WLL: limit, s: asGiven(shackleSideLoadShare({ α: angle })) })),
    breakingStrength: breaking ?? asGiven(breakingFromWorkingLimit({ WLL: limit, f: designFactor })),
    breakingWritten: breaking !== undefined,
    marking: wordIn(block, 'marking'),
    tableLimit: table,
    designFactor,
  };
}

/** Gear that a route gives by kind and size only. */
export function assessSized(link: Extract<BoundLink, { link: 'sized' }>, practice: Practice): { readonly name: string; readonly workingLimit: Value; readonly breakingStrength: Value } {
  const size = writtenValue(link.size);
  const name = `${link.gear}${link.form ? ' ' + link.form : ''}`;
  const noStandard = unknown({
    key: `limit of ${name} at ${link.place.start}`,
    says: `the working load limit of this ${name} is not given: a size alone has none`,
    help: link.gear === 'shackle' ? 'name the standard it is marked to behind the size, such as `AS-2741`, or write it as a block with its `wll`' : 'write it as a block with its `wll` or `breaking`',
    place: link.place,
  });
  const limit = tableLimit(size, link.standard) ?? noStandard;
  const factor = practice.value('design-factor', link.gear);
  return { name, workingLimit: limit, breakingStrength: isUnknown(limit) ? limit : asGiven(breakingFromWorkingLimit({ WLL: limit as Given, f: factor })) };
}
