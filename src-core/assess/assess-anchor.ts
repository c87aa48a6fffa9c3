import { isBelow } from '../base/compare.ts';
import { anchorNotJudged } from '../mechanics/anchor-not-judged.ts';
import { deadmanHold } from '../mechanics/deadman-hold.ts';
import { deadmanHoldingPower, deadmanSoilFactor } from '../mechanics/deadman-holding-power.ts';
import { deadmanLength } from '../mechanics/deadman-length.ts';
import { asGiven, isUnknown, unknown, type Derived, type Value } from '../mechanics/derivation.ts';
import { picketHold } from '../mechanics/picket-hold.ts';
import { nameOf, wordOf, type BoundBlock } from '../model/bound.ts';
import { noValues } from '../model/values.ts';
import { deadmanTable } from '../trade/deadman-table.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedVehicle } from './assess-vehicle.ts';
import type { Assessing } from './assessing.ts';
import { factOf, missingFact, statementOf } from './facts.ts';

export interface BuriedLog {
  readonly length: Value;
  /** No more than its thickness carries. */
  readonly counted: Value;
  readonly face: Value;
  readonly depth: Value;
  /** Depth is less than the published table begins at. */
  readonly tooShallow: boolean;
  readonly holdingPower: Derived;
  lengthFor(load: Value): Derived;
}

type HoldingFrom = 'written' | 'vehicle' | 'table' | 'none';

export interface AssessedAnchor {
  readonly kind: 'anchor';
  readonly block: BoundBlock;
  readonly name: string;
  /** Tree, rock, vehicle ...; undefined when it is not written. */
  readonly form: string | undefined;
  readonly soil: string | undefined;
  readonly holding: Value;
  readonly holdingFrom: HoldingFrom;
  /** What published figures make of it, whatever is written. */
  readonly published: Value;
  readonly vehicle: AssessedVehicle | undefined;
  readonly log: BuriedLog | undefined;
}

const tableSoils: Readonly<Record<string, string>> = { loam: 'loam', hardpan: 'hardpan or rock', wet: 'fine-grained wet or sandy' };
const tablePickets: Readonly<Record<string, string>> = { single: 'single', 'one-one-one': '1-1-1', 'three-two-one': '3-2-1' };

/** The least depth for which a figure is published (m). */
export const leastTableDepth_m = Math.min(...deadmanTable.rows.map((row) => row.depth_m));

const wordIn = (block: BoundBlock, head: string): string | undefined => {
  const statement = statementOf(block, head);
  return statement === undefined ? undefined : wordOf(statement.values, head);
};

export function assessAnchor(block: BoundBlock, assessing: Assessing): AssessedAnchor {
  const name = block.name ?? 'anchor';
  const form = wordIn(block, 'kind');
  const soil = wordIn(block, 'soil');
  const base = { kind: 'anchor' as const, block, name, form, soil, vehicle: undefined, log: undefined };
  const written = statementOf(block, 'holding') !== undefined || block.brokenHeads.has('holding') ? factOf(block, 'holding') : undefined;
  const log = form === 'buried-log' ? buriedLog(block, soil) : undefined;
  const vehicle = form === 'vehicle' ? vehicleOf(block, assessing) : undefined;
  const known = { ...base, log, vehicle };
  const { holding: published, from } = publishedFor(known);
  return { ...known, published, ...(written === undefined ? { holding: published, holdingFrom: from } : { holding: written, holdingFrom: 'written' }) };
}

function publishedFor({ block, name, form, soil, log, vehicle }: Pick<AssessedAnchor, 'block' | 'name' | 'form' | 'soil' | 'log' | 'vehicle'>): { readonly holding: Value; readonly from: HoldingFrom } {
  switch (form) {
    case undefined:
      return { holding: unknown(missingFact(block, 'kind')), from: 'none' };
    case 'vehicle':
      return { holding: vehicle === undefined ? unknown(vehicleCause(block, name)) : asGiven(vehicle.holds), from: 'vehicle' };
    case 'buried-log':
      return { holding: holdOfLog(log!), from: 'table' };
    case 'pickets': {
      const pickets = wordIn(block, 'pickets');
      const wrong = soil !== undefined && soil !== 'loam';
      const cause = pickets === undefined ? missingFact(block, 'pickets') : soil === undefined ? { ...missingFact(block, 'soil'), help: 'add `soil`; a figure is published for loam' } : wrong ? { key: `soil of ${name}`, says: `holding power of pickets is published for loam only`, help: 'add `holding`, proved by a pull', place: statementOf(block, 'soil')?.place, reported: true } : undefined;
      return { holding: cause === undefined ? picketHold(tablePickets[pickets!]!, 'loam') : unknown(cause), from: 'table' };
    }
    default: {
      const { unknown: cause } = anchorNotJudged(name, form.replace('-', ' '));
      return { holding: unknown({ ...cause, place: block.namePlace }), from: 'none' };
    }
  }
}

function vehicleOf(block: BoundBlock, assessing: Assessing): AssessedVehicle | undefined {
  const named = nameOf(statementOf(block, 'vehicle')?.values ?? noValues, 'vehicle');
  const found = named === undefined ? undefined : assessing.reader.find(named.name, ['vehicle']);
  return found === undefined ? undefined : assessing.vehicle(found.block);
}

function vehicleCause(block: BoundBlock, name: string) {
  const statement = statementOf(block, 'vehicle');
  if (statement === undefined) return missingFact(block, 'vehicle');
  return { key: `vehicle of ${name}`, says: `the vehicle that stands as \`${name}\` is not known`, help: 'declare it', place: statement.place, reported: true };
}

function buriedLog(block: BoundBlock, soil: string | undefined): BuriedLog {
  const depth = factOf(block, 'depth');
  const slope = factOf(block, 'slope', 'one-in');
  const face = factOf(block, 'log', 'face');
  const length = factOf(block, 'log', 'length');
  const tooShallow = !isUnknown(depth) && isBelow(depth.amount.low, leastTableDepth_m);
  const factor: Value = soil === undefined ? unknown(missingFact(block, 'soil')) : deadmanSoilFactor(tableSoils[soil] ?? soil);
  const shallow = unknown({ key: `depth of ${block.name ?? 'anchor'}`, says: 'no holding power is published for so shallow a log', help: 'bury it deeper', place: statementOf(block, 'depth')?.place, reported: true });
  const holdingPower = tooShallow ? shallow : deadmanHoldingPower({ D: asLength(depth), n: slope, k: factor });
  return { length, counted: countedLength({ length, face }), face, depth, tooShallow, holdingPower, lengthFor: (load) => deadmanLength({ F: load, HP: asGiven(holdingPower), b: face }) };
}

const asLength = (value: Value): Value => (isUnknown(value) ? value : { ...value, kind: 'usable length' });

/** Beyond so many thicknesses a log breaks at the line before the ground gives way (US Army TM 5-5420-278-10, WP 0035). */
export const mostThicknesses = 5;

/** Of a longer log no more counts than the thickness carries. */
function countedLength({ length, face }: Pick<BuriedLog, 'length' | 'face'>): Value {
  if (isUnknown(length) || isUnknown(face)) return asLength(length);
  const most = mostThicknesses * face.amount.low;
  if (!isBelow(most, length.amount.high)) return asLength(length);
  return asGiven({ calculation: 'counted-length-of-log', means: 'length of the log that counts', symbol: 'L', kind: 'usable length', amount: exactly(Math.min(most, length.amount.low)), formula: 'L = 5 b, where the log is longer', inputs: [{ symbol: 'b', meaning: 'width of its face, a log’s diameter', given: face }, { symbol: 'L_0', meaning: 'length of the log', given: length }], sources: [deadmanTable.source], assumptions: ['a log longer than 5 times its thickness breaks at the line before the ground gives way'], notes: [] });
}

const holdOfLog = (log: BuriedLog): Value => asGiven(deadmanHold({ HP: asGiven(log.holdingPower), b: log.face, L: log.counted }));
