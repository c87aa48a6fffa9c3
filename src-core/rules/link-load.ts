import { isAbove } from '../base/compare.ts';
import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import { vehicleOfAnchor } from '../assess/pull-rigging.ts';
import { nameOf } from '../model/bound.ts';
import { isUnknown, mostOf, type Given, type Value } from '../mechanics/derivation.ts';

/** `pull on` a line, `load on` everything else; twice the line pull where the line turns. */
export const loadOn = (link: AssessedLink): string => `${link.sort === 'line' ? 'pull' : 'load'} on \`${link.name}\` is ${link.turned && !link.inLeg ? 'up to ' : ''}`;

/** What a link has for a limit: an anchor what it holds, unless the point that is named behind it takes less. */
export const limitWord = (link: AssessedLink): string => (link.sort === 'anchor' && link.workingLimit !== link.point ? 'holding power' : 'working limit');

/** Why a link behind a block has twice the pull, and what several runs end at that of all. */
export const turnedClause = (link: AssessedLink): string => (link.inLeg ? ', by the angle between the legs' : link.parts !== undefined ? `, because ${link.parts} parts of the line pull at it` : link.turned ? ', because both parts of the line pull at the block' : '');

/** Of a leg nobody knows the angle here: what it may pass at the widest is a warning, what it passes at any angle an error. */
export const byAngle = (link: AssessedLink, load: Given, limit: Given): { readonly severity?: 'warning' } => (link.inLeg && !isAbove(load.amount.low, limit.amount.low) ? { severity: 'warning' } : {});

/** True when the load passes what the link breaks at: that is said once, and not again by its lower limits. */
export const breaksUnder = (link: AssessedLink): boolean => link.breakingGiven && !isUnknown(link.load) && isAbove(link.load.amount.high, mostOf(link.breaking)?.amount.low ?? Infinity);

/** True for the line on the winch's drum: the winch's own rules compare the two at its greatest pull. */
export const isLineOnDrum = (chain: AssessedChain, link: AssessedLink): boolean => link.piece !== undefined && link.piece.name === chain.winch?.piece?.name && !link.turned;

/** True for an anchor that is the winch's own vehicle: by the chain alone it may pull on itself, or hold the end of a doubled line. */
export const isOwnVehicle = (chain: AssessedChain, link: AssessedLink): boolean =>
  link.sort === 'anchor' && chain.winch !== undefined && vehicleOfAnchor(link.declaration?.block) !== undefined && vehicleOfAnchor(link.declaration?.block) === nameOf(chain.winch.block.header, 'vehicle')?.name;

const figure = (value: Value): number => mostOf(value)?.amount.low ?? Infinity;

/**
 * Runs a check of links, the weakest first; where one end of a piece fails, its other end is not spoken of again.
 * The check answers false when it failed.
 */
export function eachLink(chain: AssessedChain, by: 'workingLimit' | 'breaking', check: (link: AssessedLink) => boolean | undefined): void {
  const said = new Set<string>();
  for (const link of [...chain.links].sort((a, b) => figure(a[by]) - figure(b[by]))) {
    if (isLineOnDrum(chain, link) || (link.piece !== undefined && said.has(link.piece.name))) continue;
    if (check(link) === false && link.piece !== undefined) said.add(link.piece.name);
  }
}

/** What the user can do about a load, besides stronger gear. */
export const lessPull = (chain: AssessedChain): string => (chain.load === chain.winch?.greatestPull ? '; where less line is out the winch pulls less: write `out` in the chain' : '');
