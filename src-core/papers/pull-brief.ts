import { assessKit, type JudgedNeed, type PlanNeeds } from '../assess/assess-kit.ts';
import type { AssessedPull, Loaded } from '../assess/assess-pull.ts';
import type { Finding } from '../assess/finding.ts';
import { statementOf } from '../assess/facts.ts';
import { allLinks, type Run } from '../assess/pull-run.ts';
import { holdersOf } from '../assess/pull-rigging.ts';
import { fadesAt } from '../assess/least-line-out.ts';
import { offSquareOf } from '../assess/off-square.ts';
import { atStall } from '../assess/pull-stall.ts';
import { show, showLike, showValue } from '../assess/show.ts';
import { isAbove, isBelow } from '../base/compare.ts';
import { asGiven, isUnknown, mostOf, type Cause, type Derivation, type Value } from '../mechanics/derivation.ts';
import { nameOf, quantityOf, textOf, wordOf, type BoundBlock } from '../model/bound.ts';
import { pullPlan } from '../pictures/pull-plan.ts';
import { winchUnit } from '../rules/pull-text.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { boxes, heading, lead, points, quiet, quoted, steps, table, type PaperDocument, type PaperPart, type PaperText } from './document.ts';
import { statementText } from './finding-identity.ts';
import { ownPractice } from './own-practice.ts';
import { assessingOf, blocksBehind, deference, errorsOutside, setAsideOn, findingParts, findingsLeft, findingsOn, leftOut, type PaperSubject } from './paper-subject.ts';

/** What the crew goes through together before a pull: limits, places, order of work, and the numbers at which it does not begin. */
export function pullBrief(subject: PaperSubject, pull: AssessedPull): PaperDocument {
  const label = textOf(pull.block.header, 'label');
  const blocks: BoundBlock[] = [pull.block, ...(pull.chain === undefined ? [] : [pull.chain.block]), ...(pull.winch === undefined ? [] : [pull.winch.block])];
  // Whatever the shop's practice says, it says of all of it.
  const behind = blocksBehind(subject, [...blocks, ...assessingOf(subject).reader.practices()]);
  // What is warned of a repair stands on its step card.
  const isOnCard = ({ code, severity, place }: Finding): boolean => severity !== 'error' && !leftInLine.has(code) && place.chunk === pull.chain?.repair?.chunk;
  const isPutRight = putRightBy(subject, pull);
  const counts = (f: Finding): boolean => !isInTables(f, pull) && !isOnCard(f) && !isPutRight(f);
  const findings = [...errorsOutside(subject), ...findingsOn(subject, behind).filter(counts)];
  const aside = setAsideOn(subject, behind);
  const rest = leftOut(findings);
  const bag = needsOf(subject, pull);
  const isOpen = findings.some(isError) || pairsOf(pull).some((pair) => openOf(pair).length > 0 || isNoGo(pair.asked, pair.most));
  return {
    title: `Pull brief: \`${pull.name}\``,
    subtitle: `${subject.file}, as of ${subject.day}${label === undefined ? '' : `. ${quoted(label)}`}`,
    parts: [
      heading('Go or no go'),
      lead(verdict(pull, findings, aside.length, notInBag(bag))),
      ...numbers(pull),
      ...limits(pull),
      heading('From above'),
      { part: 'picture', picture: pullPlan(pull), share: 0.7, tableElsewhere: true },
      ...(findings.length + aside.length === 0 ? [] : [heading('What is found on this pull'), ...aside.map((f): PaperPart => ({ part: 'finding', severity: 'set aside in writing', code: f.code, says: `${f.says}, because: ${f.reason}`, help: '' })), ...findingParts(findings).map((p) => (p.part === 'finding' ? { ...p, help: '' } : p)), ...(findings.some((f) => atMostOfWinch.has(f.code)) ? [quiet('What is found on links of the chain is at all that the winch can pull when the load sticks; the table has this pull.')] : []), ...(rest === undefined ? [] : [quiet(rest)])]),
      heading('Who stands where'),
      table(['who', 'where', 'how far'], places(pull), { widths: [0.22, 0.53, 0.25] }),
      ...kitPart(pull, bag),
      heading('Order of work'),
      steps(order(pull, isOpen)),
      heading('Stop at once'),
      points(stops(pull, findings)),
      { part: 'blanks', labels: ['line pull seen', 'led by', 'go given at', 'written into the logbook'] },
    ],
    foot: [...ownPractice(subject), 'Places of people and the order of work are common practice.', ...deference],
  };
}

/** Rules that compare what the tables of the brief compare. */
const inTables: ReadonlySet<string> = new Set(['line-overloaded-by-pull', 'link-overloaded-by-pull', 'block-overloaded', 'anchor-overloaded', 'point-overloaded', 'winch-too-weak-for-pull', 'wraps-lost-at-reach']);

/** Whether a table says already what a finding says: that a figure is above its limit, or why there is none. */
function isInTables({ code, message }: Finding, pull: AssessedPull): boolean {
  return inTables.has(code) || (code === 'missing-fact' && pairsOf(pull).some((pair) => openOf(pair).some((cause) => message.startsWith(cause.says))));
}

/** What is found of a line as it is before the repair that comes first, and is put right by it. */
function putRightBy(subject: PaperSubject, { chain }: AssessedPull): (finding: Finding) => boolean {
  const repair = chain?.repair === undefined ? undefined : assessingOf(subject).repaired(chain.repair);
  if (repair === undefined) return () => false;
  const left = new Set(findingsLeft(subject, repair));
  return (finding) => finding.place.chunk === repair.before.block.chunk && !left.has(finding);
}

/** One of a pair of figures that belong together: what is asked, and what there is. With a doubt more may be known to the worse. */
interface Pair {
  readonly asked: Value;
  readonly most: Value;
  readonly doubt: Cause | undefined;
}

const neededPair = (pull: AssessedPull): Pair => ({ asked: pull.needed, most: pull.available, doubt: pull.resistance.incomplete });
const lineOutPair = (pull: AssessedPull): Pair => ({ asked: pull.reach.lineOut, most: usableOf(pull), doubt: undefined });
const loadedPair = (pull: AssessedPull, { load, limit, doubt }: Loaded): Pair => ({ asked: load, most: limit, doubt: doubt ?? pull.incomplete });
const pairsOf = (pull: AssessedPull): Pair[] => [neededPair(pull), lineOutPair(pull), ...pull.loaded.map((l) => loadedPair(pull, l))];

/** Why a pair cannot be judged; nothing when it can. */
function openOf({ asked, most, doubt }: Pair): Cause[] {
  if (isNoGo(asked, most)) return [];
  const unknown = [asked, most].flatMap((value) => (isUnknown(value) ? [value.unknown] : []));
  return unknown.length > 0 ? unknown : doubt === undefined ? [] : [doubt];
}
const usableOf = (pull: AssessedPull): Value => (pull.winch === undefined ? pull.available : asGiven(pull.winch.usable));

/** Rules that judge a chain at the most its winch can pull. */
const atMostOfWinch: ReadonlySet<string> = new Set(['link-above-limit', 'link-above-factor', 'link-above-breaking']);

/** What a repair leaves in the line that is then loaded: it stands on the brief too. */
const leftInLine: ReadonlySet<string> = new Set(['damage-in-splice']);
const isError = ({ severity }: Finding): boolean => severity === 'error';

const isByHand = ({ winch }: AssessedPull): boolean => {
  const drive = winch === undefined ? undefined : statementOf(winch.block, 'drive');
  return drive !== undefined && wordOf(drive.values, 'drive') === 'hand';
};

/** How many figures and findings speak against it: the one line that is read if no other is. */
function verdict(pull: AssessedPull, findings: readonly Finding[], aside: number, lacking: number): PaperText {
  const pairs = pairsOf(pull);
  const open = pairs.filter((pair) => openOf(pair).length > 0).length;
  const above = pairs.filter(({ asked, most }) => isNoGo(asked, most)).length;
  const settled = open === 0 ? '' : `${open} could not be judged`;
  const errors = findings.filter(isError).length;
  const found = errors === 0 ? '' : `${errors} ${errors === 1 ? 'error is' : 'errors are'} found on what it is rigged with`;
  const against = [above === 0 ? '' : `${above} of ${pairs.length} figures ${above === 1 ? 'is' : 'are'} above the limit given, or may be`, found].filter((t) => t !== '');
  if (against.length > 0) return `NO GO as it stands: ${[against.join(', and '), settled].filter((t) => t !== '').join('; ')}.`;
  if (open > 0) return `NO GO yet: ${settled}, and what is not known is not within any limit.`;
  const warnings = findings.filter((f) => f.severity === 'warning').length;
  const unmade = findings.filter((f) => f.code === 'missing-fact').length;
  const first = [warnings === 0 ? '' : counted(warnings, 'warning'), unmade === 0 ? '' : `${counted(unmade, 'fact')} not given`, lacking === 0 ? '' : `${counted(lacking, 'thing')} not in the bag`].filter((t) => t !== '');
  const also = first.length < 2 ? first.join('') : `${first.slice(0, -1).join(', ')} and ${first.at(-1)}`;
  return `All ${pairs.length} figures are within the limits given${also === '' ? '' : `, but ${also}, below, ${warnings + unmade + lacking === 1 ? 'is' : 'are'} to be settled first`}. ${aside === 0 ? '' : `${counted(aside, 'finding')}, below, ${aside === 1 ? 'is' : 'are'} set aside in writing. `}Whether it goes is decided on the ground, by whoever leads.`;
}

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

function compared(pair: Pair): PaperText {
  const [open] = openOf(pair);
  const { asked } = pair;
  const most = mostOf(pair.most);
  if (open !== undefined || isUnknown(asked) || most === undefined) return `not judged: ${open!.says}`;
  if (isAbove(asked.amount.high, most.amount.low)) return isAbove(asked.amount.low, most.amount.high) ? 'NO GO: above it' : 'NO GO: may be above it';
  return `within the limit given, at ${shareOf(asked.amount.high, most.amount.low)}`;
}

const shareOf = (value: number, of: number): string => (of > 0 ? printAmount(exactly(value / of), 'ratio', { careful: 'up' }) : 'all');

/** Forces of one pull in one unit, that of the winch's rating: what stands in one row is compared. */
const forceText = (pull: AssessedPull): ((value: Value) => string) => (value) => showValue(value, { unit: winchUnit(pull) });

function numbers(pull: AssessedPull): PaperPart[] {
  const { reach, resistance } = pull;
  const usable = usableOf(pull);
  const layer = isUnknown(pull.layer) ? '' : `, on layer ${show(pull.layer)}`;
  const force = forceText(pull);
  const rows: (readonly PaperText[])[] = [
    [resistance.incomplete === undefined ? 'line pull needed' : 'line pull needed, at least', force(pull.needed), `the winch pulls ${force(pull.available)}${layer}`, compared(neededPair(pull))],
    ['line out', showValue(reach.lineOut), `usable ${showValue(usable)}`, compared(lineOutPair(pull))],
  ];
  const facts = [
    `${resistance.vehicleName === undefined ? 'Load' : `\`${resistance.vehicleName}\``}: weight ${force(resistance.weight)}, resistance ${resistance.incomplete === undefined ? force(resistance.total) : `${force(resistance.atLeast)} or more (${resistance.incomplete.says})`}.`,
    ground(pull.block),
    isUnknown(pull.rigging.advantage) || pull.rigging.blocks.length === 0 ? '' : `Rigging: ${pull.rigging.blocks.map((b) => `\`${b.name}\` ${b.moves === 'load' ? 'travelling' : 'fixed'}`).join(', ')}; the load gets ${show(pull.rigging.advantage)} times the line pull.`,
  ].filter((t) => t !== '');
  return [...facts.map((says): PaperPart => ({ part: 'text', says })), table(['what', 'comes to', 'against', ''], rows, { widths: [0.23, 0.2, 0.27, 0.3] })];
}

const isNoGo = (asked: Value, most: Value): boolean => !isUnknown(asked) && isAbove(asked.amount.high, mostOf(most)?.amount.low ?? Infinity);

/** The ground as it is written. */
function ground(block: BoundBlock): string {
  const word = (head: string): string | undefined => {
    const statement = statementOf(block, head);
    return statement === undefined ? undefined : wordOf(statement.values, head);
  };
  const grade = statementOf(block, 'grade');
  const q = grade === undefined ? undefined : quantityOf(grade.values, 'grade');
  const mired = word('mired');
  const said = [word('surface'), q === undefined ? (grade === undefined ? undefined : 'level') : `grade ${statementText(q.place).replace(/^grade\s+/, '')}`, mired === undefined ? undefined : mired === 'no' ? 'not mired' : mired.startsWith('to-') ? `mired to the ${mired.slice(3)}` : `mired ${mired}`].flatMap((p) => (p === undefined ? [] : [p.replaceAll('-', ' ')]));
  return said.length === 0 ? '' : `Ground: ${said.join(', ')}.`;
}

const sorts: Readonly<Record<Loaded['sort'], string>> = { line: 'line', link: 'gear', block: 'block', point: 'recovery point', anchor: 'anchor' };

function limits(pull: AssessedPull): PaperPart[] {
  if (pull.loaded.length === 0) return [];
  const force = forceText(pull);
  return [
    heading('Every part against its limit'),
    table(['part', 'load', 'limit', ''], pull.loaded.map((l) => [`\`${l.name}\` (${sorts[l.sort]})`, force(l.load), `${force(l.limit)}${l.limitSays === undefined || l.limitSays === 'none' ? '' : `, ${l.limitSays}`}`, compared(loadedPair(pull, l))]), { widths: [0.26, 0.18, 0.26, 0.3] }),
  ];
}

/** The far end of what it may be: nearer is too near. */
const distanceText = (standOff: Derivation): string => show({ amount: exactly(standOff.amount.high), kind: standOff.kind, origin: { from: 'derived', derivation: standOff } }, { careful: 'up' });

/** The one distance that everybody is told: what is written where it is farther off than the line reaches. */
function keepOff({ standOff, people }: AssessedPull): string | undefined {
  if (isUnknown(standOff)) return undefined;
  return people === undefined || isUnknown(people) || isBelow(people.amount.low, standOff.amount.high) ? `farther off than ${distanceText(standOff)}` : `at least ${show(people)} off`;
}

function places(pull: AssessedPull): (readonly PaperText[])[] {
  const distance = isUnknown(pull.standOff) ? `not known: ${pull.standOff.unknown.says}` : keepOff(pull)!;
  const written = pull.people === undefined || isUnknown(pull.people) ? undefined : pull.people;
  const least = isUnknown(pull.standOff) ? pull.standOffAtLeast : pull.standOff;
  const people = written === undefined || isUnknown(least) ? '' : isBelow(written.amount.low, least.amount.high) ? `; written ${show(written)}, which is nearer${isUnknown(pull.standOff) ? ` than ${distanceText(least)}` : ''}` : isUnknown(pull.standOff) ? '' : `, as written; the line reaches ${distanceText(pull.standOff)}`;
  const bight = pull.rigging.blocks.map((b) => `\`${b.name}\``).join(', ');
  return [
    ['runs the winch', `beside or behind ${pull.winch === undefined ? 'the winch' : `\`${pull.winch.name}\``}, never in line with the line, with the one who gives the signs in sight`, isByHand(pull) ? 'at its handle' : 'at the end of the remote lead'],
    ['gives the signs', 'where the one at the winch and the load are both seen; nobody else gives signs, but everybody may call stop', distance],
    ...(pull.resistance.vehicleName === undefined ? [] : [['drives', `in \`${pull.resistance.vehicleName}\`, windows shut, hands off the line`, ''] as const]),
    ['everybody else', `out of the line's reach on either side${bight === '' ? '' : `; nobody inside the angle at ${bight}`}; nobody steps over the line`, distance + people],
  ];
}

interface BagNeeds {
  readonly kits: readonly BoundBlock[];
  readonly needs: readonly JudgedNeed[];
  /** What the repair that comes first takes. */
  readonly repair: PlanNeeds | undefined;
  readonly damped: boolean;
  readonly isPlanned: boolean;
}

/** What both the chain and the pull take out of the bag, and the bags there are. */
function needsOf(subject: PaperSubject, pull: AssessedPull): BagNeeds {
  const assessing = assessingOf(subject);
  const kits = assessing.reader.blocks('kit');
  const { plans } = assessKit(kits[0] ?? pull.block, assessing);
  const needs = plans.filter((p) => p.plan === pull.block || p.plan === pull.chain?.block).flatMap((p) => p.needs);
  const repair = plans.find((p) => p.plan === pull.chain?.repair);
  const damped = kits.some((kit) => kit.statements.some((s) => s.definition.head === 'holds' && wordOf(s.values, 'item') === 'damper'));
  return { kits, needs, repair, damped, isPlanned: plans.length > 0 };
}

/** How much of it is not there, where a bag is written. That nothing damps the line is a finding by itself. */
function notInBag({ kits, needs, repair }: BagNeeds): number {
  return kits.length === 0 ? 0 : new Set([...needs, ...(repair?.needs ?? [])].filter((n) => n.has === false).map((n) => n.says)).size;
}

function kitPart(pull: AssessedPull, { kits, needs, repair, damped, isPlanned }: BagNeeds): PaperPart[] {
  const carried = new Set(!isPlanned ? [] : kits.flatMap((kit) => kit.statements.flatMap((s) => (s.definition.head === 'carries' ? [nameOf(s.values, 'gear')?.name] : []))));
  const extensions = [...new Set((pull.run === undefined ? [] : allLinks(pull.run)).flatMap(({ piece }) => (piece === undefined || piece.name === pull.line?.name ? [] : [piece.name])))];
  const said = new Map(extensions.map((name) => [name, `\`${name}\`, the extension${carried.has(name) ? ', in the bag' : ''}`]));
  for (const n of needs) said.set(n.says, `${n.says}${kits.length === 0 ? '' : n.has === true ? ', in the bag' : n.has === false ? ', NOT in the bag' : `: ${n.has.says}`}`);
  said.set('damper', `something that damps the line${kits.length === 0 ? '' : damped ? ', in the bag' : ', NOT in the bag'}`);
  // What the repair before it takes stands on the card of that; here only what of it is not there.
  const lacking = kits.length === 0 ? [] : (repair?.needs ?? []).filter((n) => n.has === false);
  if (lacking.length > 0) said.set('repair', `for \`${repair!.name}\`, NOT in the bag: ${lacking.map((n) => n.says).join(', ')}`);
  return [heading('Lay out and look over'), boxes([...said.values()])];
}

/** What is hung on what, in the order of the line: each leg of a bridle by itself, down to what holds it. */
function names(run: Run): string {
  const own = [...run.links.map((link) => `\`${link.name}\``), ...(run.holder === undefined ? [] : [`\`${run.holder.name}\``])].join(', ');
  return run.legs.length === 0 ? own : `${own === '' ? '' : `${own}, and from there `}its ${run.legs.length} legs: ${run.legs.map(names).join('; ')}`;
}

function order(pull: AssessedPull, isOpen: boolean): PaperText[] {
  const out: PaperText[] = [];
  if (pull.chain?.repair !== undefined) out.push(`Carry out \`${pull.chain.repair.name}\` first, by its step card.`);
  const anchors = pull.loaded.filter((l) => l.sort === 'anchor').map((l) => `\`${l.name.replaceAll('`', '')}\``);
  out.push(`Look over the line, the gear and the anchor by hand${anchors.length === 0 ? '' : `: ${anchors.join(', ')}`}. What shows damage that is not in the logbook, or a rating that cannot be read, stops the pull.`);
  out.push(...parking(pull));
  if (pull.run !== undefined && pull.run.links.length > 0) out.push(`Rig from the winch outward: ${names(pull.run)}. Pins home, screw pins seated, nothing rope on rope.`);
  for (const b of pull.rigging.blocks) out.push(`Lead the line over \`${b.name}\`${b.holder === undefined ? (b.run === undefined || b.run.legs.length === 0 ? '' : `, fast to ${names(b.run)}`) : `, fast to ${[...(b.run?.links ?? []).map((link) => `\`${link.name}\``), `\`${b.holder.called}\``].join(', ')}`}; the sheave turns, the cheeks are shut.`);
  const keep = pull.winch === undefined ? '' : ` At least ${showValue(pull.winch.keep)} wraps stay on the drum.`;
  const legs = [pull.run, ...pull.rigging.blocks.map((b) => b.run)].reduce((sum, run) => sum + (run?.legs.length ?? 0), 0);
  const parts = Math.max(pull.rigging.parts.length, 1) + legs;
  out.push(`Lay something that damps over ${parts === 1 ? 'the line, halfway' : `each of the ${parts} parts of the line${legs > 0 ? ' and legs' : ''}, halfway along it`}.${keep}`);
  const off = keepOff(pull);
  out.push(`Everybody to their places${off === undefined ? '' : `, ${off}`}. The one who gives the signs asks each by name.`);
  // A plan that does not say how the line leads to the drum leaves it to whoever stands there.
  const square = offSquareOf(pull).from === 'nothing' ? ' It comes square on to the drum, or the vehicle is turned first.' : '';
  out.push(`Take up the slack, stop, and look along the whole line: straight, nothing twisted, nothing against an edge.${square}`);
  out.push(`${isOpen ? 'Once everything above is settled, and not before, pull slowly.' : 'Pull slowly.'} ${whatItTakes(pull)}`);
  out.push('Make the load fast before the line is slackened. Slacken, unrig from the load, spool under load and layer by layer.');
  out.push('Write `pulled` with the load into the logbook of the line, and what the inspection after it shows.');
  return out;
}

/** What is done to vehicles that stand and hold: those that count as anchors, and the one with the winch. */
function parking(pull: AssessedPull): string[] {
  const { blocks, endMoves, winchMoves } = pull.rigging;
  const holders = [...blocks.flatMap((b) => (b.moves === 'ground' ? b.holders : [])), ...(endMoves ? [] : holdersOf(pull.run))];
  const anchors = [...new Set(holders.flatMap((h) => (h?.vehicle === undefined ? [] : [h.vehicle])))];
  const winch = pull.winch === undefined || winchMoves ? undefined : nameOf(pull.winch.block.header, 'vehicle')?.name;
  return [
    ...anchors.map((name) => `Park \`${name}\`, which holds: brakes on, in gear, a chock at every wheel that would roll, nobody in it. It counts as a braked vehicle.`),
    ...(winch === undefined || anchors.includes(winch) ? [] : [`Set \`${winch}\`, which carries the winch: brakes on, a chock at every wheel that would roll. It holds all that the line pulls.`]),
  ];
}

/** The pull to be seen at the winch; never the most that the winch can pull in the place of what is needed. */
function whatItTakes(pull: AssessedPull): string {
  const { needed, available, resistance } = pull;
  const force = forceText(pull);
  if (!isUnknown(needed) && resistance.incomplete !== undefined) return `It takes ${force(needed)} or more at the winch; how much more is not known: stop as soon as it does not move freely.`;
  if (isUnknown(needed)) return 'What it should take is not known: stop as soon as it does not move freely.';
  if (!isNoGo(needed, available) || isUnknown(available)) return `It should take ${force(needed)} at the winch; where it takes more, stop.`;
  if (isAbove(needed.amount.low, available.amount.high)) return `It takes ${force(needed)} at the winch, which pulls ${force(available)}: rigged like this it does not move the load.`;
  return `It should take ${force(needed)} at the winch, which pulls ${force(available)}; where it does not move at that, stop.`;
}

/** What has most against its limit with the winch at its stall, where something then is above it. */
function worstAtStall(pull: AssessedPull): string {
  const unit = winchUnit(pull);
  const over = atStall(pull).flatMap(({ loaded, load }) => {
    const limit = mostOf(loaded.limit);
    return limit === undefined || !isAbove(load.amount.high, limit.amount.low) ? [] : [{ loaded, load, limit, share: limit.amount.low > 0 ? load.amount.high / limit.amount.low : Infinity }];
  });
  const worst = over.sort((a, b) => b.share - a.share)[0];
  if (worst === undefined) return '';
  return `; \`${worst.loaded.name}\` has up to ${show({ ...worst.load, amount: exactly(worst.load.amount.high) }, { unit, careful: 'up' })} then, above its ${show(worst.limit, { unit, careful: 'down' })}`;
}

function stops(pull: AssessedPull, findings: readonly Finding[]): PaperText[] {
  const over = pull.loaded.flatMap((l) => {
    const limit = mostOf(l.limit);
    if (isUnknown(l.load) || limit === undefined) return [];
    const { high } = l.load.amount;
    const of = (part: number): string => (part > 0 ? `at ${printAmount(exactly(high / part), 'ratio', { careful: 'up' })}` : 'of which nothing is left');
    // Of what the limit is at most, it is so much or more.
    return [{ l, share: limit.amount.low > 0 ? high / limit.amount.low : Infinity, says: isUnknown(l.limit) ? `${of(limit.amount.high)} or more` : of(limit.amount.low) }];
  });
  const nearest = over.sort((a, b) => b.share - a.share)[0];
  const open = pull.loaded.filter((l) => openOf(loadedPair(pull, l)).length > 0);
  const out: PaperText[] = [];
  if (!isUnknown(pull.available) && !isUnknown(pull.needed)) out.push(`the load does not move at ${showLike(pull.needed.amount, pull.needed, 'up', winchUnit(pull))}: the winch can pull ${show(pull.available, { unit: winchUnit(pull) })}, and everything in the line then carries that${worstAtStall(pull)}`);
  const fades = fadesAt(pull);
  if (fades !== undefined) out.push(`less than ${show(fades, { careful: 'up' })} of line is out: the drum is fuller from there, and the winch pulls less than may be needed`);
  if (nearest !== undefined) out.push(`anything is seen to give; ${nearest.share > 1 ? 'farthest above' : 'nearest to'} its limit is \`${nearest.l.name}\`, ${nearest.says}`);
  if (findings.some((f) => f.code === 'joint-drawn-to-block')) out.push('a joint of the line comes to a block: nothing but plain line goes over it');
  if (open.length > 0) out.push(`not judged at all: ${open.map((l) => `\`${l.name.replaceAll('`', '')}\``).join(', ')}; somebody who answers for it says go, or nobody does`);
  out.push('anybody calls stop, comes nearer than agreed, or is out of sight', 'the line climbs on the drum, rubs on an edge, or smokes at the fairlead or the brake');
  return out;
}
