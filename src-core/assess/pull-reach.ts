import { asGiven, isUnknown, unknown, type DerivationInput, type Given, type Value } from '../mechanics/derivation.ts';
import { quantityOf, wordOf, type BoundBlock, type Problem } from '../model/bound.ts';
import { noValues } from '../model/values.ts';
import { legsAddUp, legSpan, strapSpan } from '../trade/plan-sources.ts';
import { between, exactly, type Amount } from '../units/amount.ts';
import { factOf, missingFact, statementOf, writtenValue } from './facts.ts';
import { isPlaced, type PullBlock, type PullPart, type PullRigging } from './pull-rigging.ts';
import type { Run } from './pull-run.ts';
import type { AssessedLink } from './assess-chain.ts';

export interface PullReach {
  readonly reach: Value;
  /** Line off the drum when the pull begins. */
  readonly lineOut: Value;
  /** Extensions and straps between the line's end and what holds it. */
  readonly bridged: Value;
  readonly problems: readonly Problem[];
}

const zero: Amount = exactly(0);
const plus = (a: Amount, b: Amount): Amount => ({ low: a.low + b.low, high: a.high + b.high });

/** What a piece of gear bridges of the distance. Shackles and rings count as nothing: that asks for more line. */
function spanOf(link: AssessedLink, isLast: boolean): Value | undefined {
  if (link.piece !== undefined) return link.piece.length;
  if (link.gear !== 'strap' || link.declaration === undefined) return undefined;
  const { block } = link.declaration;
  const length = factOf(block, 'length');
  if (isUnknown(length)) return length;
  const hitch = wordOf(statementOf(block, 'hitch')?.values ?? noValues, 'hitch');
  if (!isLast && (hitch === undefined || hitch === 'straight')) return length;
  const most = hitch === 'basket' ? length.amount.high / 2 : length.amount.high;
  return asGiven({ calculation: 'strap-span', means: `distance that \`${link.name}\` bridges`, symbol: 'l', kind: 'length', amount: between(0, most), formula: hitch === 'basket' ? 'l = 0 to l_s / 2' : 'l = 0 to l_s', inputs: [{ symbol: 'l_s', meaning: 'length of the strap', given: length }], sources: [strapSpan], assumptions: [], notes: [] });
}

/** Extensions and straps of a run, those of the line on the winch left out. */
export function bridgedBy(run: Run | undefined, line: string | undefined): Value {
  const inputs: DerivationInput[] = [];
  let amount = zero;
  const seen = new Set(line === undefined ? [] : [line]);
  const links = run?.links ?? [];
  for (const [i, link] of links.entries()) {
    const key = link.piece?.name ?? link.name;
    if (seen.has(key)) continue;
    const span = spanOf(link, i === links.length - 1);
    if (span === undefined) continue;
    seen.add(key);
    if (isUnknown(span)) return span;
    amount = plus(amount, span.amount);
    inputs.push({ symbol: `l_${inputs.length + 1}`, meaning: `distance that \`${key}\` bridges`, given: span });
  }
  const legs: Given[] = [];
  for (const leg of run?.legs ?? []) {
    const bridged = bridgedBy(leg, line);
    if (isUnknown(bridged)) return bridged;
    legs.push(bridged);
  }
  if (legs.some((leg) => leg.amount.high > 0)) {
    const over = acrossLegs(legs, links.at(-1)?.name);
    amount = plus(amount, over.amount);
    inputs.push({ symbol: `l_${inputs.length + 1}`, meaning: 'distance that the legs bridge', given: over });
  }
  return asGiven({ calculation: 'bridged-by-gear', means: 'distance that extensions and straps bridge', symbol: 'B', kind: 'length', amount, formula: inputs.length === 0 ? 'B = 0' : `B = ${inputs.map((i) => i.symbol).join(' + ')}`, inputs, sources: [legsAddUp], assumptions: ['shackles, rings and hooks bridge nothing'], notes: [] });
}

/** Legs that stand apart bridge less than their length, down to nothing where they lie across the pull. */
function acrossLegs(legs: readonly Given[], fork: string | undefined): Given {
  const most = Math.max(...legs.map((leg) => leg.amount.high));
  const inputs = legs.map((given, i) => ({ symbol: `l_${i + 1}`, meaning: 'distance that one leg bridges along itself', given }));
  return asGiven({ calculation: 'legs-span', means: `distance that the legs${fork === undefined ? '' : ` behind \`${fork}\``} bridge`, symbol: 'l', kind: 'length', amount: between(0, most), formula: 'l = 0 to the longest leg', inputs, sources: [legSpan], assumptions: [], notes: [] }) as Given;
}

interface Leg {
  readonly given: Given;
  readonly meaning: string;
  /** As it may be for straps that hold its blocks. */
  readonly amount: Amount;
}

function legOf(part: PullPart, to: PullBlock | undefined, from: PullBlock | undefined, reach: Value, block: BoundBlock): Leg | Value {
  const after = to === undefined ? undefined : quantityOf(to.statement.values, 'after');
  if (after !== undefined) return { given: writtenValue(after), meaning: `line before \`${to!.name}\``, amount: exactly(after.value) };
  if (part.planned_m !== undefined) {
    const place = statementOf(block, 'stands')!.place;
    // Where it hangs by a place of its own, a block is there; by that of what holds it, it may be nearer than what bridges the way for sure.
    let nearer = 0;
    for (const b of [from, to]) {
      if (b?.run === undefined || isPlaced(block, b.name)) continue;
      const bridged = bridgedBy(b.run, undefined);
      if (isUnknown(bridged)) return bridged;
      nearer += bridged.amount.high - bridged.amount.low;
    }
    return { given: { amount: exactly(part.planned_m), kind: 'length', origin: { from: 'written', place } }, meaning: `distance in plan from \`${part.from}\` to \`${part.to}\``, amount: { low: Math.max(0, part.planned_m - nearer), high: part.planned_m } };
  }
  if (!part.crosses) {
    const what = to?.name ?? from?.name ?? part.to;
    return unknown({ key: `line at ${what} in ${block.name ?? 'pull'}`, says: `how much line lies between \`${part.from}\` and \`${part.to}\` is not given`, help: to === undefined ? 'add `stands` for both' : 'add `after` to the block', place: (to ?? from)?.place ?? block.namePlace });
  }
  if (isUnknown(reach)) return reach;
  const inputs: DerivationInput[] = [{ symbol: 'R', meaning: 'reach', given: reach }];
  let { low, high } = reach.amount;
  // Strap and line between a block and what holds it take as much from each part that runs to it.
  for (const b of [from, to]) {
    if (b?.run === undefined) continue;
    const bridged = bridgedBy(b.run, undefined);
    if (isUnknown(bridged)) return bridged;
    if (!(bridged.amount.high > 0)) continue;
    low -= bridged.amount.high;
    // Behind a block that only turns the line the reach counts from the block itself, and may be written so.
    if (b.doubles) high -= bridged.amount.low;
    inputs.push({ symbol: `B_${inputs.length}`, meaning: `what bridges the way behind \`${b.name}\``, given: bridged });
  }
  if (inputs.length === 1) return { given: reach, meaning: 'reach', amount: reach.amount };
  const amount = { low: Math.max(0, low), high };
  const given = asGiven({ calculation: 'part-within-reach', means: 'part of the line within the reach', symbol: 'l', kind: 'length', amount: { low: amount.low, high: Math.max(0, high) }, formula: `l = ${inputs.map((i) => i.symbol).join(' − ')}`, inputs, sources: [legsAddUp], assumptions: inputs.length > 1 && [from, to].some((b) => b !== undefined && !b.doubles) ? ['behind a block that only turns the line the reach may be counted from the block'] : [], notes: [] }) as Given;
  return { given, meaning: `line between \`${part.from}\` and \`${part.to}\``, amount };
}

export function reachOf(block: BoundBlock, rigging: PullRigging, run: Run | undefined, line: string | undefined): PullReach {
  const statement = statementOf(block, 'reach');
  const cause = missingFact(block, 'reach');
  const reach: Value = statement === undefined || statement.broken.size > 0 ? unknown(cause.reported === true ? cause : { ...cause, says: `how far \`${block.name ?? 'pull'}\` reaches is not given`, help: 'add `reach`, the distance between what stands and what moves' }) : factOf(block, 'reach');
  const bridged = bridgedBy(run, line);
  const done = (lineOut: Value, problems: Problem[] = []): PullReach => ({ reach, lineOut, bridged, problems });
  const tooLong = (by_m: number): PullReach => {
    const problem: Problem = { code: 'chain-longer-than-reach', place: statement?.place ?? block.namePlace, message: `the chain of \`${block.name ?? 'pull'}\` is ${by_m.toFixed(1)} m longer than its reach, with all line on the drum`, help: 'leave an extension out, or start farther off' };
    return done(unknown({ key: `line out in ${block.name ?? 'pull'}`, says: 'the chain is longer than the reach', help: problem.help, place: problem.place, reported: true }), [problem]);
  };
  if (rigging.problems.length > 0) return done(unknown({ key: `rigging of ${block.name ?? 'pull'}`, says: 'this rigging cannot pull', help: 'correct it', place: rigging.problems[0]!.place, reported: true }));
  const inputs: DerivationInput[] = [];
  let amount = zero;
  for (const [i, part] of rigging.parts.entries()) {
    const leg = legOf(part, rigging.blocks[i], rigging.blocks[i - 1], reach, block);
    if (!('meaning' in leg)) return done(leg);
    if (leg.amount.high < -1e-9) return tooLong(-leg.amount.high);
    amount = plus(amount, leg.amount);
    inputs.push({ symbol: `l_${i + 1}`, meaning: leg.meaning, given: leg.given });
  }
  if (isUnknown(bridged)) return done(bridged);
  amount = { low: amount.low - bridged.amount.high, high: amount.high - bridged.amount.low };
  if (amount.high < -1e-9) return tooLong(-amount.high);
  const formula = `x = ${inputs.map((i) => i.symbol).join(' + ')}${bridged.amount.high > 0 ? ' − B' : ''}`;
  if (bridged.amount.high > 0) inputs.push({ symbol: 'B', meaning: 'distance that extensions and straps bridge', given: bridged });
  return done(asGiven({ calculation: 'line-out-for-reach', means: 'line out', symbol: 'x', kind: 'length', amount: { low: Math.max(0, amount.low), high: Math.max(0, amount.high) }, formula, inputs, sources: [legsAddUp], assumptions: ['nothing is added for the way round the blocks'], notes: [] }));
}
