import type { Place } from '../base/span.ts';
import { isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { countOf, hasFlag, nameOf, quantityOf, wordOf, type BoundBlock } from '../model/bound.ts';
import type { AssessedLink } from './assess-chain.ts';
import type { Assessing } from './assessing.ts';
import { factOf, writtenValue } from './facts.ts';
import { show } from './show.ts';

/** Something in the bag by its kind, and what it fits. */
interface Held {
  readonly item: string;
  readonly number: number;
  readonly fits: Given | undefined;
  readonly place: Place;
}

export type NeedSort = 'tool' | 'thimble' | 'gloves' | 'gear';

/** Something that a plan takes. */
export interface KitNeed {
  readonly sort: NeedSort;
  /** The word that `holds` takes. */
  readonly item: string;
  /** In words, with its size or name: `fid for 10 mm`, `bow-22`. */
  readonly says: string;
  /** Line diameter or body size that it must fit; undefined where any will do. */
  readonly size: Value | undefined;
  readonly gearName: string | undefined;
  readonly number: number;
}

export interface JudgedNeed extends KitNeed {
  /** Whether it is in the bag; a cause when that cannot be told. */
  readonly has: boolean | Cause;
}

/** What one plan takes out of the bags of this scope. */
export interface PlanNeeds {
  readonly plan: BoundBlock;
  readonly name: string;
  readonly needs: readonly JudgedNeed[];
}

export interface AssessedKit {
  readonly kind: 'kit';
  readonly block: BoundBlock;
  readonly name: string;
  readonly held: readonly Held[];
  readonly carried: readonly string[];
  /** All kits in scope together are asked; what is missing is said at the first. */
  readonly isFirst: boolean;
  readonly plans: readonly PlanNeeds[];
}

interface Bag {
  readonly held: readonly Held[];
  readonly carried: readonly string[];
}

function bagOf(block: BoundBlock): Bag {
  const held: Held[] = [];
  const carried: string[] = [];
  for (const { definition, values, place } of block.statements) {
    if (definition.head === 'holds') {
      const item = wordOf(values, 'item');
      const fits = quantityOf(values, 'for');
      if (item !== undefined) held.push({ item, number: countOf(values, 'number') ?? 1, fits: fits === undefined ? undefined : writtenValue(fits), place });
    } else if (definition.head === 'carries') {
      const gear = nameOf(values, 'gear');
      if (gear !== undefined) carried.push(gear.name);
    }
  }
  return { held, carried };
}

export function assessKit(block: BoundBlock, assessing: Assessing): AssessedKit {
  const { reader } = assessing;
  const kits = reader.blocks('kit');
  const isFirst = kits[0] === block || kits.length === 0;
  const all = kits.map(bagOf);
  const bag: Bag = { held: all.flatMap((b) => b.held), carried: all.flatMap((b) => b.carried) };
  const plans: PlanNeeds[] = [];
  const add = (plan: BoundBlock, needs: readonly KitNeed[]): void => {
    plans.push({ plan, name: plan.name ?? plan.definition.head, needs: judged(needs, bag, assessing) });
  };
  if (isFirst) {
    for (const repair of reader.blocks('repair')) add(repair, needsOfRepair(repair, assessing));
    for (const chain of reader.blocks('chain')) add(chain, needsOfChain(chain, assessing));
    for (const pull of reader.blocks('pull')) add(pull, needsOfPull(pull));
  }
  return { kind: 'kit', block, name: block.name ?? 'kit', ...bagOf(block), isFirst, plans };
}

const tool = (item: string, says = item, size?: Value): KitNeed => ({ sort: 'tool', item, says, size, gearName: undefined, number: 1 });
const gloves: KitNeed = { sort: 'gloves', item: 'gloves', says: 'gloves', size: undefined, gearName: undefined, number: 1 };
const withSize = (word: string, size: Value): string => (isUnknown(size) ? word : `${word} for ${show(size)}`);

function needsOfRepair(repair: BoundBlock, assessing: Assessing): KitNeed[] {
  const line = assessing.lineOfRepair(repair);
  const diameter: Value = line === undefined ? unknown({ key: `line of ${repair.name ?? 'repair'}`, says: 'the line of this repair is not known', help: 'declare it', place: repair.headPlace, reported: true }) : factOf(line, 'diameter');
  const work = repair.statements.filter((s) => ['cut', 'splice', 'join'].includes(s.definition.head));
  const splices = work.filter((s) => s.definition.head === 'join' || (s.definition.head === 'splice' && wordOf(s.values, 'form') === 'eye'));
  if (work.length === 0) return [];
  const needs = [tool('blade'), tool('tape'), gloves];
  if (splices.length > 0) needs.push(tool('fid', withSize('fid', diameter), diameter), tool('marker'), tool('rule'));
  if (splices.some((s) => hasFlag(s.values, 'stitched'))) needs.push(tool('needle', 'needle and twine'));
  const thimbles = splices.filter((s) => ['tube', 'round', 'heart'].includes(wordOf(s.values, 'thimble') ?? ''));
  const sleeves = splices.filter((s) => wordOf(s.values, 'thimble') === 'sleeve');
  if (thimbles.length > 0) needs.push({ sort: 'thimble', item: 'thimble', says: withSize(thimbles.length === 1 ? 'thimble' : `${thimbles.length} thimbles`, diameter), size: diameter, gearName: undefined, number: thimbles.length });
  if (sleeves.length > 0) needs.push({ sort: 'thimble', item: 'sleeve', says: sleeves.length === 1 ? 'sleeve' : `${sleeves.length} sleeves`, size: undefined, gearName: undefined, number: sleeves.length });
  return needs;
}

function needsOfChain(chain: BoundBlock, assessing: Assessing): KitNeed[] {
  const needs: KitNeed[] = [];
  const seen = new Set<string>();
  const links = assessing.chain(chain).routes.flatMap(({ links: own }) => own.map((link, i): readonly [AssessedLink, AssessedLink | undefined] => [link, own[i - 1]]));
  for (const [link, before] of links) {
    // A hook that is on the line is no gear in the bag.
    if (link.gear === undefined || (link.gear === 'hook' && before?.end?.facts.form === 'hook')) continue;
    if (link.link.link === 'sized') {
      const size = writtenValue(link.link.size);
      needs.push({ sort: 'gear', item: link.gear, says: `${link.gear} of ${show(size)}`, size, gearName: undefined, number: 1 });
    } else if (!seen.has(link.name)) {
      seen.add(link.name);
      needs.push(namedGear(link.name, link.gear, link.declaration?.block));
    }
  }
  return needs;
}

function needsOfPull(pull: BoundBlock): KitNeed[] {
  const needs: KitNeed[] = [gloves];
  for (const { definition, values } of pull.statements) {
    const block = definition.head === 'via' ? nameOf(values, 'block') : undefined;
    if (block !== undefined) needs.push(namedGear(block.name, 'block', undefined));
  }
  return needs;
}

/** Gear by name; a shackle of the same body serves as well. */
function namedGear(name: string, item: string, block: BoundBlock | undefined): KitNeed {
  const body = item === 'shackle' && block !== undefined ? factOf(block, 'body') : undefined;
  return { sort: 'gear', item, says: `\`${name}\``, size: body !== undefined && isUnknown(body) ? undefined : body, gearName: name, number: 1 };
}

/** Sizes beside each other: a fid or a thimble serves a line a little thinner or thicker, a shackle must be of its size. */
const tolerance: Readonly<Record<string, readonly [least: number, most: number]>> = { fid: [0.8, 1.25], thimble: [0.97, 1.25] };

/** Takes what is needed out of the bag, plan by plan: what is used in one plan is back in the bag for the next. */
function judged(needs: readonly KitNeed[], bag: Bag, assessing: Assessing): JudgedNeed[] {
  const left = bag.held.map((held) => ({ ...held, number: held.number }));
  const carried = [...bag.carried];
  const take = (need: KitNeed): boolean | Cause => {
    const named = need.gearName === undefined ? -1 : carried.indexOf(need.gearName);
    if (named >= 0) {
      carried.splice(named, 1);
      return true;
    }
    if (need.size !== undefined && isUnknown(need.size)) return left.some((h) => h.item === need.item) ? need.size.unknown : false;
    let wanted = need.number;
    let unsaid: Cause | undefined;
    for (const held of left) {
      if (held.item !== need.item || wanted === 0) continue;
      const fits = fitsNeed(held, need);
      if (fits === undefined) unsaid ??= { key: `size of ${held.item} at ${held.place.start}`, says: `what the ${held.item} in the bag fits is not given`, help: 'add `for` with the size', place: held.place };
      if (fits !== true) continue;
      const used = Math.min(wanted, held.number);
      wanted -= used;
      // A tool is not used up.
      if (need.sort === 'gear' || need.sort === 'thimble') held.number -= used;
    }
    for (let i = carried.length - 1; i >= 0 && wanted > 0; i--) {
      if (!servesAs(carried[i]!, need, assessing)) continue;
      carried.splice(i, 1);
      wanted--;
    }
    return wanted === 0 ? true : (unsaid ?? false);
  };
  // What is asked for by name goes first, so that nothing else takes it.
  const order = [...needs].sort((a, b) => Number(b.gearName !== undefined) - Number(a.gearName !== undefined));
  const answers = new Map(order.map((need) => [need, take(need)]));
  return needs.map((need) => ({ ...need, has: answers.get(need)! }));
}

/** Undefined when the bag does not say what it fits. */
function fitsNeed(held: Held, need: KitNeed): boolean | undefined {
  if (need.size === undefined || isUnknown(need.size)) return need.gearName === undefined || need.item === 'strap' || need.item === 'block' ? true : undefined;
  if (held.fits === undefined) return undefined;
  const [least, most] = tolerance[need.item] ?? [0.97, 1.03];
  const ratio = held.fits.amount.low / need.size.amount.low;
  return ratio >= least && ratio <= most;
}

/** A carried piece of gear with a name of its own, taken for one by kind and size. */
function servesAs(name: string, need: KitNeed, assessing: Assessing): boolean {
  if (need.gearName !== undefined || need.size === undefined || isUnknown(need.size)) return false;
  const found = assessing.reader.find(name, ['shackle', 'soft-shackle', 'thimble']);
  if (found?.kind !== need.item) return false;
  const size = factOf(found.block, need.item === 'shackle' ? 'body' : need.item === 'thimble' ? 'takes' : 'diameter');
  const [least, most] = tolerance[need.item] ?? [0.97, 1.03];
  return !isUnknown(size) && size.amount.low / need.size.amount.low >= least && size.amount.low / need.size.amount.low <= most;
}
