import { brakedVehicleHoldOnSlope } from '../mechanics/braked-vehicle-hold-on-slope.ts';
import { asGiven, isUnknown, type Cause, type Value } from '../mechanics/derivation.ts';
import { hasFlag, nameOf, quantityOf, wordOf, type BoundBlock } from '../model/bound.ts';
import { sources } from '../trade/sources.ts';
import { surfaces } from '../vocabulary/blocks/plans.ts';
import type { AssessedVehicle } from './assess-vehicle.ts';
import { statementOf, writtenValue } from './facts.ts';

type Footing = 'level' | 'on-slope' | undefined;

/** How a pull says that a vehicle stands. */
export function footingOf(pull: BoundBlock, vehicle: string): Footing {
  const said = pull.statements.filter((s) => s.definition.head === 'footing' && nameOf(s.values, 'vehicle')?.name === vehicle).map((s) => wordOf(s.values, 'footing') as Footing);
  // Said twice, it is not known how it stands.
  return said.every((footing) => footing === said[0]) ? said[0] : undefined;
}

/** Ground on which a braked vehicle holds what is published; on all other ground it is asked. */
const firm: ReadonlySet<string> = new Set(['hard-road', 'gravel', 'hard-wet-sand']);

/** Why a braked vehicle may hold less than is published: nobody says that it stands on firm ground, and the load does not. */
export function softGround(pull: BoundBlock, vehicle: string): Cause | undefined {
  const surface = statementOf(pull, 'surface');
  const word = surface === undefined ? undefined : wordOf(surface.values, 'surface');
  if (word === undefined || firm.has(word)) return undefined;
  if (pull.statements.some((s) => s.definition.head === 'footing' && nameOf(s.values, 'vehicle')?.name === vehicle && hasFlag(s.values, 'firm'))) return undefined;
  return {
    key: `ground under ${vehicle} in ${pull.name ?? 'pull'}`,
    says: `whether \`${vehicle}\` stands on firm ground is not given, and \`${pull.name ?? 'pull'}\` leads over ${surfaces[word as keyof typeof surfaces]}`,
    help: `add \`footing  ${vehicle} level firm\` to the pull where it stands so; what a braked vehicle holds is published for firm ground`,
    place: surface!.place,
  };
}

/** The slope of a pull, where it has one. */
export function slopeOfPull(pull: BoundBlock): Value | undefined {
  const statement = statementOf(pull, 'grade');
  const grade = statement === undefined ? undefined : quantityOf(statement.values, 'grade');
  return grade === undefined || grade.value <= 0 ? undefined : writtenValue(grade);
}

/** What a braked vehicle holds in a pull: less where it stands on the slope that the load is pulled up, and anything between where nobody says. */
export function holdOfVehicle({ holds, weight, name }: AssessedVehicle, pull: BoundBlock): Value {
  const footing = footingOf(pull, name);
  const level = asGiven(holds);
  const α = slopeOfPull(pull);
  if (α === undefined || footing === 'level' || isUnknown(level)) return level;
  const slope = asGiven(brakedVehicleHoldOnSlope({ W: asGiven(weight), α }));
  if (isUnknown(slope) || footing === 'on-slope') return slope;
  return asGiven({
    calculation: 'braked-vehicle-hold-where-it-stands', means: `holding power of \`${name}\`, on the slope or on level ground`, symbol: 'H', kind: 'holding power', formula: 'H = H_s to H_l',
    amount: { low: slope.amount.low, high: level.amount.high },
    inputs: [{ symbol: 'H_s', meaning: 'what it holds on the slope', given: slope }, { symbol: 'H_l', meaning: 'what it holds on level ground', given: level }],
    sources: [sources.statics], assumptions: ['whether it stands on the slope or on level ground is not written; `footing` says it'], notes: [],
  });
}
