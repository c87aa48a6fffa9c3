import { bridleLegTension } from '../mechanics/bridle-leg-tension.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { quantityOf, type BoundBlock, type BoundQuantity } from '../model/bound.ts';
import { widestBridle } from '../trade/gear-sources.ts';
import { between } from '../units/amount.ts';
import type { AssessedLink, BareLink } from './assess-chain.ts';
import { statementOf, writtenValue } from './facts.ts';
import { bridledRun, meetsAt, runFromGear, runFromLine, type Run } from './pull-run.ts';
import { ofUnlikeLength } from './uneven-bridle.ts';

type Routes = readonly { readonly links: readonly BareLink[] }[];

/**
 * The links of the legs that a chain parts into, at its end or behind a block, by key, with whether the `bridle` of its pulls speaks of them.
 * Where legs meet again they are none any more.
 */
export function legsOf(routes: Routes, line: string | undefined): ReadonlyMap<string, boolean> {
  const chain = { routes: routes as readonly { readonly links: readonly AssessedLink[] }[] };
  const end = runFromLine(chain, line, new Set());
  const blocks = new Set(routes.flatMap((route) => route.links.flatMap((link) => (link.gear === 'block' && link.link.link === 'name' ? [link.link.name] : []))));
  const behind = [...blocks].map((name) => ({ run: runFromGear(chain, name, false) }));
  const spokenOf = bridledRun(end, behind);
  const angleGiven = new Map<string, boolean>();
  for (const run of [end, ...behind.map((b) => b.run)]) {
    // They share alike only where neither is the longer one.
    if (run !== undefined) for (const key of legKeys(run)) angleGiven.set(key, run === spokenOf && !ofUnlikeLength(run));
  }
  return angleGiven;
}

function legKeys(run: Run): ReadonlySet<string> {
  const found = new Set<string>();
  if (run.legs.length !== 2 || run.legs.some((leg) => leg.legs.length > 0)) return found;
  const meeting = new Set(run.legs.flatMap((leg) => meetsAt(leg, run)?.name ?? []));
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
