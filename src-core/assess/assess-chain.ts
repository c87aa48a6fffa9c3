import type { Place } from '../base/span.ts';
import { anchorNotJudged } from '../mechanics/anchor-not-judged.ts';
import { asGiven, isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { nameOf, quantityOf, wordOf, type BoundBlock, type BoundLink, type BoundStatement, type Problem } from '../model/bound.ts';
import type { Declaration } from '../model/scope.ts';
import { assessGear, assessSized, gearHeads, type GearHead } from './assess-gear.ts';
import type { AssessedLine, AssessedPiece } from './assess-line.ts';
import type { AssessedWinch } from './assess-winch.ts';
import type { Assessing } from './assessing.ts';
import { factOf, statementOf, writtenValue } from './facts.ts';
import type { AssessedEnd } from './splice-end.ts';

export type LinkSort = 'line' | 'gear' | 'anchor' | 'vehicle' | 'other';

export interface AssessedLink {
  readonly link: BoundLink;
  readonly place: Place;
  /** As the file calls it: `main outboard`, `bow-22`. */
  readonly name: string;
  readonly sort: LinkSort;
  /** Kind of gear, for `gear`. */
  readonly gear: GearHead | undefined;
  readonly breaking: Value;
  /** Undefined where no limit is meant (an anchor has a holding power instead). */
  readonly workingLimit: Value;
  /** How the working limit was got, when it is not written. */
  readonly limitSays: string | undefined;
  readonly piece: AssessedPiece | undefined;
  readonly end: AssessedEnd | undefined;
  readonly declaration: Declaration | undefined;
}

export interface AssessedRoute {
  readonly statement: BoundStatement;
  readonly links: readonly AssessedLink[];
}

export interface AssessedChain {
  readonly kind: 'chain';
  readonly block: BoundBlock;
  readonly name: string;
  readonly routes: readonly AssessedRoute[];
  readonly winch: AssessedWinch | undefined;
  readonly repair: BoundBlock | undefined;
  /** What loads the chain: the pull at the written line out, else the winch's greatest. */
  readonly load: Value;
  readonly loadSays: string;
  readonly problems: readonly Problem[];
  /** The link with the lowest known working limit, and with the lowest known breaking strength. */
  readonly weakestByLimit: AssessedLink | undefined;
  readonly weakestByBreaking: AssessedLink | undefined;
  readonly unjudged: readonly { readonly link: AssessedLink; readonly cause: Cause }[];
}

export function assessChain(block: BoundBlock, assessing: Assessing): AssessedChain {
  const name = block.name ?? 'chain';
  const repairName = nameOf(block.header, 'repair');
  const repair = repairName === undefined ? undefined : assessing.reader.find(repairName.name, ['repair'])?.block;
  const problems: Problem[] = [];
  const routes: AssessedRoute[] = [];
  for (const statement of block.statements) {
    const route = statement.values.get('route');
    if (route?.type !== 'route') continue;
    routes.push({ statement, links: route.links.map((link) => assessLink(link, repair, assessing, problems)) });
  }
  const winch = winchOf(block, routes, assessing);
  const { load, loadSays } = loadOn(block, winch, name);
  const links = uniqueLinks(routes);
  return {
    kind: 'chain', block, name, routes, winch, repair, load, loadSays, problems,
    weakestByLimit: weakest(links, (l) => l.workingLimit),
    weakestByBreaking: weakest(links, (l) => l.breaking),
    unjudged: links.flatMap((link) => (isUnknown(link.workingLimit) ? [{ link, cause: link.workingLimit.unknown }] : [])),
  };
}

function uniqueLinks(routes: readonly AssessedRoute[]): AssessedLink[] {
  const seen = new Map<string, AssessedLink>();
  for (const route of routes) for (const link of route.links) if (!seen.has(link.name)) seen.set(link.name, link);
  return [...seen.values()];
}

function weakest(links: readonly AssessedLink[], figure: (link: AssessedLink) => Value): AssessedLink | undefined {
  let found: AssessedLink | undefined;
  let least = Infinity;
  for (const link of links) {
    const value = figure(link);
    if (!isUnknown(value) && value.amount.low < least) [found, least] = [link, value.amount.low];
  }
  return found;
}

function winchOf(block: BoundBlock, routes: readonly AssessedRoute[], assessing: Assessing): AssessedWinch | undefined {
  const statement = statementOf(block, 'with');
  const named = statement === undefined ? undefined : nameOf(statement.values, 'winch');
  if (named !== undefined) {
    const found = assessing.reader.find(named.name, ['winch']);
    return found === undefined ? undefined : assessing.winch(found.block);
  }
  for (const route of routes) {
    for (const link of route.links) {
      if (link.piece === undefined) continue;
      const winch = assessing.reader.winchesCarrying(link.piece.name)[0];
      if (winch !== undefined) return assessing.winch(winch);
    }
  }
  return undefined;
}

function loadOn(block: BoundBlock, winch: AssessedWinch | undefined, name: string): { load: Value; loadSays: string } {
  const out = statementOf(block, 'out');
  const distance = out === undefined ? undefined : quantityOf(out.values, 'out');
  if (winch === undefined) {
    return { load: unknown({ key: `winch of ${name}`, says: `no winch carries a line of \`${name}\`, so what loads it is not known`, help: 'add `with` and the winch to the chain, or `carries` to the winch', place: block.namePlace }), loadSays: 'the pull of its winch' };
  }
  if (distance === undefined) return { load: winch.greatestPull, loadSays: `the most that \`${winch.name}\` can pull, on its first layer` };
  return { load: asGiven(winch.at(writtenValue(distance)).pull), loadSays: `the pull of \`${winch.name}\` with that much line out` };
}

const problem = (code: string, place: Place, message: string, help: string): Problem => ({ code, place, message, help });

function assessLink(link: BoundLink, repair: BoundBlock | undefined, assessing: Assessing, problems: Problem[]): AssessedLink {
  const base = { link, place: link.place, piece: undefined, end: undefined, gear: undefined, declaration: undefined, limitSays: undefined };
  if (link.link === 'sized') {
    const sized = assessSized(link, assessing.practice);
    return { ...base, name: sized.name, sort: 'gear', gear: link.gear, breaking: sized.breakingStrength, workingLimit: sized.workingLimit, limitSays: link.standard };
  }
  const declaration = assessing.reader.find(link.name, ['line', 'piece', ...gearHeads, 'anchor', 'vehicle', 'thimble']);
  const name = link.part === undefined ? link.name : `${link.name} ${link.part.name}`;
  if (declaration === undefined) {
    const known = assessing.reader.declarations(link.name)[0];
    const why = known === undefined ? unknown({ key: `name ${link.name}`, says: `\`${link.name}\` is not known`, help: 'declare it', place: link.place, reported: true }) : unknown({ key: `link ${link.name}`, says: `a ${known.kind} is not a link`, help: 'write a line, gear, an anchor or a vehicle', place: link.place, reported: true });
    return { ...base, name, sort: 'other', breaking: why, workingLimit: why };
  }
  const { kind, block } = declaration;
  if (kind === 'line' || kind === 'piece') return { ...base, ...lineLink(link, declaration, repair, assessing, problems), name, sort: 'line', declaration };
  if (kind === 'anchor') {
    const holding = statementOf(block, 'holding') !== undefined || block.brokenHeads.has('holding') ? factOf(block, 'holding') : anchorNotJudged(link.name, wordOf(statementOf(block, 'kind')?.values ?? new Map(), 'kind') ?? 'anchor');
    return { ...base, name, sort: 'anchor', declaration, breaking: holding, workingLimit: isUnknown(holding) ? { unknown: { ...holding.unknown, place: holding.unknown.place ?? block.namePlace } } : { ...holding, kind: 'working limit' } };
  }
  if (kind === 'vehicle') return { ...base, ...pointLink(link, block, problems), name, sort: 'vehicle', declaration };
  if (kind === 'thimble') {
    const none = unknown({ key: `limit of ${link.name}`, says: `a thimble alone has no working load limit`, help: 'write the eye it sits in', place: link.place });
    return { ...base, name, sort: 'other', declaration, breaking: none, workingLimit: none };
  }
  const gear = assessGear(block, assessing.practice);
  return { ...base, name, sort: 'gear', gear: gear.head, declaration, breaking: gear.breakingStrength, workingLimit: gear.workingLimit, limitSays: gear.limitFrom === 'written' ? undefined : gear.limitFrom };
}

function pointLink(link: Extract<BoundLink, { link: 'name' }>, block: BoundBlock, problems: Problem[]): { breaking: Value; workingLimit: Value } {
  const points = block.statements.filter((s) => s.definition.head === 'point');
  const nameOfPoint = (s: BoundStatement): string | undefined => {
    const named = s.values.get('name');
    return named?.type === 'new-name' ? named.name : undefined;
  };
  if (link.part === undefined) {
    const why = unknown({ key: `point at ${link.place.start}`, says: `which recovery point of \`${link.name}\` is used is not given`, help: points.length > 0 ? `write it behind the name: \`${link.name} ${nameOfPoint(points[0]!) ?? 'bow'}\`` : 'add a `point` to the vehicle and write it behind the name', place: link.place });
    return { breaking: why, workingLimit: why };
  }
  const point = points.find((s) => nameOfPoint(s) === link.part!.name);
  if (point === undefined) {
    problems.push(problem('unknown-name', link.part.place, `\`${link.name}\` has no recovery point \`${link.part.name}\``, points.length > 0 ? `its points are ${points.map((s) => `\`${nameOfPoint(s) ?? '?'}\``).join(', ')}` : 'add `point` with its rating to the vehicle'));
    const why = unknown({ key: `point ${link.part.name}`, says: `the point is not known`, help: 'declare it', place: link.part.place, reported: true });
    return { breaking: why, workingLimit: why };
  }
  const rated = quantityOf(point.values, 'rated');
  const breaking = quantityOf(point.values, 'breaking');
  const missing = unknown({ key: `rating of ${link.name} ${link.part.name}`, says: `rating of \`${link.name} ${link.part.name}\` is not given`, help: 'add `rated` to the point, from its maker', place: point.place, ...(point.broken.size > 0 ? { reported: true } : {}) });
  return { breaking: breaking === undefined ? missing : writtenValue(breaking), workingLimit: rated === undefined ? missing : writtenValue(rated) };
}

function lineLink(link: Extract<BoundLink, { link: 'name' }>, declaration: Declaration, repair: BoundBlock | undefined, assessing: Assessing, problems: Problem[]): Pick<AssessedLink, 'breaking' | 'workingLimit' | 'piece' | 'end' | 'limitSays'> {
  const line = lineAfter(declaration, repair, assessing);
  const piece = line?.pieces.get(link.name);
  const reported = (says: string): { breaking: Value; workingLimit: Value } => {
    const why = unknown({ key: `piece ${link.name}`, says, help: 'correct the name or the repair', place: link.place, reported: true });
    return { breaking: why, workingLimit: why };
  };
  if (line === undefined || piece === undefined) {
    const kept = declaration.kind === 'piece' && declaration.block.definition.head === 'repair';
    problems.push(problem('unknown-piece', link.namePlace, kept && repair === undefined ? `\`${link.name}\` exists only after \`${declaration.block.name ?? 'the repair'}\`` : `\`${link.name}\` is not there any more when this chain is loaded`, kept && repair === undefined ? `write \`after ${declaration.block.name ?? ''}\` behind the chain's name` : 'name a piece that is left'));
    return { ...reported(`\`${link.name}\` is not a piece of the line here`), piece: undefined, end: undefined, limitSays: undefined };
  }
  let end: AssessedEnd | undefined;
  if (link.part !== undefined) {
    if (link.part.name === 'inboard') end = piece.inboard;
    else if (link.part.name === 'outboard') end = piece.outboard;
    else problems.push(problem('unknown-name', link.part.place, `\`${link.part.name}\` is not an end of a line`, 'write `inboard` or `outboard`'));
  }
  const breaking = end === undefined ? piece.body : weakerOf(piece.body, end.strength);
  const factor = assessing.practice.value('line-factor');
  const written = piece.line.working;
  const byFactor = asGiven(workingLimitFromBreaking({ MBL: asKind(breaking), f: factor }));
  return { breaking, workingLimit: written === undefined ? byFactor : weakerOf(written, byFactor), piece, end, limitSays: 'line factor' };
}

const asKind = (value: Value): Value => (isUnknown(value) ? value : { ...value, kind: 'breaking strength' });

/** The lower of two; unknown when either is. */
function weakerOf(a: Value, b: Value): Value {
  if (isUnknown(a)) return a;
  if (isUnknown(b)) return b;
  return (a as Given).amount.low <= (b as Given).amount.low ? a : b;
}

/** The line that a piece belongs to, as it is when the chain is loaded. */
function lineAfter(declaration: Declaration, repair: BoundBlock | undefined, assessing: Assessing): AssessedLine | undefined {
  const owner = declaration.block;
  const lineBlock = owner.definition.head === 'line' ? owner : assessing.lineOfRepair(owner);
  if (lineBlock === undefined) return undefined;
  if (repair !== undefined && assessing.lineOfRepair(repair) === lineBlock) return assessing.repaired(repair)?.after;
  return assessing.line(lineBlock);
}

