import { isUnknown, type Cause, type Given, type Value } from './derivation.ts';

export interface Link {
  readonly name: string;
  readonly breaking?: Value | undefined;
  readonly workingLimit?: Value | undefined;
  /** Design factor between the two, where only one is given. */
  readonly factor?: Value | undefined;
}

/** A link's figure at its careful end (N), with the value it came from. */
export interface LinkFigure {
  readonly force_N: number;
  readonly from: Given;
  /** True when the factor was put between: working limit from breaking strength, or the other way round. */
  readonly byFactor: boolean;
}

export interface JudgedLink {
  readonly name: string;
  readonly workingLimit: LinkFigure | undefined;
  readonly breaking: LinkFigure | undefined;
}

export interface UnjudgedLink {
  readonly name: string;
  readonly causes: readonly Cause[];
}

export interface WeakestBy {
  /** The weakest of the links whose figure is known: the weakest of all only when `unjudged` is empty. */
  readonly weakestKnown: JudgedLink | undefined;
  /** Links without that figure, any of which may be weaker still. */
  readonly unjudged: readonly UnjudgedLink[];
}

export interface WeakestLink {
  readonly links: readonly JudgedLink[];
  readonly byWorkingLimit: WeakestBy;
  readonly byBreaking: WeakestBy;
}

const known = (value: Value | undefined): Given | undefined => (value === undefined || isUnknown(value) ? undefined : value);

function figure(own: Value | undefined, other: Value | undefined, factor: Value | undefined, convert: (force_N: number, factor: Given) => number): LinkFigure | undefined {
  const given = known(own);
  if (given !== undefined) return { force_N: given.amount.low, from: given, byFactor: false };
  const rest = known(other);
  const between = known(factor);
  if (rest === undefined || between === undefined || !(between.amount.low > 0)) return undefined;
  return { force_N: convert(rest.amount.low, between), from: rest, byFactor: true };
}

function missing(link: Link, what: 'breaking strength' | 'working limit'): UnjudgedLink {
  const causes = [link.breaking, link.workingLimit, link.factor].flatMap((value) => (value !== undefined && isUnknown(value) ? [value.unknown] : []));
  if (causes.length > 0) return { name: link.name, causes };
  return { name: link.name, causes: [{ key: `${what} of ${link.name}`, says: `${what} of \`${link.name}\` is not given`, help: `write it from the tag or mark of \`${link.name}\`` }] };
}

function weakest(links: readonly Link[], judged: readonly JudgedLink[], what: 'breaking' | 'workingLimit'): WeakestBy {
  let weakestKnown: JudgedLink | undefined;
  const unjudged: UnjudgedLink[] = [];
  judged.forEach((link, i) => {
    const force = link[what]?.force_N;
    if (force === undefined) unjudged.push(missing(links[i]!, what === 'breaking' ? 'breaking strength' : 'working limit'));
    else if (weakestKnown === undefined || force < weakestKnown[what]!.force_N) weakestKnown = link;
  });
  return { weakestKnown, unjudged };
}

/**
 * Each link's working limit and breaking strength at the careful end, and the weakest of the known ones. A working
 * limit from a breaking strength takes the higher factor, a breaking strength from a working limit the lower one.
 */
export function weakestLink(links: readonly Link[]): WeakestLink {
  const judged = links.map(
    (link): JudgedLink => ({
      name: link.name,
      workingLimit: figure(link.workingLimit, link.breaking, link.factor, (force_N, factor) => force_N / factor.amount.high),
      breaking: figure(link.breaking, link.workingLimit, link.factor, (force_N, factor) => force_N * factor.amount.low),
    }),
  );
  return { links: judged, byWorkingLimit: weakest(links, judged, 'workingLimit'), byBreaking: weakest(links, judged, 'breaking') };
}
