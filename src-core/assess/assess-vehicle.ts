import type { Place } from '../base/span.ts';
import { brakedVehicleHold } from '../mechanics/braked-vehicle-hold.ts';
import { asGiven, unknown, type Derived, type Given, type Value } from '../mechanics/derivation.ts';
import { vehicleWeight } from '../mechanics/vehicle-weight.ts';
import { workingLimitFromBreaking } from '../mechanics/working-limit-from-breaking.ts';
import { newNameOf, quantityOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { factOf, writtenValue } from './facts.ts';
import type { Practice } from './practice.ts';

export interface AssessedPoint {
  readonly name: string;
  readonly place: Place;
  readonly statement: BoundStatement;
  readonly rated: 'rated' | 'breaking' | 'none' | 'broken';
  readonly workingLimit: Value;
  /** As it is written. */
  readonly breaking: Given | undefined;
}

export interface AssessedVehicle {
  readonly kind: 'vehicle';
  readonly block: BoundBlock;
  readonly name: string;
  readonly mass: Value;
  readonly weight: Derived;
  /** What it holds as an anchor, every wheel braked. */
  readonly holds: Derived;
  readonly points: readonly AssessedPoint[];
}

export function assessVehicle(block: BoundBlock, practice: Practice): AssessedVehicle {
  const name = block.name ?? 'vehicle';
  const mass = factOf(block, 'mass');
  const weight = vehicleWeight({ m: mass });
  const points = block.statements.flatMap((statement) => (statement.definition.head === 'point' ? assessPoint(statement, name, practice) : []));
  return { kind: 'vehicle', block, name, mass, weight, holds: brakedVehicleHold({ W: asGiven(weight) }), points };
}

/** A recovery point of a vehicle as a route names it: one that it has, where it has any. */
export function pointToName(vehicle: string, block: BoundBlock | undefined): string {
  const points = block?.statements.flatMap((s) => (s.definition.head === 'point' ? (newNameOf(s.values, 'name')?.name ?? []) : [])) ?? [];
  return `\`${vehicle} ${points[0] ?? 'bow'}\``;
}

function assessPoint(statement: BoundStatement, vehicle: string, practice: Practice): AssessedPoint[] {
  const named = newNameOf(statement.values, 'name');
  if (named === undefined) return [];
  const rated = quantityOf(statement.values, 'rated');
  const breaking = quantityOf(statement.values, 'breaking');
  const base = { name: named.name, place: named.place, statement, breaking: breaking === undefined ? undefined : writtenValue(breaking) };
  if (rated !== undefined) return [{ ...base, rated: 'rated', workingLimit: writtenValue(rated) }];
  if (breaking !== undefined) return [{ ...base, rated: 'breaking', workingLimit: asGiven(workingLimitFromBreaking({ MBL: writtenValue(breaking), f: practice.value('design-factor', 'point') })) }];
  const broken = statement.broken.size > 0;
  const missing = unknown({ key: `rating of ${vehicle} ${named.name}`, says: `rating of \`${vehicle} ${named.name}\` is not given`, help: 'add `rated` to the point, from its maker', place: statement.place, ...(broken ? { reported: true } : {}) });
  return [{ ...base, rated: broken ? 'broken' : 'none', workingLimit: missing }];
}
