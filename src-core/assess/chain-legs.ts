import { bridleLegTension } from '../mechanics/bridle-leg-tension.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { quantityOf, type BoundBlock, type BoundQuantity } from '../model/bound.ts';
import { widestBridle } from '../trade/gear-sources.ts';
import { between } from '../units/amount.ts';
import type { AssessedLink, BareLink } from './assess-chain.ts';
import { statementOf, writtenValue } from './facts.ts';
import { meetsAt, runFromLine } from './pull-run.ts';
import { ofUnlikeLength } from './uneven-bridle.ts';

type Routes = readonly { readonly links: readonly BareLink[] }[];

/** The two legs that a chain ends in. */
export interface ChainLegs {
  /** Their links by key; none where the chain ends otherwise. Where the legs meet again they are no legs any more. */
  readonly keys: ReadonlySet<string>;
  /** One is longer than the other, so that they do not share alike. */
  readonly uneven: boolean;
}

const noLegs: ChainLegs = { keys: new Set(), uneven: false };

export function legsOf(routes: Routes, line: string | undefined): ChainLegs {
  const run = runFromLine({ routes: routes as readonly { readonly links: readonly AssessedLink[] }[] }, line, new Set());
  if (run.legs.length !== 2 || run.legs.some((leg) => leg.legs.length > 0)) return noLegs;
  const meeting = new Set(run.legs.flatMap((leg) => meetsAt(leg, run)?.name ?? []));
  const found = new Set<string>();
  for (const leg of run.legs) {
    for (const link of [...leg.links, ...(leg.holder === undefined ? [] : [leg.holder])]) {
      if (meeting.has(link.name)) break;
      found.add(link.key);
    }
  }
  // What both legs end at has all of it.
  const holders = run.legs.map((leg) => leg.holder?.key);
  if (holders[0] !== undefined && holders[0] === holders[1]) found.delete(holders[0]);
  return { keys: found, uneven: ofUnlikeLength(run) };
}

const anyAngle: Given = { amount: between(0, (120 * Math.PI) / 180), kind: 'angle', origin: { from: 'assumed', source: widestBridle, means: 'write the pull with its `bridle`, the angle between the legs' } };

/** The widest angle that the pulls through a chain give between its legs; any, where one of them does not, or gives places that may say otherwise. */
export function angleOfLegs(pulls: readonly BoundBlock[]): Given {
  let widest: BoundQuantity | undefined;
  for (const pull of pulls) {
    const bridle = statementOf(pull, 'bridle');
    const angle = bridle === undefined || bridle.broken.size > 0 ? undefined : quantityOf(bridle.values, 'bridle');
    if (angle === undefined || statementOf(pull, 'stands') !== undefined) return anyAngle;
    if (widest === undefined || angle.value > widest.value) widest = angle;
  }
  return widest === undefined ? anyAngle : writtenValue(widest);
}

/** What a leg has of the load: half of it where the legs lie together, all of it at 120° between them. */
export const loadOfLeg = (load: Value, angle: Given = anyAngle): Value => (isUnknown(load) ? load : asGiven(bridleLegTension({ P: load, θ: angle }), load.kind));
