import { isAbove, isBelow } from '../base/compare.ts';
import { asGiven, isUnknown, unknown, type Cause, type Derived, type Given, type Known, type Value } from '../mechanics/derivation.ts';
import { drumTable, type DrumTable } from '../mechanics/drum-table.ts';
import { freeboard } from '../mechanics/freeboard.ts';
import { layerAtLineOut } from '../mechanics/layer-at-line-out.ts';
import { layersThatFit } from '../mechanics/layers-that-fit.ts';
import { lengthKeptByWraps } from '../mechanics/length-kept-by-wraps.ts';
import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import { lengthThroughLayer } from '../mechanics/length-through-layer.ts';
import { pullAtLineOut } from '../mechanics/pull-at-line-out.ts';
import { pullOnFirstLayer } from '../mechanics/pull-on-first-layer.ts';
import { speedByLayer } from '../mechanics/speed-by-layer.ts';
import { speedOnFirstLayer } from '../mechanics/speed-on-first-layer.ts';
import { usableLength } from '../mechanics/usable-length.ts';
import { wrapsPerLayer } from '../mechanics/wraps-per-layer.ts';
import { countOf, nameOf, wordOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { exactly } from '../units/amount.ts';
import { ownChoice, sources } from '../trade/sources.ts';
import type { AssessedPiece } from './assess-line.ts';
import { factOf, maybeFact, missingFact, statementOf } from './facts.ts';
import type { Practice } from './practice.ts';

export type DrumFault = 'flange-below-barrel' | 'narrower-than-line';

export interface AssessedWinch {
  readonly kind: 'winch';
  readonly block: BoundBlock;
  readonly name: string;
  readonly ratedPull: Value;
  readonly ratedLayer: Value;
  readonly barrel: Value;
  readonly width: Value;
  readonly flange: Value;
  /** Wraps that the file says stay on the drum. */
  readonly keep: Value;
  readonly keepWritten: boolean;
  readonly keepNeeded: Value;
  readonly carries: BoundStatement | undefined;
  readonly piece: AssessedPiece | undefined;
  readonly diameter: Value;
  readonly length: Value;
  readonly firstLayerPull: Derived;
  /** Sizes that contradict each other. */
  readonly impossible: readonly DrumFault[];
  /** Line speed on a layer; undefined where no speed is given. */
  readonly speedOn: ((layer: Value) => Derived) | undefined;
  /** Time that it may run at full load; undefined where none is given. */
  readonly runTime: Value | undefined;
  readonly drum: Known<DrumTable>;
  readonly layersThatFit: Derived;
  /** Layers whose every wrap lies below the edge of the flange. */
  readonly layersBelowEdge: Value;
  /** All of the layer that it is rated on would lie above its flange. */
  readonly isRatedLayerAbsent: boolean;
  /** Line that fits below the flange with its freeboard. */
  readonly capacity: Derived;
  readonly outermostLayer: Derived;
  readonly freeboard: Derived;
  readonly keptLength: Derived;
  readonly usable: Derived;
  /** Greatest pull on the line: on the first layer, or on the layer the line leaves when all usable line is out. */
  readonly greatestPull: Value;
  readonly fairlead: { readonly form: string; readonly condition: string | undefined; readonly statement: BoundStatement } | undefined;
  at(lineOut: Value): { readonly layer: Derived; readonly pull: Derived };
}

const firstLayerAssumed: Given = { amount: exactly(1), kind: 'count', origin: { from: 'assumed', source: sources['sae-j706'], means: 'write `at layer ...` behind the rated pull to replace it' } };

const firstLayerOfSpeed: Given = { amount: exactly(1), kind: 'count', origin: { from: 'assumed', source: ownChoice('speed-on-first-layer', 'a speed without a layer is taken for the first one, where line runs slowest'), means: 'write `at layer ...` behind the speed to replace it' } };

/** `gone` says why there is no piece, where the winch's own words are not the reason. */
function notCarried(block: BoundBlock, name: string): Cause {
  const cause = missingFact(block, 'carries');
  return cause.reported === true ? cause : { ...cause, says: `which line is on the drum of \`${name}\` is not given`, help: 'add `carries` with its name' };
}

export function assessWinch(block: BoundBlock, piece: AssessedPiece | undefined, practice: Practice, gone?: Cause): AssessedWinch {
  const name = block.name ?? 'winch';
  const rated = statementOf(block, 'rated');
  const ratedPull = factOf(block, 'rated', 'pull');
  const layerStated = rated === undefined ? undefined : countOf(rated.values, 'layer');
  const ratedLayer: Value = layerStated === undefined ? firstLayerAssumed : { amount: exactly(layerStated), kind: 'count', origin: { from: 'written', place: rated!.values.get('layer')!.place } };
  const carries = statementOf(block, 'carries');
  const noLine = unknown(gone ?? (carries === undefined ? notCarried(block, name) : { key: `line of ${name}`, says: `the line that \`${name}\` carries is not known`, help: 'write the line as a block of its own', place: carries.place, reported: true }));
  const diameter: Value = piece === undefined ? noLine : piece.line.diameter;
  const length: Value = piece === undefined ? noLine : piece.length;
  const [barrel, width, flange] = [factOf(block, 'barrel'), factOf(block, 'width'), factOf(block, 'flange')];
  const impossible = drumFaults({ barrel, width, flange, diameter });
  const material = piece?.line.material;
  // The wraps of the wrong material would be too few, so an unknown one gives no figure.
  const keepNeeded = piece === undefined ? noLine : piece.line.materialCause !== undefined ? unknown(piece.line.materialCause) : practice.value('keep-wraps', material);
  const keepWritten = maybeFact(block, 'keep', 'wraps');
  const keep = keepWritten ?? keepNeeded;
  // A size that cannot be is reported by itself; nothing is computed from it.
  const sound = (value: Value, fault: DrumFault): Value => (impossible.includes(fault) ? unknown({ key: `drum of ${name}`, says: `the drum of \`${name}\` cannot be as written`, help: 'measure it again', place: block.namePlace, reported: true }) : value);
  const [B, W, d, A] = [barrel, sound(width, 'narrower-than-line'), diameter, sound(flange, 'flange-below-barrel')];
  const w = asGiven(wrapsPerLayer({ W, d }));
  const layersBelowEdge = asGiven(layersThatFit({ A, B, d, f: noFreeboard }));
  // The layer behind the last whole one may still have begun.
  const isRatedLayerAbsent = !isUnknown(ratedLayer) && !isUnknown(layersBelowEdge) && isAbove(ratedLayer.amount.low, layersBelowEdge.amount.high + 1);
  const r: Value = isRatedLayerAbsent ? unknown({ key: `rated layer of ${name}`, says: `\`${name}\` is rated on a layer that its drum does not have`, help: 'correct it', place: rated!.place, reported: true }) : ratedLayer;
  const firstLayerPull = pullOnFirstLayer({ F_r: ratedPull, r, B, d });
  const F_1 = asGiven(firstLayerPull);
  const outermost = layerAtLineOut({ L: length, x: nothingOut, w, B, d });
  const fit = layersThatFit({ A, B, d, f: asGiven(lengthInDiameters({ k: practice.value('freeboard'), d }), 'needed length') });
  const kept = lengthKeptByWraps({ k: asKind(keep, 'needed count'), w, B, d });
  const speed = maybeFact(block, 'speed');
  const speedStated = statementOf(block, 'speed');
  const layerOfSpeed = speedStated === undefined ? undefined : countOf(speedStated.values, 'layer');
  const speedLayer: Value = layerOfSpeed === undefined ? firstLayerOfSpeed : { amount: exactly(layerOfSpeed), kind: 'count', origin: { from: 'written', place: speedStated!.values.get('layer')!.place } };
  const statement = statementOf(block, 'fairlead');
  const form = statement === undefined ? undefined : wordOf(statement.values, 'fairlead');
  // Only who looks at the drum asks for its layers.
  let drum: Known<DrumTable> | undefined;
  return {
    kind: 'winch',
    block,
    name,
    ratedPull,
    ratedLayer,
    barrel,
    width,
    flange,
    keep,
    keepWritten: keepWritten !== undefined,
    keepNeeded,
    carries,
    piece,
    diameter,
    length,
    firstLayerPull,
    impossible,
    speedOn: speed === undefined ? undefined : (n) => speedByLayer({ v_1: asGiven(speedOnFirstLayer({ v_r: speed, r: speedLayer, B, d })), B, d, n }),
    runTime: maybeFact(block, 'duty', 'run'),
    get drum() {
      return (drum ??= drumTable({ barrel, width: W, diameter, length, ratedPull, ratedLayer: r, flange: A }));
    },
    layersThatFit: fit,
    layersBelowEdge,
    isRatedLayerAbsent,
    capacity: isUnknown(fit) || 1 <= fit.amount.low ? lengthThroughLayer({ w, B, d, n: asGiven(fit) }) : unknown({ key: `capacity of ${name}`, says: `no layer of this line fits below the flange of \`${name}\``, help: 'check barrel, flange and line diameter', place: block.namePlace, reported: true }),
    outermostLayer: outermost,
    freeboard: freeboard({ A, B, d, n: asGiven(outermost) }),
    keptLength: kept,
    usable: usableOf(length, asGiven(kept), name, block),
    greatestPull: layerStated === undefined || layerStated === 1 ? (isUnknown(ratedPull) ? ratedPull : { ...ratedPull, kind: 'line pull' }) : F_1,
    fairlead: form === undefined ? undefined : { form, condition: wordOf(statement!.values, 'condition'), statement: statement! },
    at: (x) => ({ layer: layerAtLineOut({ L: length, x, w, B, d }), pull: pullAtLineOut({ F_1, L: length, x, w, B, d }) }),
  };
}

function drumFaults(drum: { barrel: Value; width: Value; flange: Value; diameter: Value }): DrumFault[] {
  const { barrel, width, flange, diameter } = drum;
  const faults: DrumFault[] = [];
  if (!isUnknown(flange) && !isUnknown(barrel) && !isAbove(flange.amount.low, barrel.amount.high)) faults.push('flange-below-barrel');
  if (!isUnknown(width) && !isUnknown(diameter) && isBelow(width.amount.low, diameter.amount.high)) faults.push('narrower-than-line');
  return faults;
}

/** A line shorter than the wraps to keep is reported by itself: then no line may be run out, and no number says how much. */
function usableOf(length: Value, kept: Value, name: string, block: BoundBlock): Derived {
  const short = !isUnknown(length) && !isUnknown(kept) && isBelow(length.amount.low, kept.amount.high);
  return short ? unknown({ key: `usable length on ${name}`, says: `the line on \`${name}\` is shorter than the wraps to keep`, help: 'fit a longer line', place: block.namePlace, reported: true }) : usableLength({ L: length, K: kept });
}

const noFreeboard: Given = { amount: exactly(0), kind: 'needed length', origin: { from: 'constant', source: sources.geometry } };

const nothingOut: Given = { amount: exactly(0), kind: 'length', origin: { from: 'constant', source: sources.geometry } };

const asKind = (value: Value, kind: Given['kind']): Value => (isUnknown(value) ? value : { ...value, kind });

/** The name a winch gives for its line. */
export const carriedName = (block: BoundBlock): string | undefined => {
  const carries = statementOf(block, 'carries');
  return carries === undefined ? undefined : nameOf(carries.values, 'line')?.name;
};

