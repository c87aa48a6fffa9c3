import { asGiven, isUnknown, mostOf, noMoreThan, unknown, type Cause, type Unknown, type Value } from '../mechanics/derivation.ts';
import { strengthAfterOutdoorTime } from '../mechanics/strength-after-outdoor-time.ts';
import { wetStrength } from '../mechanics/wet-strength.ts';
import { wordOf, type BoundBlock } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import { isHollowBraid, isOfFewStrands, isWire } from '../model/line-make.ts';
import { exactly } from '../units/amount.ts';
import { factOf, maybeFact, missingFact, statementOf } from './facts.ts';
import type { Practice } from './practice.ts';

/** What a line is, as far as its own statements tell. */
export interface LineFacts {
  readonly block: BoundBlock;
  readonly name: string;
  readonly practice: Practice;
  readonly material: string | undefined;
  /** Why the material is not known. */
  readonly materialCause: Cause | undefined;
  readonly construction: string | undefined;
  readonly diameter: Value;
  readonly length: Value;
  readonly strands: Value;
  /** New, from the tag. */
  readonly breaking: Value;
  readonly working: Value | undefined;
  /** Breaking strength before any damage is counted: wet where it is used wet, after its time outdoors. */
  readonly base: Value;
  /** Why it cannot be told whether the line is hollow braid, by which its splices are judged. */
  readonly constructionCause: Cause | undefined;
  /** Set when buried splices are not how this line is spliced, or nobody can say that they are. */
  readonly tooOddToSplice: Unknown | undefined;
}

const secondsADay = 86_400;

/** The braid that everybody means by a winch line: common practice. */
const usualStrands = 12;

/** Why no buried splice is worked out, where none is. */
function tooOdd(block: BoundBlock, name: string, what: string | undefined, constructionCause: Cause | undefined): Unknown | undefined {
  if (isHollowBraid(block)) return undefined;
  if (constructionCause !== undefined && isOfFewStrands(block)) return unknown(constructionCause);
  return unknown({ key: `splice in ${name}`, says: `\`${name}\` is ${what}, for which no splice is worked out here`, help: 'write what its maker gives for the end behind it, such as `holds 40 kN`', place: statementOf(block, 'construction')?.place ?? statementOf(block, 'material')?.place });
}

function howMade(block: BoundBlock, name: string, strands: Value): Cause | undefined {
  if (!isUnknown(strands) && strands.amount.low === usualStrands) return undefined;
  const cause = missingFact(block, 'construction');
  if (cause.reported === true) return cause;
  return { ...cause, says: `how \`${name}\` is made is not given${isUnknown(strands) ? '' : `, and ${strands.amount.low} strands do not tell`}`, help: 'write `construction`; only hollow braid is spliced by burying its tail' };
}

export function lineFacts(block: BoundBlock, practice: Practice, day: DayNumber): LineFacts {
  const name = block.name ?? 'line';
  const word = (head: string): string | undefined => {
    const statement = statementOf(block, head);
    return statement === undefined ? undefined : wordOf(statement.values, head);
  };
  // Wire is made of one thing: who wrote how it is made has said so.
  const material = word('material') ?? (isWire(block) && statementOf(block, 'material') === undefined ? 'wire' : undefined);
  const construction = word('construction');
  const breaking = factOf(block, 'breaking');
  const strands = factOf(block, 'strands');
  const constructionCause = construction === undefined ? howMade(block, name, strands) : undefined;
  return {
    block,
    name,
    practice,
    material,
    materialCause: material === undefined ? missingFact(block, 'material') : undefined,
    construction,
    diameter: factOf(block, 'diameter'),
    length: factOf(block, 'length'),
    constructionCause,
    strands,
    breaking,
    working: maybeFact(block, 'working'),
    base: baseStrength(block, breaking, material, practice, day, word),
    tooOddToSplice: tooOdd(block, name, construction ?? material, constructionCause),
  };
}

/** A line of fibre that lies outdoors is weaker from one day to the next, whatever its logbook says. */
export const agesOutdoors = (block: BoundBlock): boolean => {
  if (isWire(block)) return false;
  const stored = statementOf(block, 'stored');
  return stored !== undefined && wordOf(stored.values, 'stored') === 'outdoors';
};

function baseStrength(block: BoundBlock, breaking: Value, material: string | undefined, practice: Practice, day: DayNumber, word: (head: string) => string | undefined): Value {
  let base = breaking;
  // Nylon is weaker wet, and a winch line gets wet: it is counted dry only where that is written.
  if (word('wet') === 'yes' || (material === 'nylon' && word('wet') !== 'no')) base = noMoreThan(asGiven(wetStrength({ F_b: base, ω: material === undefined ? unknown(missingFact(block, 'material')) : practice.value('wet-loss', material) })), mostOf(base));
  if (agesOutdoors(block)) {
    // Of several fittings the earliest counts; one that has not happened yet says nothing about the time until now.
    const fitted = block.statements.filter((s) => s.definition.head === 'fitted' && s.day !== undefined && s.day <= day).sort((a, b) => a.day! - b.day!)[0];
    if (fitted === undefined) {
      const key = `fitted of ${block.name ?? 'line'}`;
      return isUnknown(base) ? base : unknown({ key, says: `how long \`${block.name ?? 'line'}\` has been outdoors is not given`, help: 'write its `fitted` entry with the date', place: statementOf(block, 'stored')!.place }, base);
    }
    const time: Value = { amount: exactly((day - fitted.day!) * secondsADay), kind: 'time', origin: { from: 'written', place: fitted.dayPlace! } };
    base = noMoreThan(asGiven(strengthAfterOutdoorTime({ F_b: base, λ: practice.value('outdoor-loss'), τ: time, τ_0: practice.value('outdoor-time') })), mostOf(base));
    if (!isUnknown(base) && base.amount.low <= 0) return unknown({ key: `time outdoors of ${block.name ?? 'line'}`, says: `by the figure for time outdoors nothing is left of the strength of \`${block.name ?? 'line'}\``, help: 'retire it', place: statementOf(block, 'stored')!.place, reported: true });
  }
  return base;
}
