import { bridleLegTension } from '../mechanics/bridle-leg-tension.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { between } from '../units/amount.ts';
import { widestBridle } from '../trade/gear-sources.ts';
import type { AssessedLink, BareLink } from './assess-chain.ts';
import { meetsAt, runFromLine } from './pull-run.ts';

type Routes = readonly { readonly links: readonly BareLink[] }[];

/** Links of the two legs that a chain ends in, by key; none where it ends otherwise. Where the legs meet again they are no legs any more. */
export function linksInLegs(routes: Routes, line: string | undefined): ReadonlySet<string> {
  const run = runFromLine({ routes: routes as readonly { readonly links: readonly AssessedLink[] }[] }, line, new Set());
  if (run.legs.length !== 2 || run.legs.some((leg) => leg.legs.length > 0)) return new Set();
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
  return found;
}

const anyAngle: Given = { amount: between(0, (120 * Math.PI) / 180), kind: 'angle', origin: { from: 'assumed', source: widestBridle, means: 'write the pull with its `bridle`, the angle between the legs' } };

/** What a leg has of the load: half of it where the legs lie together, all of it at 120° between them. */
export const loadOfLeg = (load: Value): Value => (isUnknown(load) ? load : asGiven(bridleLegTension({ P: load, θ: anyAngle }), load.kind));
