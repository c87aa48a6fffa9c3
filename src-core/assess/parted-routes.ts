import type { AssessedLink } from './assess-chain.ts';

type Links = readonly AssessedLink[];

export const isHolder = (link: AssessedLink): boolean => link.sort === 'anchor' || link.sort === 'vehicle';

/** Gear that the file has by name, so that it is the same wherever it stands. */
const isNamedGear = (link: AssessedLink): boolean => link.sort === 'gear' && link.link.link === 'name';

/**
 * The two legs of a bridle, however they are written, as routes from where they part. Two whole routes have their stem in common; one route
 * from anchor to anchor hangs in its middle on what another one ends at, or on its block.
 */
export function partedRoutes(routes: readonly Links[]): readonly Links[] {
  if (routes.length < 2 && !routes.some(goesAcross)) return routes;
  const ends = new Set(routes.flatMap((links) => (links.length === 0 ? [] : [links[0]!.key, links.at(-1)!.key])));
  const parted: Links[] = [];
  const before = new Map<string, Links[]>();
  for (const links of routes) {
    const at = goesAcross(links) ? links.findIndex((link) => isNamedGear(link) && (link.gear === 'block' || ends.has(link.key))) : -1;
    if (at >= 0) parted.push(links.slice(0, at + 1).reverse(), links.slice(at));
    else parted.push(withoutStem(links, before));
    for (const way of [links, [...links].reverse()]) {
      const key = way[0]?.key ?? '';
      const alike = before.get(key);
      if (alike === undefined) before.set(key, [way]);
      else alike.push(way);
    }
  }
  return parted;
}

/** From one that holds to another. */
export const goesAcross = (links: Links): boolean => links.length > 2 && isHolder(links[0]!) && isHolder(links.at(-1)!);

/** A route from where it leaves the one before it that it goes along with farthest. */
function withoutStem(links: Links, before: ReadonlyMap<string, readonly Links[]>): Links {
  let [rest, most] = [links, 1];
  for (const way of [links, [...links].reverse()]) {
    for (const other of before.get(way[0]?.key ?? '') ?? []) {
      const shared = sharedStem(way, other);
      const last = way[shared - 1];
      if (shared > most && shared < way.length && isNamedGear(last!) && last!.gear !== 'block') [rest, most] = [way.slice(shared - 1), shared];
    }
  }
  return rest;
}

/** How many links two ways have in common from their beginning. */
function sharedStem(way: Links, other: Links): number {
  const parts = way.findIndex((link, i) => link.key !== other[i]?.key);
  return parts < 0 ? way.length : parts;
}
