import type { AssessedLink } from './assess-chain.ts';
import { isHolder, partedRoutes } from './parted-routes.ts';

/**
 * Gear in the order in which a pull goes through it, from where it is hooked on to what holds it in the end.
 * A bridle ends in two runs of its own.
 */
export interface Run {
  readonly links: readonly AssessedLink[];
  /** The anchor or the vehicle at its end. */
  readonly holder: AssessedLink | undefined;
  readonly legs: readonly Run[];
  /** A link at which the run comes back to itself. */
  readonly closedAt: AssessedLink | undefined;
}

/** What a link is called without its end or point; gear by size has no name of its own. */
export const linkName = (link: AssessedLink): string | undefined => (link.link.link === 'name' ? link.link.name : undefined);

const nothing: Run = { links: [], holder: undefined, legs: [], closedAt: undefined };

/** As much of a chain as can be followed. */
interface Routes {
  readonly routes: readonly { readonly links: readonly AssessedLink[] }[];
}

interface Way {
  readonly index: number;
  readonly links: readonly AssessedLink[];
}

/** The routes of a chain as its pulls go through them, and each by the name that it begins with, turned where it ends with it. */
interface Ways {
  readonly routes: readonly (readonly AssessedLink[])[];
  readonly from: ReadonlyMap<string, readonly Way[]>;
}

const known = new WeakMap<Routes['routes'], Ways>();

function waysThrough({ routes: written }: Routes): Ways {
  let found = known.get(written);
  if (found === undefined) {
    const routes = partedRoutes(written.map((route) => route.links));
    const from = new Map<string, Way[]>();
    const put = (index: number, links: readonly AssessedLink[]): void => {
      const name = links[0] === undefined ? undefined : linkName(links[0]);
      if (name === undefined) return;
      const ways = from.get(name);
      if (ways === undefined) from.set(name, [{ index, links }]);
      else if (ways.at(-1)!.index !== index) ways.push({ index, links });
    };
    routes.forEach((links, index) => {
      put(index, links);
      put(index, [...links].reverse());
    });
    known.set(written, (found = { routes, from }));
  }
  return found;
}

class Follower {
  readonly #ways: Ways;
  readonly #used = new Set<number>();
  readonly #seen = new Set<string>();

  constructor(chain: Routes) {
    this.#ways = waysThrough(chain);
  }

  /** Routes not gone yet that begin or end with a name, turned so that they begin with it. */
  #from(name: string): readonly Way[] {
    return this.#ways.from.get(name)?.filter(({ index }) => !this.#used.has(index)) ?? [];
  }

  /** Routes that lead on from a link: what only says again how the line came to it does not. */
  #onwardFrom(name: string): readonly Way[] {
    return this.#from(name).filter(({ links }) => links.some((link) => !this.#seen.has(link.name)));
  }

  /** The first route that neither begins nor ends with one of these. */
  first(but: ReadonlySet<string>): Way | undefined {
    const isOne = (link: AssessedLink | undefined): boolean => link !== undefined && but.has(linkName(link) ?? '');
    const index = this.#ways.routes.findIndex((links) => links.length > 0 && !isOne(links[0]) && !isOne(links.at(-1)));
    const links = this.#ways.routes[index];
    return links === undefined ? undefined : { index, links };
  }

  start(name: string): Way | undefined {
    return this.#from(name)[0];
  }

  /** Where several routes hang one thing on what holds it, all of them are its legs. */
  followAll(name: string, skipFirst: boolean): Run | undefined {
    const from = this.#from(name);
    const legs = from.filter(({ index, links }) => this.#ways.routes[index] === links || isHolder(links.at(-1)!));
    if (legs.length < 2) return from[0] === undefined ? undefined : this.follow(from[0], skipFirst);
    for (const leg of legs) this.#used.add(leg.index);
    return { ...nothing, links: skipFirst ? [] : legs[0]!.links.slice(0, 1), legs: this.#legs(legs, true) };
  }

  follow(start: Way, skipStart: boolean): Run {
    const links: AssessedLink[] = [];
    for (let [route, skipFirst] = [start, skipStart]; ; ) {
      this.#used.add(route.index);
      for (const [i, link] of route.links.entries()) {
        if (i === 0 && skipFirst) continue;
        if (isHolder(link)) return { ...nothing, links, holder: link };
        // An end of a line may come once; the other end of the same line goes on from it.
        if (this.#seen.has(link.name) && link.link.link === 'name') return { ...nothing, links, closedAt: link };
        this.#seen.add(link.name);
        links.push(link);
        // Another route that hangs on a shackle or a ring in the middle of this one is the other leg of a bridle. What hangs on a block holds it.
        if (i === route.links.length - 1 || link.sort !== 'gear' || link.gear === 'block' || link.link.link !== 'name') continue;
        const beside = this.#onwardFrom(link.link.name);
        for (const leg of beside) this.#used.add(leg.index);
        if (beside.length > 0) return { ...nothing, links, legs: this.#legs([{ index: route.index, links: route.links.slice(i) }, ...beside], true) };
      }
      const last = route.links.at(-1)!;
      const name = linkName(last);
      const onward = name === undefined ? [] : this.#onwardFrom(name);
      if (onward.length === 0) return { ...nothing, links };
      const isLine = last.sort === 'line';
      if (onward.length > 1) {
        for (const leg of onward) this.#used.add(leg.index);
        return { ...nothing, links, legs: this.#legs(onward, !isLine) };
      }
      [route, skipFirst] = [onward[0]!, !isLine];
    }
  }

  /** Where legs meet again, the one that goes on to a holder takes the rest with it, in whatever order they are written. */
  #legs(onward: readonly Way[], skipFirst: boolean): Run[] {
    const goesOn = ({ links }: Way): number => (isHolder(links.at(-1)!) ? 0 : 1);
    const followed = new Map([...onward].sort((a, b) => goesOn(a) - goesOn(b)).map((leg) => [leg, this.follow(leg, skipFirst)]));
    return onward.map((leg) => followed.get(leg)!);
  }
}

/**
 * The run from the end of the line on the winch; from the first link when no link is that line. What holds one of the blocks on the way
 * (`fastened`: the blocks, and what they are made fast to) is not the line's end.
 */
export function runFromLine(chain: Routes, line: string | undefined, fastened: ReadonlySet<string>): Run {
  const follower = new Follower(chain);
  const start = (line === undefined ? undefined : follower.start(line)) ?? follower.first(fastened);
  return start === undefined ? nothing : follower.follow(start, false);
}

/** The run that begins at a piece of gear, itself counted or not; undefined when no route begins with it. */
export function runFromGear(chain: Routes, name: string, itself: boolean): Run | undefined {
  return new Follower(chain).followAll(name, !itself);
}

/** The run whose legs the `bridle` of a pull speaks of: the line's end; where that does not part, what holds the one block that hangs on two legs. */
export function bridledRun(run: Run | undefined, blocks: readonly { readonly run: Run | undefined }[]): Run | undefined {
  if (run !== undefined && run.legs.length > 0) return run;
  const parted = blocks.flatMap((b) => (b.run !== undefined && b.run.legs.length > 0 ? [b.run] : []));
  return parted.length === 1 ? parted[0] : undefined;
}

/** Where a leg runs into another leg of its fork: behind that link both pull together. Undefined for a leg that ends by itself. */
export const meetsAt = (leg: Run, { legs }: Run): AssessedLink | undefined =>
  leg.closedAt !== undefined && leg.legs.length === 0 && legs.some((other) => other !== leg && other.links.some((link) => link.name === leg.closedAt!.name)) ? leg.closedAt : undefined;

/** Where a run, or one of its legs, comes back to itself. */
export const closedAt = (run: Run): AssessedLink | undefined => run.closedAt ?? run.legs.flatMap((leg) => (meetsAt(leg, run) === undefined ? [closedAt(leg)] : [])).find((link) => link !== undefined);

/** All links of a run and of its legs. */
export const allLinks = (run: Run): AssessedLink[] => [...run.links, ...run.legs.flatMap(allLinks)];
