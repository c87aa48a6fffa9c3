import type { Place } from '../base/span.ts';
import { asGiven, isUnknown, unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { dragResistance, dragShare } from '../mechanics/drag-resistance.ts';
import { gradeResistance } from '../mechanics/grade-resistance.ts';
import { mireFactor, mireResistance } from '../mechanics/mire-resistance.ts';
import { surfaceResistance, surfaceShare } from '../mechanics/surface-resistance.ts';
import { noResistance, totalResistance } from '../mechanics/total-resistance.ts';
import { waterLoad } from '../mechanics/water-load.ts';
import { countOf, nameOf, quantityOf, wordOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { notCountedYet, wheelsShare } from '../trade/plan-sources.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedVehicle } from './assess-vehicle.ts';
import type { Assessing } from './assessing.ts';
import { missingFact, statementOf, writtenValue } from './facts.ts';

export interface PullResistance {
  /** The vehicle that is pulled, when it is one of the file. */
  readonly vehicle: AssessedVehicle | undefined;
  readonly vehicleName: string | undefined;
  readonly weight: Value;
  readonly ground: Value;
  readonly slope: Value;
  readonly mire: Value;
  readonly drag: Value;
  /** Written as a whole, instead of the four. */
  readonly measured: boolean;
  /** What the tables make of it where it is written as a whole. */
  readonly byTables: Value | undefined;
  /** Unknown while one of its parts is. */
  readonly total: Value;
  /** What the known parts come to: the resistance is that or more. Unknown without a weight. */
  readonly atLeast: Value;
  /** Why the resistance may be more. */
  readonly incomplete: Cause | undefined;
}

/** Whether a pull says what its load weighs, and not which vehicle it is. */
export function isWeightAlone(pull: BoundBlock): boolean {
  const load = statementOf(pull, 'load');
  return load !== undefined && nameOf(load.values, 'vehicle') === undefined && quantityOf(load.values, 'weight') !== undefined;
}

export function resistanceOf(block: BoundBlock, assessing: Assessing): PullResistance {
  const load = statementOf(block, 'load');
  const named = load === undefined ? undefined : nameOf(load.values, 'vehicle');
  const found = named === undefined ? undefined : assessing.reader.find(named.name, ['vehicle']);
  const vehicle = found === undefined ? undefined : assessing.vehicle(found.block);
  const weight = weightOf(block, load, vehicle, named);
  const base = { vehicle, vehicleName: named?.name, weight };
  const ground = groundOf(block, weight);
  const slope = slopeOf(block, weight);
  const mire = mireOf(block, weight);
  const drag = dragOf(block, weight);
  const total = asGiven(totalResistance({ R_s: ground, R_g: slope, R_m: mire, R_d: drag }));
  const known = (value: Value): Value => (isUnknown(value) ? noResistance(notCountedYet) : value);
  const ofKnown = (): Value => asGiven(totalResistance({ R_s: known(ground), R_g: known(slope), R_m: known(mire), R_d: known(drag) }));
  const whole = statementOf(block, 'resistance');
  const written = whole === undefined ? undefined : quantityOf(whole.values, 'resistance');
  if (written !== undefined) {
    const measured = writtenValue(written, 'resistance');
    const none = noResistance(notCountedYet);
    return { ...base, ground: none, slope: none, mire: none, drag: none, measured: true, byTables: isUnknown(weight) ? undefined : ofKnown(), total: measured, atLeast: measured, incomplete: undefined };
  }
  const atLeast = isUnknown(weight) ? weight : isUnknown(total) ? ofKnown() : total;
  return { ...base, ground, slope, mire, drag, measured: false, byTables: undefined, total, atLeast, incomplete: isUnknown(total) ? total.unknown : undefined };
}

function weightOf(block: BoundBlock, load: BoundStatement | undefined, vehicle: AssessedVehicle | undefined, named: { readonly name: string; readonly place: Place } | undefined): Value {
  const written = load === undefined ? undefined : quantityOf(load.values, 'weight');
  let weight: Value;
  if (written !== undefined) weight = writtenValue(written, 'weight');
  else if (vehicle !== undefined) weight = asGiven(vehicle.weight);
  else if (named !== undefined) weight = unknown({ key: `name ${named.name}`, says: `\`${named.name}\` is not known`, help: 'declare it as a `vehicle` with its mass', place: named.place, reported: true });
  else weight = unknown(missing(block, 'load', 'what is pulled', 'add `load` with a vehicle or a weight'));
  const depth = load === undefined ? undefined : quantityOf(load.values, 'water');
  const floor = load === undefined ? undefined : quantityOf(load.values, 'over');
  if (load === undefined || (depth === undefined && !load.broken.has('water') && !load.broken.has('over'))) return weight;
  if (depth === undefined || floor === undefined) return unknown({ key: `water in ${block.name ?? 'pull'}`, says: 'how much water comes out with the load cannot be read', help: 'correct it', place: load.place, reported: true });
  return sum(weight, asGiven(waterLoad({ A: writtenValue(floor), h: writtenValue(depth, 'distance') })));
}

/** Weight and the water that stands inside. */
function sum(weight: Value, water: Value): Value {
  if (isUnknown(weight)) return weight;
  if (isUnknown(water)) return water;
  return asGiven({
    calculation: 'weight-with-water', means: 'weight with the water inside', symbol: 'W', kind: 'weight', formula: 'W = W_0 + W_w',
    amount: { low: weight.amount.low + water.amount.low, high: weight.amount.high + water.amount.high },
    inputs: [{ symbol: 'W_0', meaning: 'weight of the load', given: weight }, { symbol: 'W_w', meaning: 'weight of the water held inside', given: water }],
    sources: [sources.statics], assumptions: [], notes: [],
  });
}

/** Why a part of the resistance is not known: `what` is not given, or cannot be read. */
function missing(block: BoundBlock, head: string, what: string, help: string): Cause {
  const cause = missingFact(block, head);
  return cause.reported === true ? cause : { key: `${head} of ${block.name ?? 'pull'}`, says: `${what} in \`${block.name ?? 'pull'}\` is not given`, help, place: statementOf(block, head)?.place ?? block.namePlace };
}

/** A table's figure, with what the language takes in its place. */
const replacedBy = (value: Value, means: string): Value => (isUnknown(value) || value.origin.from !== 'assumed' ? value : { ...value, origin: { ...value.origin, means } });

const nothingOf = (statement: BoundStatement): Given => ({ amount: exactly(0), kind: 'resistance', origin: { from: 'written', place: statement.place } });

function groundOf(block: BoundBlock, W: Value): Value {
  const statement = statementOf(block, 'surface');
  const surface = statement === undefined ? undefined : wordOf(statement.values, 'surface');
  if (statement === undefined || surface === undefined || statement.broken.size > 0) return unknown(missing(block, 'surface', 'what the load stands on', 'add `surface`, such as `surface  gravel`'));
  const takes = quantityOf(statement.values, 'takes');
  return asGiven(surfaceResistance({ W, f: takes === undefined ? replacedBy(surfaceShare(surface), 'write `takes` behind the surface, or `resistance`, to replace it') : writtenValue(takes, 'needed share') }));
}

function slopeOf(block: BoundBlock, W: Value): Value {
  const statement = statementOf(block, 'grade');
  const grade = statement === undefined ? undefined : quantityOf(statement.values, 'grade');
  const isFlat = statement !== undefined && wordOf(statement.values, 'flat') !== undefined;
  if (grade !== undefined && isFlat) return unknown({ key: `grade of ${block.name ?? 'pull'}`, says: `\`${block.name ?? 'pull'}\` says both that the way is level and how steep it is`, help: 'keep one of the two', place: statement!.place, reported: true });
  if (grade !== undefined) return asGiven(gradeResistance({ W, α: writtenValue(grade) }));
  if (statement !== undefined && isFlat && statement.broken.size === 0) return nothingOf(statement);
  return unknown(missing(block, 'grade', 'how steep the way is', 'add `grade`; `grade  level` where there is no slope'));
}

function mireOf(block: BoundBlock, W: Value): Value {
  const statement = statementOf(block, 'mired');
  const word = statement === undefined ? undefined : wordOf(statement.values, 'mired');
  if (statement === undefined || word === undefined) return unknown(missing(block, 'mired', 'how deep the load is sunk', 'add `mired`; `mired  no` where it stands on top'));
  return word === 'no' ? nothingOf(statement) : asGiven(mireResistance({ W, k: replacedBy(mireFactor(word.replace('to-', '')), 'write `resistance` to replace it') }));
}

function dragOf(block: BoundBlock, W: Value): Value {
  const statement = statementOf(block, 'dragging');
  const dragging = statement === undefined ? undefined : countOf(statement.values, 'wheels');
  const turning = statement === undefined ? undefined : wordOf(statement.values, 'turning');
  const turns = turning !== undefined;
  if (statement !== undefined && turns && dragging !== undefined) return unknown({ key: `dragging of ${block.name ?? 'pull'}`, says: `\`${block.name ?? 'pull'}\` says both how much turns and which wheels do not`, help: 'keep one of the two', place: statement.place, reported: true });
  if (statement !== undefined && statement.broken.size === 0 && turning === 'none') return nothingOf(statement);
  if (statement !== undefined && statement.broken.size === 0 && turning === 'all') return asGiven(dragResistance({ W, p: { amount: exactly(1), kind: 'needed share', origin: { from: 'written', place: statement.place } }, f: replacedBy(dragShare(), 'write `resistance` to replace it') }));
  if (statement === undefined || dragging === undefined) return unknown(missing(block, 'dragging', 'whether every wheel turns', 'add `dragging`; `dragging  none` where all of them turn, `dragging  all` where nothing does, such as a log'));
  const of = countOf(statement.values, 'of');
  if (of === undefined) return unknown({ key: `wheels of ${block.name ?? 'pull'}`, says: 'on how many wheels the load stands is not given', help: `write it behind the wheels that drag, such as \`dragging  ${dragging} wheels of 4\``, place: statement.place });
  if (of < dragging) return unknown({ key: `wheels of ${block.name ?? 'pull'}`, says: `${dragging} wheels drag, of ${of} that the load stands on`, help: 'correct one of the two', place: statement.place });
  const p: Given = asGiven({
    calculation: 'share-on-wheels', means: 'share of the weight on wheels that do not turn', symbol: 'p', kind: 'needed share', formula: 'p = n / N', amount: exactly(dragging / of),
    inputs: [{ symbol: 'n', meaning: 'wheels that do not turn', given: counted(dragging, statement) }, { symbol: 'N', meaning: 'wheels that it stands on', given: counted(of, statement) }],
    sources: [wheelsShare], assumptions: [], notes: [],
  }) as Given;
  return asGiven(dragResistance({ W, p, f: replacedBy(dragShare(), 'write `resistance` to replace it') }));
}

const counted = (n: number, statement: BoundStatement): Given => ({ amount: exactly(n), kind: 'count', origin: { from: 'written', place: statement.place } });
