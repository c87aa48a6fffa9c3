import type { Place } from '../base/span.ts';
import { asGiven, isUnknown, unknown, type Cause, type Derived, type DerivationInput, type Value } from '../mechanics/derivation.ts';
import { standOffFrom } from '../mechanics/stand-off-distance.ts';
import type { BoundBlock } from '../model/bound.ts';
import { sources } from '../trade/sources.ts';
import type { AssessedChain, AssessedLink } from './assess-chain.ts';
import type { AssessedPiece } from './assess-line.ts';
import { factOf } from './facts.ts';
import type { PullRigging } from './pull-rigging.ts';
import type { Run } from './pull-run.ts';

export interface StandOffInput {
  readonly block: BoundBlock;
  readonly line: AssessedPiece | undefined;
  readonly run: Run | undefined;
  readonly rigging: PullRigging;
  /** The chain as the pull names it; `chain` is undefined where no such chain is declared. */
  readonly through: { readonly name: string; readonly place: Place } | undefined;
  readonly chain: AssessedChain | undefined;
}

export interface StandOff {
  /** From all line and strap that the pull uses, what is joined counted as one; unknown while one length is, because that one may be the longest. */
  readonly standOff: Derived;
  /** From those whose length is known: it is that or more. */
  readonly atLeast: Derived;
}

/** Distance of everybody who does not run the winch. */
export function standOffOf({ block, line, run, rigging, through, chain }: StandOffInput): StandOff {
  const name = block.name ?? 'pull';
  const lengths = new Map<string, Value>();
  lengths.set(line?.name ?? '', line?.length ?? unknown({ key: `line of ${name}`, says: `which line \`${name}\` pulls with is not known`, help: 'add `carries` to the winch', place: block.namePlace }));
  if (through !== undefined && chain === undefined) lengths.set(through.name, unknown({ key: `name ${through.name}`, says: `\`${through.name}\` is not known`, help: 'declare it as a `chain`', place: through.place, reported: true }));
  const own = lengths.get(line?.name ?? '')!;
  for (const of of [run, ...rigging.blocks.map((b) => b.run)]) {
    for (const way of of === undefined ? [] : waysOf(of)) {
      const joined = new Map<string, Value>(of === run ? [[line?.name ?? '', own]] : []);
      for (const link of way) {
        const length = lengthOf(link);
        if (length === undefined) continue;
        lengths.set(link.piece?.name ?? link.key, length);
        joined.set(link.piece?.name ?? link.key, length);
      }
      // What is joined on is one line with what it is joined to.
      if (joined.size > 1) lengths.set([...joined.keys()].join(' + '), joinedLength([...joined]));
    }
  }
  const all = [...lengths.values()].map((v): Value => (isUnknown(v) ? v : { ...v, kind: 'distance' }));
  const known = all.filter((v) => !isUnknown(v));
  const from = ([first, ...rest]: readonly Value[]): Derived => standOffFrom([first!, ...rest]);
  const standOff = from(all);
  return { standOff, atLeast: known.length === 0 ? standOff : from(known) };
}

/** The gear from where a run is hooked on to each of its ends. */
const waysOf = ({ links, legs }: Run): AssessedLink[][] => (legs.length === 0 ? [[...links]] : legs.flatMap((leg) => waysOf(leg).map((way) => [...links, ...way])));

function joinedLength(parts: readonly (readonly [name: string, length: Value])[]): Value {
  const inputs: DerivationInput[] = [];
  for (const [name, length] of parts) {
    if (isUnknown(length)) return length;
    inputs.push({ symbol: `L_${inputs.length + 1}`, meaning: `length of \`${name}\``, given: length });
  }
  const sum = (end: 'low' | 'high'): number => inputs.reduce((total, { given }) => total + given.amount[end], 0);
  return asGiven({
    calculation: 'joined-length', means: 'length of what is joined to one line', symbol: 'L', amount: { low: sum('low'), high: sum('high') }, kind: 'length', formula: `L = ${inputs.map((i) => i.symbol).join(' + ')}`, inputs, sources: [sources['lengths-add']], assumptions: [], notes: [],
  });
}

/** How far a link flies when it lets go; undefined for gear that is no longer than a hand. */
function lengthOf(link: AssessedLink): Value | undefined {
  if (link.piece !== undefined) return link.piece.length;
  if (link.gear === 'strap') return link.declaration === undefined ? unknown(noLength(link)) : factOf(link.declaration.block, 'length');
  // A name that is not known may be a line.
  return (link.sort === 'line' || link.sort === 'other') && isUnknown(link.workingLimit) && link.workingLimit.unknown.reported === true ? link.workingLimit : undefined;
}

const noLength = (link: AssessedLink): Cause => ({ key: `length of ${link.key}`, says: `length of \`${link.name}\` is not given`, help: 'write it as a `strap` block with its length', place: link.place });
