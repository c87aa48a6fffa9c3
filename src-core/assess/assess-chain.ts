import type { Place } from '../base/span.ts';
import { blockLoad } from '../mechanics/block-load.ts';
import { loadOfParts } from '../mechanics/load-of-parts.ts';
import { asGiven, isUnknown, lowerOf, mostOf, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { nameOf, quantityOf, type BoundBlock, type BoundLink, type BoundQuantity, type BoundStatement, type Problem } from '../model/bound.ts';
import type { Declaration } from '../model/scope.ts';
import { nearWord } from '../model/slips.ts';
import { exactly } from '../units/amount.ts';
import { ends } from '../vocabulary/blocks/line.ts';
import { assessGear, assessSized, damageOf, gearHeads, type AssessedGear, type GearHead, type LimitFrom } from './assess-gear.ts';
import type { AssessedLine, AssessedPiece } from './assess-line.ts';
import { carriedName, type AssessedWinch } from './assess-winch.ts';
import type { Assessing } from './assessing.ts';
import { allJoints, endNotGiven, isRopeOnRope, ropeOnRopeCause, type Joint } from './chain-joints.ts';
import { angleOfLegs, legsOf, loadOfLeg } from './chain-legs.ts';
import { partsAtHolders, runsOver, turnedLinks } from './chain-turns.ts';
import { statementOf, writtenValue } from './facts.ts';
import { angleOfPulls, type LaidChain } from './pull-layout.ts';
import type { AssessedEnd } from './splice-end.ts';
import { winchAfter } from './winch-after.ts';

export type LinkSort = 'line' | 'gear' | 'anchor' | 'vehicle' | 'other';

export interface AssessedLink {
  readonly link: BoundLink;
  readonly place: Place;
  /** As the file calls it: `main outboard`, `bow-22`, `shackle bow 19 mm`. */
  readonly name: string;
  /** The same wherever the same thing stands in the chain; gear given by size only is another one each time. */
  readonly key: string;
  readonly sort: LinkSort;
  /** Kind of gear, for `gear`. */
  readonly gear: GearHead | undefined;
  /** All that its block says, for gear by name. */
  readonly gearFacts: AssessedGear | undefined;
  /** Body diameter, for gear by size. */
  readonly size: Value | undefined;
  readonly breaking: Value;
  /** True when a tag gives the breaking strength, or it is what damage and splices leave of a tag's. */
  readonly breakingGiven: boolean;
  /** Undefined where no limit is meant (an anchor has a holding power instead). */
  readonly workingLimit: Value;
  readonly limitFrom: LinkLimitFrom;
  /** How the working limit was got, when it is not written. */
  readonly limitSays: string | undefined;
  readonly piece: AssessedPiece | undefined;
  readonly end: AssessedEnd | undefined;
  readonly declaration: Declaration | undefined;
  /** The vehicle of which a recovery point is named, by its own name or as an anchor, and what that point may take. */
  readonly pointOf?: BoundBlock | undefined;
  readonly point?: Value;
  /** What loads it: the chain's load, twice that from a block on that the line turns at. */
  readonly load: Value;
  readonly turned: boolean;
  /** Parts of the line that pull at it, where several runs of gear end at it. */
  readonly parts: number | undefined;
  /** In one leg of a bridle, at the chain's end or behind a block; its angle only a pull gives. */
  readonly inLeg: boolean;
  /** Why it may be weaker than its figures: what holds by them is then not judged. */
  readonly doubt: Cause | undefined;
}

export type LinkLimitFrom = LimitFrom | 'line factor' | 'holding power';

/** A link before it is known what loads it. */
export type BareLink = Omit<AssessedLink, 'load' | 'turned' | 'parts' | 'inLeg'>;

export interface AssessedRoute {
  readonly statement: BoundStatement;
  readonly links: readonly AssessedLink[];
}

export interface AssessedChain {
  readonly kind: 'chain';
  readonly block: BoundBlock;
  readonly name: string;
  readonly routes: readonly AssessedRoute[];
  /** Every link once, however often it is written. */
  readonly links: readonly AssessedLink[];
  readonly joints: readonly Joint[];
  readonly winch: AssessedWinch | undefined;
  readonly repair: BoundBlock | undefined;
  /** What loads the chain: the pull at the written line out, else the winch's greatest. */
  readonly load: Value;
  readonly loadSays: string;
  readonly problems: readonly Problem[];
  /** The link with the lowest known working limit, and with the lowest known breaking strength; what an unknown one is at most counts. */
  readonly weakestByLimit: AssessedLink | undefined;
  readonly weakestByBreaking: AssessedLink | undefined;
  readonly unjudged: readonly { readonly link: AssessedLink; readonly cause: Cause }[];
}

export function assessChain(block: BoundBlock, assessing: Assessing): AssessedChain {
  const name = block.name ?? 'chain';
  const repairName = nameOf(block.header, 'repair');
  const repair = repairName === undefined ? undefined : assessing.reader.find(repairName.name, ['repair'])?.block;
  const problems: Problem[] = [];
  const bare: { statement: BoundStatement; links: BareLink[] }[] = [];
  for (const statement of block.statements) {
    const route = statement.values.get('route');
    if (route?.type !== 'route') continue;
    bare.push({ statement, links: route.links.map((link) => assessLink(link, repair, assessing, problems)) });
  }
  const winch = winchOf(block, bare, repair, assessing);
  const pulls = assessing.reader.pullsThrough(name);
  const { load, loadSays } = loadOn(block, winch, name, winchesOn(bare, assessing).map((w) => w.name ?? 'winch'), pulls);
  const turned = turnedLinks(bare.map(({ links }) => links), winch === undefined ? undefined : carriedName(winch.block));
  const parts = partsAtHolders(bare.map(({ links }) => links), turned);
  const legs = legsOf(bare, winch === undefined ? undefined : carriedName(winch.block));
  const angle = angleOfPulls(pulls, { name, block, winch, repair, routes: bare as readonly { readonly links: readonly BareLink[] }[] as LaidChain['routes'] }, assessing);
  const loads: ChainLoads = { load, turned, parts, legs, angle, legAngle: angleOfLegs(pulls) };
  const loaded = bare.map(({ statement, links }) => ({ statement, links: withLoads(links, loads) }));
  const doubts = new Map<string, Cause>();
  const doubt = (link: AssessedLink, cause: Cause): void => void (doubts.has(link.key) || doubts.set(link.key, cause));
  for (const joint of allJoints(loaded)) {
    const { first, second } = joint;
    for (const [link, other] of [[first, second], [second, first]] as const) {
      if (isRopeOnRope(joint) === true) doubt(link, ropeOnRopeCause(joint));
      if (link.end?.facts.form === 'hook' && other.gear !== 'hook') doubt(link, hookUnrated(link));
    }
  }
  const routes = loaded.map(({ statement, links }) => ({ statement, links: links.map((link) => ({ ...link, doubt: link.doubt ?? doubts.get(link.key) })) }));
  const links = uniqueLinks(routes);
  return {
    kind: 'chain', block, name, routes, links, joints: allJoints(routes), winch, repair, load, loadSays, problems,
    weakestByLimit: weakest(links, (l) => l.workingLimit),
    weakestByBreaking: weakest(links, (l) => l.breaking),
    unjudged: links.flatMap((link) => (isUnknown(link.workingLimit) ? [{ link, cause: link.workingLimit.unknown }] : [])),
  };
}

/** A hook on the line itself has a limit of its own, which no statement of a line gives. */
const hookUnrated = ({ piece, end }: AssessedLink): Cause => ({
  key: `hook of ${end!.which} end of ${piece!.name}`,
  says: `what the hook at the ${end!.which} end of \`${piece!.name}\` may bear is not given`,
  help: `declare it as a \`hook\` with its \`wll\`, and write it behind \`${piece!.name} ${end!.which}\` in the route`,
  place: end!.facts.place,
});

function uniqueLinks(routes: readonly AssessedRoute[]): AssessedLink[] {
  const seen = new Map<string, AssessedLink>();
  for (const route of routes) for (const link of route.links) if (!seen.has(link.key)) seen.set(link.key, link);
  return [...seen.values()];
}

function weakest(links: readonly AssessedLink[], figure: (link: AssessedLink) => Value): AssessedLink | undefined {
  let found: AssessedLink | undefined;
  let least = Infinity;
  for (const link of links) {
    const most = mostOf(figure(link));
    if (most !== undefined && most.amount.low < least) [found, least] = [link, most.amount.low];
  }
  return found;
}

interface ChainLoads {
  readonly load: Value;
  readonly turned: ReadonlySet<string>;
  readonly parts: ReadonlyMap<string, number>;
  readonly legs: ReadonlyMap<string, boolean>;
  /** Between the parts of the line at a block, and between the legs of a bridle. */
  readonly angle: Given;
  readonly legAngle: Given;
}

/** What hangs on a block that the line turns at has the pull of both parts; what hangs in the line itself has its pull once. What several of those end at has the pull of all. */
function withLoads(links: readonly BareLink[], { load, turned, parts: partsAt, legs, angle, legAngle }: ChainLoads): AssessedLink[] {
  return links.map((link, i) => {
    const doubt = link.doubt ?? (link.piece !== undefined && link.end === undefined && !runsOver(links, i) ? endNotGiven(link as AssessedLink) : undefined);
    const isTurned = turned.has(link.key);
    const parts = partsAt.get(link.key);
    if (parts !== undefined) return { ...link, doubt, turned: true, parts, inLeg: false, load: asGiven(loadOfParts({ T: load, n: { amount: exactly(parts), kind: 'count', origin: { from: 'written', place: link.place } } })) };
    const whole = isTurned ? asGiven(blockLoad({ T: load, θ: angle })) : load;
    const isAngleGiven = legs.get(link.key);
    return { ...link, doubt, turned: isTurned, parts, inLeg: isAngleGiven !== undefined, load: isAngleGiven === undefined ? whole : loadOfLeg(whole, isAngleGiven ? legAngle : undefined) };
  });
}

function winchOf(block: BoundBlock, routes: readonly { readonly links: readonly BareLink[] }[], repair: BoundBlock | undefined, assessing: Assessing): AssessedWinch | undefined {
  const statement = statementOf(block, 'with');
  const named = statement === undefined ? undefined : nameOf(statement.values, 'winch');
  if (named !== undefined) {
    const found = assessing.reader.find(named.name, ['winch']);
    return found === undefined ? undefined : winchAfter(found.block, repair, assessing);
  }
  const [carrying] = winchesOn(routes, assessing);
  return carrying === undefined ? undefined : winchAfter(carrying, repair, assessing);
}

/** The winches that carry a line of the chain, in the order of its links. */
const winchesOn = (routes: readonly { readonly links: readonly BareLink[] }[], { reader }: Assessing): BoundBlock[] => [
  ...new Set(routes.flatMap(({ links }) => links.flatMap(({ piece }) => (piece === undefined ? [] : reader.winchesCarrying(piece.name).slice(0, 1))))),
];

function loadOn(block: BoundBlock, winch: AssessedWinch | undefined, name: string, carrying: readonly string[], pulls: readonly BoundBlock[]): { load: Value; loadSays: string } {
  if (carrying.length > 1 && statementOf(block, 'with') === undefined) {
    const both = carrying.map((w) => `\`${w}\``).join(' and ');
    return { load: unknown({ key: `winch of ${name}`, says: `${both} carry lines of \`${name}\`, and which of them loads it is not given`, help: 'add `with` and the winch to the chain, the stronger one where both may pull', place: block.namePlace }), loadSays: 'the pull of its winch' };
  }
  const out = statementOf(block, 'out');
  const distance = out === undefined ? undefined : quantityOf(out.values, 'out');
  if (winch === undefined) {
    return { load: unknown({ key: `winch of ${name}`, says: `no winch carries a line of \`${name}\`, so what loads it is not known`, help: 'add `with` and the winch to the chain, or `carries` to the winch', place: block.namePlace }), loadSays: 'the pull of its winch' };
  }
  const reach = distance === undefined ? longestReach(pulls, winch) : undefined;
  const reached = reach === undefined ? undefined : asGiven(winch.at(writtenValue(reach)).pull);
  // A reach that takes an extension is longer than the line on the drum.
  if (reached !== undefined && !isUnknown(reached)) return { load: reached, loadSays: `the pull of \`${winch.name}\` with as much line out as its pulls reach` };
  if (distance === undefined) return { load: winch.greatestPull, loadSays: `the most that \`${winch.name}\` can pull, on its first layer` };
  return { load: asGiven(winch.at(writtenValue(distance)).pull), loadSays: `the pull of \`${winch.name}\` with that much line out` };
}

/** No more line is out than the pulls through a chain reach, where it runs straight; undefined where one of them does not say so. */
function longestReach(pulls: readonly BoundBlock[], winch: AssessedWinch): BoundQuantity | undefined {
  let longest: BoundQuantity | undefined;
  for (const pull of pulls) {
    const statement = statementOf(pull, 'reach');
    const reach = statement === undefined || statement.broken.size > 0 ? undefined : quantityOf(statement.values, 'reach');
    if (reach === undefined || nameOf(pull.header, 'winch')?.name !== winch.name || pull.brokenHeads.has('via') || statementOf(pull, 'via') !== undefined) return undefined;
    if (longest === undefined || reach.value > longest.value) longest = reach;
  }
  return longest;
}

const problem = (code: string, place: Place, message: string, help: string): Problem => ({ code, place, message, help });

const linkKinds = ['line', 'piece', ...gearHeads, 'anchor', 'vehicle', 'thimble'] as const;

function assessLink(link: BoundLink, repair: BoundBlock | undefined, assessing: Assessing, problems: Problem[]): BareLink {
  const base = { link, place: link.place, piece: undefined, end: undefined, gear: undefined, gearFacts: undefined, size: undefined, breakingGiven: false, limitFrom: 'none' as const, declaration: undefined, limitSays: undefined, doubt: undefined };
  if (link.link === 'sized') {
    const sized = assessSized(link, assessing.practice);
    return { ...base, name: sized.name, key: `sized ${link.place.start}`, sort: 'gear', gear: link.gear, size: sized.size, breaking: sized.breakingStrength, workingLimit: sized.workingLimit, limitFrom: link.standard === undefined ? 'none' : 'table', limitSays: link.standard };
  }
  const declaration = assessing.reader.find(link.name, linkKinds);
  const name = link.part === undefined ? link.name : `${link.name} ${link.part.name}`;
  const key = name;
  if (declaration === undefined) {
    const known = assessing.reader.declarations(link.name)[0];
    const why = known === undefined ? unknown({ key: `name ${link.name}`, says: `\`${link.name}\` is not known`, help: 'declare it', place: link.place, reported: true }) : unknown({ key: `link ${link.name}`, says: `a ${known.kind} is not a link`, help: 'write a line, gear, an anchor or a vehicle', place: link.place, reported: true });
    return { ...base, name, key, sort: 'other', breaking: why, workingLimit: why };
  }
  const { kind, block } = declaration;
  if (kind === 'line' || kind === 'piece') return { ...base, ...lineLink(link, declaration, repair, assessing, problems), name, key, sort: 'line', declaration };
  if (kind === 'anchor') return { ...base, ...anchorLink(link, block, assessing, problems), name, key, sort: 'anchor', declaration };
  if (kind === 'vehicle') {
    const point = pointLink(link, block, problems);
    return { ...base, ...point, name, key, sort: 'vehicle', declaration, pointOf: block, point: point.workingLimit };
  }
  if (kind === 'thimble') {
    const none = unknown({ key: `limit of ${link.name}`, says: `a thimble alone has no working load limit`, help: 'write the eye it sits in', place: link.place });
    return { ...base, name, key, sort: 'other', declaration, breaking: none, workingLimit: none };
  }
  const gear = assessGear(block, assessing.practice);
  if (link.part !== undefined) problems.push(problem('unknown-name', link.part.place, `\`${link.name}\` is a ${kind} and has no end or point named \`${link.part.name}\``, 'write its name alone'));
  return { ...base, name, key, sort: 'gear', gear: gear.head, gearFacts: gear, declaration, breaking: gear.breakingAsLoaded, breakingGiven: gear.breakingKnown, workingLimit: gear.workingLimit, limitFrom: gear.limitFrom, doubt: damageOf(gear), limitSays: gear.limitFrom === 'written' ? undefined : gear.limitFrom };
}

/** An anchor holds what it holds; a vehicle that stands as one no more than the point that is named behind it. */
function anchorLink(link: Extract<BoundLink, { link: 'name' }>, block: BoundBlock, assessing: Assessing, problems: Problem[]): Pick<AssessedLink, 'breaking' | 'workingLimit' | 'limitFrom' | 'limitSays' | 'pointOf' | 'point'> {
  const { holding, holdingFrom, vehicle } = assessing.anchor(block);
  const limitSays = holdingFrom === 'vehicle' ? 'braked vehicle' : undefined;
  const workingLimit: Value = isUnknown(holding) ? { unknown: { ...holding.unknown, place: holding.unknown.place ?? block.namePlace } } : { ...holding, kind: 'working limit' };
  const alone = { breaking: holding, workingLimit, limitFrom: isUnknown(holding) ? 'none' : 'holding power', limitSays } as const;
  if (link.part === undefined) return alone;
  if (vehicle === undefined) {
    problems.push(problem('unknown-name', link.part.place, `\`${link.name}\` is an anchor and has no point named \`${link.part.name}\``, 'write its name alone; behind a vehicle, or an anchor with its `vehicle`, stands the point'));
    return alone;
  }
  const point = pointLink({ ...link, name: vehicle.name }, vehicle.block, problems);
  const lower = lowerOf(workingLimit, point.workingLimit);
  const named = { ...alone, breaking: isUnknown(point.breaking) ? holding : lowerOf(holding, point.breaking), workingLimit: lower, pointOf: vehicle.block, point: point.workingLimit };
  return lower === workingLimit ? named : { ...named, limitFrom: point.limitFrom, limitSays: undefined };
}

function pointLink(link: Extract<BoundLink, { link: 'name' }>, block: BoundBlock, problems: Problem[]): Pick<AssessedLink, 'breaking' | 'breakingGiven' | 'workingLimit' | 'limitFrom'> {
  const points = block.statements.filter((s) => s.definition.head === 'point');
  const nameOfPoint = (s: BoundStatement): string | undefined => {
    const named = s.values.get('name');
    return named?.type === 'new-name' ? named.name : undefined;
  };
  if (link.part === undefined) {
    const why = unknown({ key: `point at ${link.place.start}`, says: `which recovery point of \`${link.name}\` is used is not given`, help: points.length > 0 ? `write it behind the name: \`${link.name} ${nameOfPoint(points[0]!) ?? 'bow'}\`` : 'add a `point` to the vehicle and write it behind the name', place: link.place });
    return { breaking: why, breakingGiven: false, workingLimit: why, limitFrom: 'none' };
  }
  const point = points.find((s) => nameOfPoint(s) === link.part!.name);
  if (point === undefined) {
    problems.push(notAPoint(link.name, link.part, points.flatMap((s) => nameOfPoint(s) ?? [])));
    const why = unknown({ key: `point ${link.part.name}`, says: `the point is not known`, help: 'declare it', place: link.part.place, reported: true });
    return { breaking: why, breakingGiven: false, workingLimit: why, limitFrom: 'none' };
  }
  const rated = quantityOf(point.values, 'rated');
  const breaking = quantityOf(point.values, 'breaking');
  const missing = unknown({ key: `rating of ${link.name} ${link.part.name}`, says: `rating of \`${link.name} ${link.part.name}\` is not given`, help: 'add `rated` to the point, from its maker', place: point.place, ...(point.broken.size > 0 ? { reported: true } : {}) });
  const unbroken = rated === undefined ? missing : unknown({ key: `breaking of ${link.name} ${link.part.name}`, says: `breaking strength of \`${link.name} ${link.part.name}\` is not given`, help: 'add `breaking` to the point, from its maker', place: point.place });
  return { breaking: breaking === undefined ? unbroken : writtenValue(breaking), breakingGiven: breaking !== undefined, workingLimit: rated === undefined ? missing : writtenValue(rated), limitFrom: rated === undefined ? 'none' : 'written' };
}

function lineLink(link: Extract<BoundLink, { link: 'name' }>, declaration: Declaration, repair: BoundBlock | undefined, assessing: Assessing, problems: Problem[]): Pick<AssessedLink, 'breaking' | 'breakingGiven' | 'workingLimit' | 'limitFrom' | 'piece' | 'end' | 'limitSays' | 'doubt'> {
  const line = lineAfter(declaration, repair, assessing);
  const piece = line?.pieces.get(link.name);
  const reported = (says: string): { breaking: Value; workingLimit: Value } => {
    const why = unknown({ key: `piece ${link.name}`, says, help: 'correct the name or the repair', place: link.place, reported: true });
    return { breaking: why, workingLimit: why };
  };
  if (line === undefined || piece === undefined) {
    const kept = declaration.kind === 'piece' && declaration.block.definition.head === 'repair';
    problems.push(problem('unknown-piece', link.namePlace, kept && repair === undefined ? `\`${link.name}\` exists only after \`${declaration.block.name ?? 'the repair'}\`` : `\`${link.name}\` is not there any more when this chain is loaded`, kept && repair === undefined ? `write \`after ${declaration.block.name ?? ''}\` behind the chain's name` : 'name a piece that is left'));
    return { ...reported(`\`${link.name}\` is not a piece of the line here`), breakingGiven: false, limitFrom: 'none', piece: undefined, end: undefined, limitSays: undefined, doubt: undefined };
  }
  let end: AssessedEnd | undefined;
  if (link.part !== undefined) {
    if (link.part.name === 'inboard') end = piece.inboard;
    else if (link.part.name === 'outboard') end = piece.outboard;
    else problems.push(notAnEnd(link.part));
  }
  const breaking = end === undefined ? piece.body : lowerOf(piece.body, end.strength);
  const factor = assessing.practice.value('line-factor');
  const written = piece.line.working;
  const byFactor = asGiven(workingLimitFromBreaking({ MBL: asKind(breaking), f: factor }));
  // A written limit holds even where the breaking strength is not known; then it may be less than written.
  const onlyWritten = written !== undefined && !isUnknown(written) && isUnknown(byFactor);
  const workingLimit = written === undefined ? byFactor : onlyWritten ? lowerOf(written, mostOf(byFactor) ?? written) : lowerOf(written, byFactor);
  const limitFrom = mostOf(workingLimit) === undefined ? 'none' : workingLimit === written ? 'written' : 'line factor';
  const doubt = doubtOf(piece) ?? (onlyWritten ? byFactor.unknown : undefined);
  return { breaking, breakingGiven: true, workingLimit, limitFrom, piece, end, limitSays: limitFrom === 'written' ? undefined : 'line factor', doubt };
}

const notAnEnd = ({ name, place }: Named): Problem => noSuchPart(place, `\`${name}\` is not an end of a line`, 'write `inboard` or `outboard`', nearWord(name, Object.keys(ends)));

function notAPoint(vehicle: string, { name, place }: Named, known: readonly string[]): Problem {
  const help = known.length > 0 ? `its points are ${known.map((point) => `\`${point}\``).join(', ')}` : 'add `point` with its rating to the vehicle';
  const near = nearWord(name, known);
  // Which point is meant is a claim: each has a rating of its own.
  return noSuchPart(place, `\`${vehicle}\` has no recovery point \`${name}\``, help, near === undefined ? undefined : { text: near.text });
}

interface Named {
  readonly name: string;
  readonly place: Place;
}

/** A part that something does not have, with the one that is spelled nearly alike. */
function noSuchPart(place: Place, message: string, help: string, near: { readonly text: string; readonly mechanical?: true } | undefined): Problem {
  const said = problem('unknown-name', place, message, near === undefined ? help : `did you mean \`${near.text}\`?`);
  return near === undefined ? said : { ...said, fixes: [{ title: `Write \`${near.text}\``, edits: [{ place, text: near.text }], ...(near.mechanical ? { mechanical: true } : {}) }] };
}

/** What may make a piece weaker than its logbook says. */
export function doubtOf(piece: AssessedPiece): Cause | undefined {
  if (piece.retired === undefined) return piece.incomplete;
  return { key: `retired ${piece.name}`, says: `\`${piece.name}\` is retired`, help: 'use another line', place: piece.retired.statement.place, reported: true };
}

const asKind = (value: Value): Value => (isUnknown(value) ? unknown(value.unknown, value.atMost && { ...value.atMost, kind: 'breaking strength' }) : { ...value, kind: 'breaking strength' });

/** The line that a piece belongs to, as it is when the chain is loaded. */
function lineAfter(declaration: Declaration, repair: BoundBlock | undefined, assessing: Assessing): AssessedLine | undefined {
  const owner = declaration.block;
  const lineBlock = owner.definition.head === 'line' ? owner : assessing.lineOfRepair(owner);
  if (lineBlock === undefined) return undefined;
  if (repair !== undefined && assessing.lineOfRepair(repair) === lineBlock) return assessing.repaired(repair)?.after;
  return assessing.line(lineBlock);
}

