import { isAbove } from '../base/compare.ts';
import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import { asGiven, isUnknown, unknown, type Derivation, type Given, type Known, type Value } from './derivation.ts';
import { fallLineForce } from './fall-line-force.ts';
import { partsNeeded } from './parts-needed.ts';
import { constantValue } from './table-value.ts';
import { tackleResistance } from './tackle-resistance.ts';

/** One round of the estimate with this many parts. */
export interface ArmyRound {
  readonly parts: number;
  readonly tackleResistance: Derivation;
  readonly fallLineForce: Derivation;
  /** The fall line force is within the pull of the winch. */
  readonly isWithinPull: boolean;
}

export interface ArmyEstimate {
  readonly partsFirst: Derivation;
  /** Every round that was tried; the last one is the answer. */
  readonly rounds: readonly ArmyRound[];
  readonly answer: ArmyRound;
}

const mostParts = 12;

/** The highest end for a resistance, the lowest for a pull: the estimate plans with one number each. */
const endOf = (given: Given, end: 'low' | 'high'): Given => ({ ...given, amount: exactly(given.amount[end]) });

/**
 * The army's estimate: parts needed, resistance of the tackle, fall line force, and once more with a further part while
 * the fall line force is above the pull of the winch.
 */
export function armyEstimate(resistance: Value, linePull: Value): Known<ArmyEstimate> {
  if (isUnknown(resistance)) return resistance;
  if (isUnknown(linePull)) return linePull;
  const LR = endOf(resistance, 'high');
  const P = endOf(linePull, 'low');
  const first = partsNeeded({ LR, P });
  if (isUnknown(first)) return first;
  const rounds: ArmyRound[] = [];
  for (let parts = first.amount.high; parts <= mostParts; parts++) {
    const MA = rounds.length === 0 ? asGiven(first) : constantValue(parts, 'needed count', sources['army-lesson-63h34f01']);
    const tackle = tackleResistance({ LR, MA });
    if (isUnknown(tackle)) return tackle;
    const fall = fallLineForce({ LR, TR: asGiven(tackle), MA });
    if (isUnknown(fall)) return fall;
    const round: ArmyRound = { parts, tackleResistance: tackle, fallLineForce: fall, isWithinPull: !isAbove(fall.amount.high, P.amount.low) };
    rounds.push(round);
    if (round.isWithinPull) return { partsFirst: first, rounds, answer: round };
  }
  return unknown({
    key: 'army estimate: too many parts',
    says: `by the army's estimate no tackle of up to ${mostParts} parts moves this load with this winch`,
    help: 'lower the resistance first (dig, drain, unload), or use a stronger winch',
    place: linePull.origin.from === 'written' ? linePull.origin.place : undefined,
  });
}
