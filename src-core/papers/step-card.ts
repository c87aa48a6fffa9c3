import { assessKit, type JudgedNeed } from '../assess/assess-kit.ts';
import type { AssessedPiece } from '../assess/assess-line.ts';
import { damageWords } from '../assess/damage-words.ts';
import { assessWinch, carriedName } from '../assess/assess-winch.ts';
import type { AssessedRepair } from '../assess/assessing.ts';
import { show, showValue } from '../assess/show.ts';
import type { AssessedEnd, BuriedEnd } from '../assess/splice-end.ts';
import { daysIn } from '../assess/time-since.ts';
import { asGiven, isUnknown, type Value } from '../mechanics/derivation.ts';
import { hasFlag, nameOf, newNameOf, textOf, wordOf, type BoundQuantity, type BoundStatement } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { dropsInboard } from '../model/line-work.ts';
import { endWords } from '../pictures/end-words.ts';
import { figuresOf, showLength } from '../pictures/figures.ts';
import { ruleNamed } from '../rules/all.ts';
import { exactly } from '../units/amount.ts';
import { boxes, heading, points, quoted, steps, table, type PaperDocument, type PaperPart, type PaperText } from './document.ts';
import { writtenText } from './finding-identity.ts';
import { marksParts, type MarkedSplice } from './mark-table.ts';
import { ownPractice } from './own-practice.ts';
import { assessingOf, deference, findingsLeft, findingsOn, foundParts, type PaperSubject } from './paper-subject.ts';
import { tapePicture, type TapeMark } from './tape-picture.ts';

/** The card that a repair is worked from, with the line on the ground and the pen in the hand. */
export function stepCard(subject: PaperSubject, repair: AssessedRepair): PaperDocument {
  const label = textOf(repair.block.header, 'label');
  const splices = splicesOf(repair);
  const found = findingsOn(subject, [repair.block]);
  // What is judged of the line and of the repair by one rule, such as its factor, is said of the repair.
  const left = findingsLeft(subject, repair).filter(({ code }) => ruleNamed(code)?.on !== 'block' || found.every((own) => own.code !== code));
  return {
    title: `Step card: \`${repair.name}\` on \`${repair.before.facts.name}\``,
    subtitle: `${subject.file}, as of ${subject.day}${label === undefined ? '' : `. ${quoted(label)}`}`,
    parts: [
      ...layOut(subject, repair),
      ...cutting(repair),
      ...(repair.before.facts.tooOddToSplice === undefined ? marksParts(splices.filter(({ end }) => end?.facts.tucked !== true)) : []),
      heading('Steps'),
      steps([...stepsOf(subject, repair, splices), ...windOn(subject, repair), `Write the cuts and splices into the logbook of \`${repair.before.facts.name}\`, with the day.`]),
      heading('Then look, and measure'),
      boxes(checks(subject, repair, splices)),
      ...temporary(subject, splices),
      ...foundParts('What is found on this repair', found),
      ...foundParts(`What is found on \`${repair.before.facts.name}\`, and this repair leaves`, left),
    ],
    foot: ['The order of work is common practice; the maker\'s splicing instruction for this line goes before it.', ...ownPractice(subject, { ofLine: true }), ...deference],
  };
}

function layOut(subject: PaperSubject, repair: AssessedRepair): PaperPart[] {
  const assessing = assessingOf(subject);
  const kits = assessing.reader.blocks('kit');
  // Without a kit the needs are the same; then nothing can be said of the bag.
  const needs = assessKit(kits[0] ?? repair.block, assessing).plans.find((p) => p.plan === repair.block)?.needs ?? [];
  if (needs.length === 0) return [];
  return [heading('Lay out'), boxes(needs.map((need) => `${need.says}${kits.length === 0 ? '' : inBag(need)}`))];
}

const inBag = ({ has }: JudgedNeed): string => (has === true ? ', in the bag' : has === false ? ', NOT in the bag' : `: ${has.says}`);

const stationText = (statement: BoundStatement): string => {
  const station = statement.values.get('station');
  return station?.type === 'station' ? `${showWritten(station.from.distance)} from ${station.from.end}` : 'a place that cannot be read';
};
/** A place to cut, or a size to make, in the words in which it was written and judged: rounded it may lie on the other side of the damage. */
const showWritten = ({ place }: BoundQuantity): string => writtenText(place);

const cutsOf = (repair: AssessedRepair): BoundStatement[] => repair.block.statements.filter((s) => s.definition.head === 'cut');
const pieceNamed = (statement: BoundStatement, repair: AssessedRepair, key = 'piece'): string => nameOf(statement.values, key)?.name ?? repair.before.facts.name;

/** The line before the repair, with its damage and where it is cut. */
function cutting(repair: AssessedRepair): PaperPart[] {
  if (cutsOf(repair).length === 0) return [];
  const parts: PaperPart[] = [heading('Where to cut')];
  for (const piece of repair.before.pieces.values()) {
    const cuts = cutsOf(repair).filter((s) => pieceNamed(s, repair) === piece.name);
    if (cuts.length === 0) continue;
    const length = isUnknown(piece.length) ? undefined : piece.length.amount;
    const marks: TapeMark[] = [];
    for (const cut of cuts) {
      const station = cut.values.get('station');
      if (station?.type !== 'station') continue;
      const { distance, end } = station.from;
      if (end === 'inboard') marks.push({ name: 'cut', at: exactly(distance.value) });
      else if (length !== undefined) marks.push({ name: `cut, ${showWritten(distance)} from outboard`, at: { low: Math.max(0, length.low - distance.value), high: Math.max(0, length.high - distance.value) } });
    }
    const places = piece.damages.length > 12 ? [] : [...piece.damages, ...piece.heats];
    for (const damage of places) if (damage.from !== undefined && damage.to !== undefined) marks.push({ name: damageWords(damage.fact), at: { low: damage.from.low, high: damage.to.high }, isStretch: true });
    const figures = figuresOf([repair.before.facts.length, piece.length], []);
    if (marks.length > 0) parts.push({ part: 'picture', tableElsewhere: true, picture: tapePicture({ name: `${repair.name} ${piece.name}`, title: `Cuts of ${piece.name}, from the inboard end`, marks, ends: length?.high, figures }) });
    parts.push(table(['cut', 'what lies outboard of it'], cuts.map((s) => [`\`${piece.name}\`, ${stationText(s)}`, keptAs(s, repair)])));
  }
  return parts;
}

const keptAs = (cut: BoundStatement, repair: AssessedRepair): PaperText => {
  if (dropsInboard(cut)) return `stays in use as \`${pieceNamed(cut, repair)}\`; what lies inboard of it goes out`;
  const keep = newNameOf(cut.values, 'keep');
  const only = cutsOf(repair).filter((s) => pieceNamed(s, repair) === pieceNamed(cut, repair)).length === 1;
  return keep === undefined ? (only ? 'goes out' : 'goes out, as far as the next cut or the outer end') : `stays in use as \`${keep.name}\``;
};

/** Every splice and join of the repair with the end it makes, in the order in which they are written. */
function splicesOf(repair: AssessedRepair): MarkedSplice[] {
  return repair.block.statements.flatMap((statement): MarkedSplice[] => {
    const { head } = statement.definition;
    if (head !== 'splice' && head !== 'join') return [];
    const made = endOf(statement, [...repair.after.pieces.values()]);
    const called = head === 'join' ? `\`${pieceNamed(statement, repair)}\` to \`${pieceNamed(statement, repair, 'other')}\`` : `\`${pieceNamed(statement, repair)}\`, ${wordOf(statement.values, 'end') ?? ''} end`;
    return [{ statement, called, piece: made?.piece, end: made?.end }];
  });
}

function endOf(statement: BoundStatement, pieces: readonly AssessedPiece[]): { piece: AssessedPiece; end: AssessedEnd } | undefined {
  for (const piece of pieces) for (const end of [piece.inboard, piece.outboard, ...piece.joints]) if (end.facts.statement === statement) return { piece, end };
  return undefined;
}

/** What is cut off keeps its name until it is cut: the cut nearest to the outer end comes first, in whatever order they are written. */
function outermostFirst(cuts: readonly BoundStatement[], repair: AssessedRepair): BoundStatement[] {
  const fromInboard = (cut: BoundStatement): number => {
    const station = cut.values.get('station');
    if (station?.type !== 'station') return 0;
    const { distance, end } = station.from;
    if (end === 'inboard') return distance.value;
    const length = repair.before.pieces.get(pieceNamed(cut, repair))?.length;
    return (length === undefined || isUnknown(length) ? longerThanAny_m : (length.amount.low + length.amount.high) / 2) - distance.value;
  };
  return [...cuts].reverse().sort((a, b) => fromInboard(b) - fromInboard(a));
}
/** Of a line of unknown length what is measured from its outer end is taken to lie farther out than what is measured from the drum. */
const longerThanAny_m = 1e6;

function stepsOf(subject: PaperSubject, repair: AssessedRepair, splices: readonly MarkedSplice[]): PaperText[] {
  const line = repair.before.facts.name;
  const cuts = cutsOf(repair);
  const onDrum = isOnDrum(subject, repair);
  const out: PaperText[] = [];
  if (cuts.length > 0) {
    out.push(`Take the load off \`${line}\` and lay it out straight, without twist, from ${onDrum ? 'the drum' : 'its inboard end'} outward. Measure every cut on the line as it lies now, from the end that is named.`);
    out.push(`Mark ${cuts.length === 1 ? 'the cut' : cuts.length === 2 ? 'both cuts before making one' : `all ${cuts.length} cuts before making any`}. Wrap tape tightly on both sides of each mark.`);
    for (const cut of outermostFirst(cuts, repair)) out.push(`Cut \`${pieceNamed(cut, repair)}\` square, ${stationText(cut)}; what lies outboard of it ${newNameOf(cut.values, 'keep') === undefined && !dropsInboard(cut) ? 'goes out' : keptAs(cut, repair)}.${noteText(cut)}`);
  }
  for (const statement of repair.block.statements) {
    const { head } = statement.definition;
    if (head === 'reversed') out.push(`Turn \`${pieceNamed(statement, repair)}\` end for end: what was outboard ${onDrum ? 'goes to the drum' : 'is then inboard'}.${noteText(statement)}`);
    const splice = splices.find((s) => s.statement === statement);
    if (splice !== undefined && hasFlag(statement.values, 'remade')) out.push(`${splice.called}: take the stitching off the old splice, draw its tail out, and work the line smooth until it lies as it did.`);
    const odd = repair.before.facts.tooOddToSplice?.unknown.says;
    const byMaker = odd ?? (splice?.end?.facts.tucked === true ? 'which strands are tucked where, only that shows' : undefined);
    if (splice !== undefined) out.push(...(byMaker !== undefined ? [`${splice.called}${splice.end === undefined ? '' : `: ${endWords(splice.end)}`}, by its maker's splicing instruction: ${byMaker}.${noteText(statement)}`] : head === 'join' ? joinSteps(splice) : eyeSteps(splice)));
  }
  return out;
}

const isOnDrum = (subject: PaperSubject, repair: AssessedRepair): boolean => assessingOf(subject).reader.winchesCarrying(repair.before.facts.name).length > 0;

/** A line that hangs from a drum goes back onto it. */
function windOn(subject: PaperSubject, repair: AssessedRepair): PaperText[] {
  const assessing = assessingOf(subject);
  if (!isOnDrum(subject, repair)) return [];
  const tension = assessing.practice.value('spooling-tension');
  return [`Wind it onto the drum again under load${isUnknown(tension) ? '' : `, at least ${show(tension, { careful: 'up' })}`}, layer by layer, hands off the line and off the fairlead; write \`spooled\` with the load.`];
}

const noteText = (statement: BoundStatement): string => {
  const note = textOf(statement.values, 'note');
  return note === undefined ? '' : ` ${quoted(note)}`;
};

/** Lengths as a tape shows them: one written in diameters is no help with the tape in the hand. */
const measureOf = (buried: BuriedEnd | undefined): ((value: Value) => string) => {
  const figures = figuresOf(buried === undefined ? [] : [buried.bury, buried.taper], []);
  return (value) => showLength(value, figures);
};

function eyeSteps({ statement, called, end }: MarkedSplice): PaperText[] {
  if (end === undefined) return [`${called}: this splice cannot be worked out as it is written. Do not make it from this card.`];
  if (end.buried === undefined) return [`${called}: ${endWords(end)}.${noteText(statement)}`];
  const { facts } = end;
  const measure = measureOf(end.buried);
  const thimble = facts.thimble === undefined ? facts.size === undefined ? 'Bend the tail round to the size that the eye is to have' : `Bend the tail round to an eye of ${showWritten(facts.size)}` : facts.thimble === 'sleeve' || facts.thimble === 'tube' ? `Pass the tail through the ${facts.thimble}${facts.thimble === 'tube' ? ' thimble' : ''}, slide that into the place of the eye` : `Lay the eye around the ${facts.thimble} thimble`;
  const lock = facts.locked ? ' Pass tail and standing part through each other at the throat, as the maker shows for a locked eye.' : '';
  return [
    `${called}: mark the splice from the cut end by the table. ${end.buried.taperWritten ? `Taper the last ${measure(end.buried.taper)} of the tail, strand by strand.` : 'No taper is written: the tail stays blunt.'}`,
    `${thimble}${facts.thimble === 'sleeve' || facts.thimble === 'tube' ? ' with the marks on both sides of it' : ''}, and bring the throat mark to the entry mark.${lock}`,
    `Pass the tail inside the line with the fid, from the entry mark to the exit mark${isUnknown(end.buried.bury) ? '' : `: ${measure(end.buried.bury)} goes in`}.`,
    `Hold the throat and smooth the standing part away from it until the tail slips in and the line lies even over it.${facts.stitched ? ' Lock-stitch it from the throat.' : ''}${noteText(statement)}`,
  ];
}

function joinSteps({ statement, called, end }: MarkedSplice): PaperText[] {
  if (end === undefined) return [`${called}: this join cannot be worked out as it is written. Do not make it from this card.`];
  const buried = end.buried;
  const measure = measureOf(buried);
  return [
    `${called}: mark on each of the two ends where its bury begins${buried === undefined || isUnknown(buried.bury) ? '' : `, ${measure(buried.bury)} from the cut end`}. ${buried?.taperWritten === true ? `Taper the last ${measure(buried.taper)} of each tail, strand by strand.` : 'No taper is written: the tails stay blunt.'}`,
    'Bury each tail in the other line, marks meeting in the middle, and smooth both sides away from the middle until the tails slip in.' + (end.facts.stitched ? ' Lock-stitch both sides.' : '') + noteText(statement),
  ];
}

function checks(subject: PaperSubject, repair: AssessedRepair, splices: readonly MarkedSplice[]): PaperText[] {
  const out: PaperText[] = [];
  const buried = repair.before.facts.tooOddToSplice === undefined ? splices.filter((s) => s.end?.buried !== undefined) : [];
  if (buried.some((s) => s.end?.which !== 'joint' && s.end?.facts.tucked !== true)) out.push('throat mark and entry mark meet at each eye');
  if (buried.length > 0) out.push('no strand is pulled up, no hard step where a tail ends');
  if (splices.some((s) => s.end?.facts.thimble !== undefined)) out.push('each thimble sits tight in its eye');
  if (splices.some((s) => s.end?.buried !== undefined)) out.push('loaded gently by hand, then by the winch with everybody clear: the marks have not moved');
  for (const piece of repair.after.pieces.values()) {
    if (piece.retired !== undefined) continue;
    out.push(`\`${piece.name}\` measures ${isUnknown(piece.length) ? `____ (not known: ${piece.length.unknown.says})` : `${show(piece.length)}: measured ____`}`);
    out.push(`\`${piece.name}\`: breaking strength then ${showValue(piece.strength)}${piece.weakest === undefined ? '' : `, weakest ${isUnknown(piece.strength) ? 'known ' : ''}place ${piece.weakest.name}`}`);
  }
  const assessing = assessingOf(subject);
  for (const winch of assessing.reader.winchesCarrying(repair.before.facts.name)) {
    const left = repair.after.pieces.get(carriedName(winch) ?? '');
    if (left === undefined) continue;
    const drum = assessWinch(winch, left, assessing.practice);
    out.push(`\`${drum.name}\` then keeps ${showValue(drum.keep)} wraps, and ${showValue(asGiven(drum.usable))} may be run out`);
  }
  return out;
}

function temporary(subject: PaperSubject, splices: readonly MarkedSplice[]): PaperPart[] {
  const short = splices.filter((s) => s.end?.facts.temporary === true);
  if (short.length === 0) return [];
  const life = assessingOf(subject).practice.value('temporary-life');
  const until = isUnknown(life) ? 'until a day that is not known' : `for ${show(life, { careful: 'down' })}: made on ${subject.day}, until ${printDay(subject.root.day + daysIn(life))}`;
  return [
    heading('What is then temporary, and until when'),
    points([`${short.map((s) => s.called).join('; ')}: ${until}. Made again in full before then, with the cut and the splice written with their dates.`]),
    { part: 'blanks', labels: ['made on', 'made by', 'looked over by', 'to be made again by'] },
  ];
}
