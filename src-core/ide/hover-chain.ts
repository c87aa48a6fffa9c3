import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import { show, showMost, showValue } from '../assess/show.ts';
import { isAbove } from '../base/compare.ts';
import { isUnknown, mostOf } from '../mechanics/derivation.ts';
import { limitWord } from '../rules/link-load.ts';
import type { Answer } from './answer.ts';

/** On whose word the limit of a link rests. */
function limitBy(link: AssessedLink): string {
  if (link.sort === 'line') return link.limitSays === undefined ? 'its maker' : 'its breaking strength over the line factor';
  if (link.limitSays !== undefined) return link.limitSays === 'table' ? 'the table of its standard' : link.limitSays === 'breaking strength' ? 'its breaking strength over the design factor' : `the table of ${link.limitSays}`;
  return link.sort === 'anchor' ? 'what is written of it' : 'its marking';
}

/** `within the limit given by its marking`, or above it; never more than that. */
export function judgedText(link: AssessedLink): string {
  const { load, workingLimit: limit, doubt } = link;
  const most = mostOf(limit);
  if (isUnknown(limit)) return most === undefined || isUnknown(load) || !isAbove(load.amount.high, most.amount.low) ? `not judged, because ${limit.unknown.says}` : `above the limit, which is ${showMost(limit)}, and may be less because ${limit.unknown.says}`;
  if (isUnknown(load)) return `not judged, because ${load.unknown.says}`;
  const isOver = isAbove(load.amount.high, limit.amount.low);
  if (!isOver && doubt !== undefined) return `not judged, because ${doubt.says}`;
  return `${link.turned || link.inLeg ? `${show(load)} on it, ` : ''}${isOver ? 'above' : 'within'} the limit given by ${limitBy(link)}`;
}

export function linksTable(chain: AssessedChain, links: readonly AssessedLink[]): { head: string[]; rows: string[][] } {
  return { head: ['link', 'limit', 'breaking strength', `load ${showValue(chain.load)}`], rows: links.map((l) => [`\`${l.name}\``, showValue(l.workingLimit), showValue(l.breaking), judgedText(l)]) };
}

export function hoverLink(chain: AssessedChain, link: AssessedLink): Answer {
  const { workingLimit: limit } = link;
  const lead = isUnknown(limit) ? `${link.name}: ${judgedText(link)}` : `${link.name}: load ${showValue(link.load)}, ${limitWord(link)} ${show(limit)}`;
  const help = isUnknown(limit) ? [`To have it judged, ${limit.unknown.help}.`] : [];
  const breaking = isUnknown(link.breaking) || link.sort === 'anchor' ? [] : [`Breaking strength ${show(link.breaking)}`];
  return {
    lead,
    after: isUnknown(limit) ? undefined : judgedText(link),
    lines: [link.parts !== undefined ? `${link.parts} parts of the line pull at it, each with ${chain.loadSays}.` : link.inLeg ? `It is one leg of a bridle, and has its share by the angle between them. The chain is loaded by ${chain.loadSays}.` : link.turned ? `The line turns here, so both its parts pull on it, each with ${chain.loadSays}.` : `The load is ${chain.loadSays}.`, ...breaking, ...help],
    ...(isUnknown(limit) || limit.origin.from !== 'derived' ? { restsOn: [limit] } : { derivation: limit.origin.derivation }),
  };
}

export function chainSummary(chain: AssessedChain): string {
  const weakest = chain.weakestByLimit;
  const open = chain.unjudged.length === 0 ? '' : ` · ${chain.unjudged.length} ${chain.unjudged.length === 1 ? 'link' : 'links'} not judged`;
  if (weakest === undefined) return `load ${showValue(chain.load)}${open}`;
  return `lowest known limit ${showMost(weakest.workingLimit)} at ${weakest.name}, load ${showValue(chain.load)}${open}`;
}

export function hoverChainName(chain: AssessedChain): Answer {
  const seen = new Set<string>();
  const links = chain.routes.flatMap((r) => r.links).filter((l) => !seen.has(l.name) && seen.add(l.name));
  return { lead: `${chain.name}: ${chainSummary(chain)}`, lines: [`The load is ${chain.loadSays}.`], table: linksTable(chain, links), restsOn: [chain.load] };
}

export const linkAt = (chain: AssessedChain, chunk: object, at: number): AssessedLink | undefined => {
  for (const route of chain.routes) for (const link of route.links) if (link.place.chunk === chunk && link.place.start <= at && at <= link.place.end) return link;
  return undefined;
};
