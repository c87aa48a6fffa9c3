import { isAbove } from '../base/compare.ts';
import { asGiven, isUnknown, lowerOf, unknown, type Cause, type Derived, type Given, type Value } from '../mechanics/derivation.ts';
import { buryInDiameters } from '../mechanics/bury-in-diameters.ts';
import { buryNeeded } from '../mechanics/bury-needed.ts';
import { buryShare } from '../mechanics/bury-share.ts';
import { exitDistance } from '../mechanics/exit-distance.ts';
import { ropeUsedByEndToEnd } from '../mechanics/rope-used-by-end-to-end.ts';
import { ropeUsedByEye } from '../mechanics/rope-used-by-eye.ts';
import { spliceMarks, type SpliceMark } from '../mechanics/splice-marks.ts';
import { spliceShortening } from '../mechanics/splice-shortening.ts';
import { strengthOfKnot } from '../mechanics/strength-of-knot.ts';
import { strengthOfSplice } from '../mechanics/strength-of-splice.ts';
import { taperNeeded } from '../mechanics/taper-needed.ts';
import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import type { BoundQuantity } from '../model/bound.ts';
import type { EndFacts } from '../model/line-state.ts';
import { ownChoice, sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import type { Kind } from '../units/dimension.ts';
import type { LineFacts } from './line-facts.ts';
import { writtenValue } from './facts.ts';

/** An end of a piece, worked out. */
export interface AssessedEnd {
  readonly which: 'inboard' | 'outboard' | 'joint';
  readonly facts: EndFacts;
  /** Only ends whose tail is buried in the line have bury, taper and marks. */
  readonly buried: BuriedEnd | undefined;
  /** A joint of which a cut does not tell whether it lies in this piece, or is whole. */
  readonly isInDoubt?: boolean;
  /** Breaking strength of the line at this end. */
  readonly strength: Value;
}

export interface BuriedEnd {
  readonly bury: Value;
  readonly buryIn_d: Derived;
  readonly needed: Value;
  readonly needed_d: Value;
  /** Share at which the bury is counted. */
  readonly share: Derived;
  readonly taper: Value;
  readonly taperWritten: boolean;
  readonly taperNeeded: Value;
  readonly taperNeeded_d: Value;
  readonly eyeLoop: Value;
  readonly eyeLoopWritten: boolean;
  readonly shortening: Derived;
  readonly exit: Derived;
  readonly used: Derived;
  readonly marks: readonly SpliceMark[] | undefined;
}

/** A written length, its diameters turned into length. */
export function lengthValue(written: BoundQuantity, diameter: Value, kind: Kind = 'length'): Value {
  const value = writtenValue(written, kind);
  if (written.inDiameters !== true) return value;
  return asGiven(lengthInDiameters({ k: value, d: diameter }), kind);
}

const bluntTaper: Given = {
  amount: exactly(0),
  kind: 'length',
  origin: { from: 'assumed', source: ownChoice('no-taper-is-blunt', 'a splice whose taper is not written is counted as blunt'), means: 'write `taper` to replace it' },
};

const tuckedBury: Given = {
  amount: exactly(31.5),
  kind: 'needed diameters',
  origin: { from: 'assumed', source: sources['tuck-bury-hmpe'], means: 'write the bury of an untucked splice to replace it' },
};

export const isEye = (end: EndFacts): boolean => end.form === 'eye' || end.form === 'end-to-end' || (end.form === 'hook' && end.bury !== undefined);

const cause = (key: string, says: string, help: string, end: EndFacts, reported = false): Cause => ({ key, says, help, place: end.place, ...(reported ? { reported: true } : {}) });

/** Works out one end of a piece. `name` is the piece's, for messages. */
export function assessEnd(which: AssessedEnd['which'], end: EndFacts, line: LineFacts, name: string): AssessedEnd {
  const label = which === 'joint' ? `the joint in \`${name}\`` : `the ${which} end of \`${name}\``;
  const id = `${which} end of ${name}`;
  const held = end.holds === undefined || end.broken ? undefined : writtenValue(end.holds);
  if (!isEye(end)) return { which, facts: end, buried: undefined, strength: held === undefined ? plainStrength(which, end, line, label, id) : lowerOf(held, line.base) };
  const buried = assessBuried(end, line, label, id);
  if (end.cutThrough !== undefined) {
    const { place, seen } = end.cutThrough;
    return { which, facts: end, buried, strength: unknown({ key: `cut through ${id}`, says: `what a cut through the splice of ${label} left of it is not known`, help: 'cut it off and splice again', place, ...(seen ? { reported: true } : {}) }) };
  }
  // What its maker says of an end goes for one that nothing is worked out for; of one that is, the lower counts.
  const worked = line.tooOddToSplice ?? (held !== undefined && end.bury === undefined ? undefined : buriedStrength(buried, line, end, label, id));
  return { which, facts: end, buried, strength: held === undefined ? worked! : lowerOf(held, worked === undefined || isUnknown(worked) ? line.base : worked) };
}

function plainStrength(which: AssessedEnd['which'], end: EndFacts, line: LineFacts, label: string, id: string): Value {
  if (end.broken) return unknown(cause(`form of ${id}`, `how ${label} is made cannot be read`, 'correct it', end, true));
  switch (end.form) {
    case 'knot':
      return asGiven(strengthOfKnot({ F_b: line.base, k: line.practice.value('knot-strength', line.material) }));
    case 'bare':
      return unknown(cause(`form of ${id}`, `${label} is a bare end, which holds nothing`, 'splice it', end, which === 'outboard'));
    case 'lug':
      return unknown(cause(`strength of ${id}`, `what the lug at ${label} holds is not given; the kept wraps carry the load`, 'load the line by its other end', end, which === 'outboard'));
    case 'hook':
      return unknown(cause(`bury of ${id}`, `how the hook is fixed to ${label} is not given`, line.tooOddToSplice === undefined ? 'write its `bury`, or what its maker says it `holds`' : 'write what its maker says it `holds`', end));
    case 'unstated':
      return unknown(cause(`form of ${id}`, `how ${label} is made is not given`, `add \`${id.split(' ')[0]} eye ...\` with its bury and taper`, end));
    default:
      return unknown(cause(`form of ${id}`, `how ${label} is made cannot be read`, 'correct it', end, true));
  }
}

function assessBuried(end: EndFacts, line: LineFacts, label: string, id: string): BuriedEnd {
  const d = line.diameter;
  const bury: Value = end.bury !== undefined ? lengthValue(end.bury, d) : unknown(cause(`bury of ${id}`, `bury of ${label} is not given`, 'add `bury` with the length of tail inside the line', end, end.broken));
  const needed_d = isShortTucked(end, line) ? tuckedBury : line.practice.value('bury', line.material);
  const needed = asGiven(buryNeeded({ k: materialMissing(line) ?? needed_d, d }));
  const taper: Value = end.taper !== undefined ? lengthValue(end.taper, d) : end.broken ? unknown(cause(`taper of ${id}`, `taper of ${label} cannot be read`, 'correct it', end, true)) : bluntTaper;
  const eyeLoop: Value = end.form !== 'eye' ? { amount: exactly(0), kind: 'length', origin: { from: 'constant', source: sources['lengths-add'] } } : end.size !== undefined ? lengthValue(end.size, d) : asGiven(lengthInDiameters({ k: line.practice.value('eye-size'), d }));
  const c = line.practice.value('splice-shortening');
  const used = end.form === 'end-to-end' ? ropeUsedByEndToEnd({ T: bury, c }) : ropeUsedByEye({ T: bury, E: eyeLoop, c });
  // Only who makes the splice asks for its marks.
  let marks: readonly SpliceMark[] | undefined;
  let marked = end.form === 'end-to-end';
  return {
    bury,
    buryIn_d: buryInDiameters({ T: bury, d }),
    needed,
    needed_d: materialMissing(line) ?? needed_d,
    share: buryShare({ T: bury, T_0: needed }),
    taper,
    taperWritten: end.taper !== undefined,
    taperNeeded: isShortTucked(end, line) ? { amount: exactly(0), kind: 'needed length', origin: { from: 'constant', source: sources['tuck-bury-hmpe'] } } : asGiven(taperNeeded({ k_t: materialMissing(line) ?? line.practice.value('taper', line.material), d })),
    taperNeeded_d: materialMissing(line) ?? line.practice.value('taper', line.material),
    eyeLoop,
    eyeLoopWritten: end.size !== undefined,
    shortening: spliceShortening({ T: bury, c }),
    exit: exitDistance({ T: bury, c }),
    used,
    get marks() {
      if (marked) return marks;
      marked = true;
      const found = spliceMarks({ bury, ...(end.taper === undefined ? {} : { taper }), eyeLoop, shortening: c });
      return (marks = isUnknown(found) ? undefined : found);
    },
  };
}

/** A tucked splice in the fibre for which its short tail is published. */
export const isShortTucked = ({ tucked }: EndFacts, { material }: LineFacts): boolean => tucked && material === 'HMPE';

const materialMissing = (line: LineFacts) => (line.materialCause === undefined ? undefined : unknown(line.materialCause));

function buriedStrength(buried: BuriedEnd, line: LineFacts, end: EndFacts, label: string, id: string): Value {
  if (!isUnknown(buried.taper) && !isUnknown(buried.bury) && isAbove(buried.taper.amount.high, buried.bury.amount.low)) {
    return unknown(cause(`taper of ${id}`, `the taper of ${label} is longer than the bury it is part of`, 'measure both again', end, true));
  }
  // Its tail is published, what it holds and how long it tapers are not.
  if (isShortTucked(end, line)) return unknown(cause(`strength of ${id}`, `what the short tucked splice of ${label} holds is not published`, 'ask its maker, and write `holds` with the force', end));
  const derived = strengthOfSplice({
    F_b: line.base,
    η: line.practice.value('splice-efficiency'),
    T: buried.bury,
    T_0: buried.needed,
    t: buried.taper,
    t_0: buried.taperNeeded,
    β: line.practice.value('blunt-loss'),
  });
  return asGiven(derived);
}
