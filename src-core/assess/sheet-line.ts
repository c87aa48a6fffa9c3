import { asGiven, isUnknown, type DerivationInput, type Derived, type Given, type Value } from '../mechanics/derivation.ts';
import { helixShorteningEstimate } from '../mechanics/helix-shortening-estimate.ts';
import { spliceShortening } from '../mechanics/splice-shortening.ts';
import { taperSchedule } from '../mechanics/taper-schedule.ts';
import type { BoundEnd } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { derivedFrom, ownChoice } from '../trade/sources.ts';
import { between, exactly, type Amount } from '../units/amount.ts';
import type { AssessedDamage, AssessedLine, AssessedPiece, Remedy } from './assess-line.ts';
import { damageWords } from './damage-words.ts';
import type { AssessedRepair } from './assessing.ts';
import { statementOf, writtenValue } from './facts.ts';
import { inDoubt } from './sheet-chain.ts';
import type { SheetRows } from './sheet-rows.ts';
import { show } from './show.ts';
import type { AssessedEnd, BuriedEnd } from './splice-end.ts';

/** A line as it is on the day: what its statements say, then each piece. */
export function lineRows(rows: SheetRows, line: AssessedLine): void {
  const { facts, block } = line;
  const at = (head: string) => ({ id: head, place: statementOf(block, head)?.place });
  rows.words('material', facts.material, at('material'));
  rows.words('construction', facts.construction, at('construction'));
  rows.add('strands', facts.strands, at('strands'));
  rows.add('diameter', facts.diameter, at('diameter'));
  rows.add('length as fitted', facts.length, at('length'));
  rows.add('breaking strength, new', facts.breaking, at('breaking'));
  if (facts.working !== undefined) rows.add('working limit', facts.working, at('working'));
  if (facts.base !== facts.breaking) rows.add('breaking strength before damage', facts.base, { id: 'base-strength' });
  for (const piece of line.pieces.values()) pieceRows(rows, piece, true);
}

/** The pieces that a repair would leave; how ends are made that it does not touch stands with the line. */
export function repairRows(rows: SheetRows, repair: AssessedRepair): void {
  rows.words('line', repair.before.facts.name);
  for (const piece of repair.after.pieces.values()) pieceRows(rows, piece, false);
}

function pieceRows(rows: SheetRows, piece: AssessedPiece, all: boolean): void {
  const whole = (end: AssessedEnd): boolean => all || (end.facts.day === undefined && !end.facts.supplied);
  const { name } = piece;
  rows.section(`piece ${name}`, name);
  rows.add('length', piece.length, { place: piece.named });
  rows.add('breaking strength', inDoubt(piece.strength, piece.incomplete), { id: 'strength', says: piece.weakest === undefined ? undefined : `weakest ${isUnknown(piece.strength) ? 'known ' : ''}place: ${piece.weakest.name}` });
  rows.add('breaking strength between its ends', piece.body, { id: 'body-strength' });
  if (piece.retired !== undefined) rows.words('retired', printDay(piece.retired.day), { place: piece.retired.statement.place });
  rows.words('in doubt', piece.incomplete?.says, { id: 'incomplete', place: piece.incomplete?.place });
  piece.damages.forEach((damage, i) => damageRows(rows, damage, i + 1));
  for (const end of [piece.inboard, piece.outboard]) endRows(rows, piece, end, end.which, whole(end));
  piece.joints.forEach((joint, i) => endRows(rows, piece, joint, piece.joints.length === 1 ? 'joint' : `joint ${i + 1}`, whole(joint)));
}

const remedies: Record<Remedy, string> = {
  clean: 'clean and go on',
  derate: 'go on with the lower strength',
  'cut-out': 'cut it out',
  retire: 'retire the line',
};

function damageRows(rows: SheetRows, damage: AssessedDamage, number: number): void {
  const { fact } = damage;
  const label = `damage ${number}: ${damageWords(fact)}`;
  const more = { place: fact.place };
  const from = station(damage, damage.from, 'from');
  if (from === undefined) rows.words(label, 'at a place that cannot be told', { ...more, id: `damage-${number}-at` });
  else {
    const to = damage.to !== undefined && damage.from !== undefined && (damage.to.low !== damage.from.low || damage.to.high !== damage.from.high) ? station(damage, damage.to, 'to') : undefined;
    rows.add(`${label}, ${to === undefined ? 'at' : 'from'}`, from, { ...more, id: `damage-${number}-at` });
    if (to !== undefined) rows.add('… to', to, { ...more, id: `damage-${number}-to` });
  }
  rows.add('… breaking strength there', damage.strength, { ...more, id: `damage-${number}-strength`, says: `${remedies[damage.remedy]}: ${damage.because}` });
}

const replayed = derivedFrom('logbook-replay', 'the logbook replayed: cuts, splices and joins in order of their dates');

/** A place on the piece as it lies now: the written one, carried through what was done to the line since. */
function station(damage: AssessedDamage, amount: Amount | undefined, which: 'from' | 'to'): Value | undefined {
  if (amount === undefined) return undefined;
  const written = damage.fact.statement.values.get('station');
  const inputs: DerivationInput[] = [];
  const take = (end: BoundEnd | undefined, symbol: string): void => {
    if (end !== undefined) inputs.push({ symbol, meaning: `distance as written, from the ${end.end} end`, given: writtenValue(end.distance) });
  };
  if (written?.type === 'station') {
    take(written.from, 's_1');
    take(written.to, 's_2');
  }
  return asGiven({
    calculation: 'station-now', means: `where the damage ${which === 'from' ? 'begins' : 'ends'}, from the inboard end as the piece lies now`, symbol: 's', amount, kind: 'length',
    formula: 's = the written distance, carried through every later cut, splice and reversal', inputs, sources: [replayed], assumptions: [], notes: [],
  });
}

const endWords = (end: AssessedEnd): string => {
  const { facts } = end;
  const words = [facts.form, facts.thimble, facts.locked && 'locked', facts.stitched && 'stitched', facts.tucked && 'tucked', facts.temporary && 'temporary'];
  return words.filter((word): word is string => typeof word === 'string').join(', ');
};

function endRows(rows: SheetRows, piece: AssessedPiece, end: AssessedEnd, which: string, whole: boolean): void {
  rows.section(end.which === 'joint' ? `${which} ${end.isInDoubt === true ? 'that may be ' : ''}in ${piece.name}` : `${which} end of ${piece.name}`, `${piece.name}-${which}`);
  rows.words('made as', endWords(end), { id: 'form', place: end.facts.place });
  rows.add('breaking strength there', end.strength, { id: 'strength', place: end.facts.place });
  if (end.buried === undefined || !whole) return;
  buriedRows(rows, end, end.buried);
  rows.section(undefined, `${piece.name}-${which}`, 'table');
  markRows(rows, end.buried, piece.line.strands);
}

function buriedRows(rows: SheetRows, end: AssessedEnd, buried: BuriedEnd): void {
  rows.add('bury', buried.bury, { place: end.facts.bury?.place });
  rows.add('… in diameters', asGiven(buried.buryIn_d), { id: 'bury-in-diameters' });
  rows.add('bury needed', buried.needed, { says: isUnknown(buried.needed_d) ? undefined : show(buried.needed_d, { careful: 'up' }) });
  rows.add('share of a full splice', asGiven(buried.share), { id: 'bury-share' });
  rows.add('taper', buried.taper, { place: end.facts.taper?.place });
  rows.add('taper needed', buried.taperNeeded);
  if (end.facts.form !== 'end-to-end') rows.add('line around the eye', buried.eyeLoop, { id: 'eye-loop', place: end.facts.size?.place });
  rows.add('standing part shortens by', asGiven(buried.shortening), { id: 'shortening' });
  rows.add('… by the geometry of a helix', asGiven(byHelix(buried)), { id: 'helix-shortening' });
  rows.add('line used up', asGiven(buried.used), { id: 'line-used' });
}

const helixInputs: { readonly angle: Given; readonly thickness: Given } = {
  angle: { amount: exactly((22 * Math.PI) / 180), kind: 'angle', origin: { from: 'assumed', source: ownChoice('helix-angle', 'the strands of a 12-strand winch line lie near 22° to it'), means: 'ask `helix-shortening-estimate` alone with measured values to replace it' } },
  thickness: { amount: between(0.25, 0.3), kind: 'share', origin: { from: 'assumed', source: ownChoice('helix-strand', 'strands are a quarter to 0.3 of the line thick'), means: 'ask `helix-shortening-estimate` alone with measured values to replace it' } },
};

/** The shortening that geometry gives, to be held against the measured figures; nothing is judged by it. */
const byHelix = (buried: BuriedEnd): Derived => spliceShortening({ T: buried.bury, c: asGiven(helixShorteningEstimate({ 'α₁': helixInputs.angle, σ: helixInputs.thickness })) });

const fromTail = 'from the tail end';

/** Where the pen goes along the rope, and which strands come out where. */
function markRows(rows: SheetRows, buried: BuriedEnd, strands: Value): void {
  buried.marks?.forEach((mark, i) => rows.add(fromTail, mark.at, { id: 'at', group: `mark ${i + 1}, ${mark.name}`, says: mark.meaning }));
  if (!buried.taperWritten || isUnknown(buried.taper)) return;
  const steps = taperSchedule(buried.taper, strands);
  if (isUnknown(steps)) rows.add(fromTail, steps, { id: 'at', group: 'taper steps' });
  else for (const step of steps) rows.add(fromTail, asGiven(step.at), { id: 'at', group: `taper step ${step.step}`, says: `${step.says}; ${step.strandsLeft} are left` });
}
