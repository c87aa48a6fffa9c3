import { isAbove } from '../base/compare.ts';
import { breakingFromWorkingLimit } from '../mechanics/breaking-from-working-limit.ts';
import { chokerLimit } from '../mechanics/choker-limit.ts';
import { asGiven, isUnknown, lowerOf, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { shackleLimitGradeA } from '../mechanics/shackle-limit-grade-a.ts';
import { shackleLimitGradeS } from '../mechanics/shackle-limit-grade-s.ts';
import { shackleSideLoadShare } from '../mechanics/shackle-side-load-share.ts';
import { sideLoadedLimit } from '../mechanics/side-loaded-limit.ts';
import { softShackleStrength } from '../mechanics/soft-shackle-strength.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { quantityOf, wordOf, type BoundBlock, type BoundLink, type BoundStatement } from '../model/bound.ts';
import { noValues } from '../model/values.ts';
import type { Chunk } from '../syntax/chunk.ts';
import { breaksAsItsLimit, knotNotWritten } from '../trade/gear-sources.ts';
import { softShackleNamed } from '../trade/soft-shackle-share.ts';
import { between } from '../units/amount.ts';
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
  /** In line, as its tag gives it. */
  readonly breakingStrength: Value;
  /** From the side, or as a choker: a strap that counts with half of its limit breaks at half as well. */
  readonly breakingAsLoaded: Value;
  readonly breakingWritten: boolean;
  /** Known apart from the working limit: written, or by the line that a soft shackle is tied from. */
  readonly breakingKnown: boolean;
  /** What the knot leaves of the line that a soft shackle is tied from, whatever else is written. */
  readonly byItsLine: Value | undefined;
  readonly marking: string | undefined;
  /** True when the marking cannot be read, or was never there. */
  readonly unmarked: boolean;
  readonly form: string | undefined;
  readonly hitch: string | undefined;
  /** What its label gives for that hitch. */
  readonly hitchLimit: Value | undefined;
  readonly standard: string | undefined;
  readonly body: Value | undefined;
  readonly pin: Value | undefined;
  /** Inside width or diameter. */
  readonly inside: Value | undefined;
  /** Angle between the pull and the shackle's own line. */
  readonly angle: Value | undefined;
  readonly damages: readonly BoundStatement[];
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

/** Beyond this a shackle is not loaded from the side at all (WAC 296-155-33905, figure 17). */
export const greatestSideLoad_rad = Math.PI / 2;

/** The strength a soft shackle has by the line it is tied from, when its own is not written. */
function strengthOfItsLine(block: BoundBlock): Value | undefined {
  const line = maybeFact(block, 'line-breaking');
  if (line === undefined) return undefined;
  const share = softShackleNamed('diamond')!;
  return asGiven(softShackleStrength({ F: line, k: { amount: between(share.low, share.high), kind: 'share', origin: { from: 'assumed', source: knotNotWritten, means: 'write `breaking` from its tag to replace it' } } }));
}

function noLimit(block: BoundBlock, head: GearHead, unmarked: boolean): Value {
  const missing = missingFact(block, 'wll');
  const help = head === 'shackle' ? { help: 'add `wll` from the marking on it, or `made-to` with the standard it is marked to' } : {};
  // Gear that says itself that nothing can be read on it has a finding of its own.
  return unknown({ ...missing, ...help, ...(unmarked ? { reported: true } : {}) });
}

/** The limit of the table; a size that the table does not list has a finding of its own. */
function limitOfTable(block: BoundBlock, standard: string): Value {
  const size = factOf(block, 'body');
  const limit = tableLimit(size, standard)!;
  return isUnknown(limit) && !isUnknown(size) ? unknown({ ...limit.unknown, key: `table row of ${block.name ?? 'shackle'}`, reported: true }) : limit;
}

/** Why damaged gear holds less than its figures say. */
export function damageOf(gear: AssessedGear): Cause | undefined {
  const [first] = gear.damages;
  return first === undefined ? undefined : { key: `damage of ${gear.name}`, says: `\`${gear.name}\` is damaged, and what it still holds is not known`, help: 'take it out of service', place: first.place, reported: true };
}

/** The limit as the gear is loaded: from the side, or as a choker. */
function asLoaded(limit: Value, angle: Value | undefined, choker: boolean, name: string): Value {
  if (choker) return asGiven(chokerLimit({ WLL: limit }));
  if (angle === undefined) return limit;
  if (!isUnknown(angle) && isAbove(angle.amount.high, greatestSideLoad_rad)) {
    return unknown({ key: `side load of ${name}`, says: `\`${name}\` is loaded from more than 90°, for which no limit is given`, help: 'turn it into line with the pull', reported: true });
  }
  return asGiven(sideLoadedLimit({ WLL: limit, s: asGiven(shackleSideLoadShare({ α: angle })) }));
}

/** What a strap's label gives for the hitch that it is in. */
function limitInHitch(block: BoundBlock): Value | undefined {
  const written = quantityOf(statementOf(block, 'hitch')?.values ?? noValues, 'wll');
  return written === undefined ? undefined : writtenValue(written);
}

/** What breaks it as it is loaded: no source gives this apart, so it is lowered as the limit is. */
function breaksAsLoaded(breaking: Value, angle: Value | undefined, choker: boolean, name: string): Value {
  if (!choker && angle === undefined) return breaking;
  const lowered = asLoaded(isUnknown(breaking) ? breaking : { ...breaking, kind: 'working limit' }, angle, choker, name);
  if (isUnknown(lowered) || isUnknown(breaking)) return lowered;
  const share = choker ? 's = ½' : 's = share left under side load';
  return asGiven({ calculation: 'breaking-as-loaded', means: `breaking strength of \`${name}\` as it is loaded`, symbol: 'MBL_l', kind: 'breaking strength', amount: lowered.amount, formula: `MBL_l = s × MBL, ${share}`, inputs: [{ symbol: 'MBL', meaning: 'breaking strength in line', given: breaking }, ...(angle === undefined || isUnknown(angle) || choker ? [] : [{ symbol: 'α', meaning: 'angle of the load', given: angle }])], sources: [breaksAsItsLimit], assumptions: [], notes: [] });
}

export function assessGear(block: BoundBlock, practice: Practice): AssessedGear {
  const head = block.definition.head as GearHead;
  const name = block.name ?? head;
  const wll = maybeFact(block, 'wll');
  const written = maybeFact(block, 'breaking');
  const byItsLine = head === 'soft-shackle' ? strengthOfItsLine(block) : undefined;
  const breaking = written ?? byItsLine;
  const designFactor = practice.value('design-factor', head);
  const standard = head === 'shackle' ? wordIn(block, 'made-to', 'standard') : undefined;
  const table = standard !== undefined ? limitOfTable(block, standard) : undefined;
  const marking = wordIn(block, 'marking');
  const unmarked = marking === 'none' || marking === 'faded';
  let limit: Value;
  let limitFrom: LimitFrom;
  if (wll !== undefined) [limit, limitFrom] = [wll, 'written'];
  else if (table !== undefined) [limit, limitFrom] = [table, 'table'];
  else if (breaking !== undefined) [limit, limitFrom] = [asGiven(workingLimitFromBreaking({ MBL: breaking, f: designFactor })), 'breaking strength'];
  else [limit, limitFrom] = [noLimit(block, head, unmarked), 'none'];
  const angle = head === 'shackle' ? maybeFact(block, 'load-from', 'angle') : undefined;
  const hitch = head === 'strap' ? wordIn(block, 'hitch') : undefined;
  const hitchLimit = head === 'strap' ? limitInHitch(block) : undefined;
  const breakingStrength = breaking ?? asGiven(breakingFromWorkingLimit({ WLL: limit, f: designFactor }));
  return {
    kind: 'gear',
    block,
    head,
    name,
    limit,
    limitFrom,
    workingLimit: hitchLimit === undefined ? asLoaded(limit, angle, hitch === 'choker', name) : lowerOf(limit, hitchLimit),
    hitchLimit,
    breakingStrength,
    breakingAsLoaded: breaksAsLoaded(breakingStrength, angle, hitch === 'choker', name),
    breakingWritten: written !== undefined,
    breakingKnown: breaking !== undefined,
    byItsLine,
    marking,
    unmarked,
    form: head === 'shackle' ? wordIn(block, 'form') : undefined,
    hitch,
    standard,
    body: maybeFact(block, 'body'),
    pin: maybeFact(block, 'pin'),
    inside: maybeFact(block, 'inside'),
    angle,
    damages: block.statements.filter((s) => s.definition.head === 'damage'),
    tableLimit: table,
    designFactor,
  };
}

/** Gear that a route gives by kind and size only. */
export function assessSized(link: Extract<BoundLink, { link: 'sized' }>, practice: Practice): { readonly name: string; readonly workingLimit: Value; readonly breakingStrength: Value; readonly size: Value } {
  const size = writtenValue(link.size);
  const name = (link.place.chunk as Chunk).text.slice(link.place.start, link.place.end).replace(/\s+/g, ' ');
  const noStandard = unknown({
    key: `limit of ${name} at ${link.place.start}`,
    says: `working load limit of \`${name}\` is not given: a size alone has none`,
    help: link.gear === 'shackle' ? 'name the standard it is marked to behind the size, such as `AS-2741`, or write it as a block with its `wll`' : 'write it as a block with its `wll` or `breaking`',
    place: link.place,
  });
  const limit = tableLimit(size, link.standard) ?? noStandard;
  const factor = practice.value('design-factor', link.gear);
  return { name, size, workingLimit: limit, breakingStrength: isUnknown(limit) ? limit : asGiven(breakingFromWorkingLimit({ WLL: limit as Given, f: factor })) };
}
