import type { BareLink } from './assess-chain.ts';

type Links = readonly BareLink[];

/** Which links hang on which, by key. */
interface Graph {
  readonly beside: ReadonlyMap<string, ReadonlySet<string>>;
  readonly links: ReadonlyMap<string, BareLink>;
}

const isHolder = (link: BareLink): boolean => link.sort === 'anchor' || link.sort === 'vehicle';
const isEndless = (link: BareLink): boolean => link.piece !== undefined && link.end === undefined;

/** A line that is named without an end and stands beside a block runs over it and is joined to nothing there. */
export function runsOver(links: Links, i: number): boolean {
  return links[i + 1]?.gear === 'block' || (i === links.length - 1 && links[i - 1]?.gear === 'block');
}

/**
 * The links that have the pull of both parts of the line, by key: from every block that the line turns at, along all
 * routes that are joined there and whichever way they are written, to what holds it.
 */
export function turnedLinks(routes: readonly Links[], winchLine: string | undefined): ReadonlySet<string> {
  const turned = new Set<string>();
  const graph = joined(routes);
  const ends = lineEnds(routes, graph, winchLine);
  const reached = fromEnds(ends, graph);
  const blocks = new Set<string>();
  for (const route of routes) {
    let isBehind = false;
    route.forEach((link, i) => {
      const [before, after] = [route[i - 1], route[i + 1]];
      if (link.gear === 'block') {
        const runs = [before, after].some((other) => other !== undefined && isEndless(other));
        // A block between two pieces of gear hangs in the line only where the line's end leads to it.
        if (before === undefined || after === undefined || runs || !reached.has(link.key)) blocks.add(link.key);
        if (before === undefined || isEndless(before)) isBehind = true;
      }
      // What is written behind it is loaded by it, even where an anchor stands in the middle of the route.
      if (isBehind) turned.add(link.key);
    });
  }
  spread(blocks, graph, wayOfLine(ends, graph), turned);
  return turned;
}

/**
 * How many parts of the line pull at what holds them, by key, where that is more than one run of gear brings to it: the line's end and a
 * block that hang on one tree, for example. Gear that is joined before it gets there counts once.
 */
export function partsAtHolders(routes: readonly Links[], turned: ReadonlySet<string>): ReadonlyMap<string, number> {
  const { beside, links } = joined(routes);
  const runOf = new Map<string, string>();
  for (const key of links.keys()) {
    if (runOf.has(key) || isHolder(links.get(key)!)) continue;
    const run = new Set([key]);
    for (const each of run) {
      runOf.set(each, key);
      for (const next of beside.get(each)!) if (!isHolder(links.get(next)!)) run.add(next);
    }
  }
  const parts = new Map<string, number>();
  for (const [key, link] of links) {
    if (!isHolder(link)) continue;
    const brought = new Map<string, number>();
    for (const next of beside.get(key)!) {
      const run = runOf.get(next);
      if (run !== undefined) brought.set(run, Math.max(brought.get(run) ?? 0, turned.has(next) ? 2 : 1));
    }
    if (brought.size > 1) parts.set(key, [...brought.values()].reduce((sum, n) => sum + n, 0));
  }
  return parts;
}

/** Which links hang on each other, over all routes; a line hangs on from one of its ends to the other. */
function joined(routes: readonly Links[]): Graph {
  const beside = new Map<string, Set<string>>();
  const links = new Map<string, BareLink>();
  const join = (a: string, b: string): void => {
    if (a === b) return;
    beside.get(a)!.add(b);
    beside.get(b)!.add(a);
  };
  const ends = new Map<string, string>();
  for (const route of routes) {
    for (const link of route) {
      links.set(link.key, link);
      if (!beside.has(link.key)) beside.set(link.key, new Set());
      if (link.piece === undefined || link.end === undefined) continue;
      const other = ends.get(link.piece.name);
      if (other === undefined) ends.set(link.piece.name, link.key);
      else join(other, link.key);
    }
    route.forEach((link, i) => {
      const next = route[i + 1];
      if (next === undefined || (link.gear === 'block' && isEndless(next)) || (next.gear === 'block' && isEndless(link))) return;
      join(link.key, next.key);
    });
  }
  return { beside, links };
}

/** Ends of the line on the winch; where none is named, the end that the chain begins with. */
function lineEnds(routes: readonly Links[], { links }: Graph, winchLine: string | undefined): string[] {
  const ends = [...links.values()].filter((link) => link.end !== undefined && link.piece?.name === winchLine);
  const first = routes[0]?.[0];
  return (ends.length > 0 ? ends : first?.end !== undefined ? [first] : []).map((link) => link.key);
}

/** The links to which an end of the line leads, what holds them included and nothing behind it. */
function fromEnds(ends: readonly string[], { beside, links }: Graph): ReadonlySet<string> {
  const reached = new Set(ends);
  for (const key of reached) if (!isHolder(links.get(key)!)) for (const next of beside.get(key)!) reached.add(next);
  return reached;
}

/** The way on which the line comes, up to the first fork, block or holder: no block hands its pull back on it. */
function wayOfLine(ends: readonly string[], { beside, links }: Graph): ReadonlySet<string> {
  const way = new Set(ends);
  for (const key of way) {
    for (const next of beside.get(key)!) {
      const link = links.get(next)!;
      const others = [...beside.get(next)!].filter((other) => !way.has(other));
      if (!isHolder(link) && link.gear !== 'block' && others.length <= 1) way.add(next);
    }
  }
  return way;
}

function spread(blocks: ReadonlySet<string>, { beside, links }: Graph, way: ReadonlySet<string>, turned: Set<string>): void {
  const gone = new Set(blocks);
  for (const key of gone) {
    turned.add(key);
    if (isHolder(links.get(key)!)) continue;
    for (const next of beside.get(key)!) if (!way.has(next)) gone.add(next);
  }
}
