import { isBelow } from '../base/compare.ts';
import type { CutPlan, PlannedPiece } from '../mechanics/cut-planner.ts';
import { isUnknown, type Known } from '../mechanics/derivation.ts';
import type { Chunk } from '../syntax/chunk.ts';
import { printNumber } from '../units/print.ts';
import { fromSI, unitNamed, type Unit } from '../units/unit-table.ts';
import type { AssessedPiece } from './assess-line.ts';
import type { Assessing } from './assessing.ts';
import { planCuts, type CutChoices, type PlanCutsOptions } from './plan-cuts.ts';

export interface RepairTextOptions {
  /** Whether a name is taken already. */
  readonly isTaken: (name: string) => boolean;
  readonly label?: string;
}

function freeName(wanted: string, taken: (name: string) => boolean): string {
  if (!taken(wanted)) return wanted;
  for (let n = 2; ; n++) if (!taken(`${wanted}-${n}`)) return `${wanted}-${n}`;
}

/**
 * A plan as a `repair` block in the language. Positions are rounded towards the sound line, on the line as it lies before
 * the repair, as every `repair` measures them.
 */
export function repairText(piece: AssessedPiece, plan: CutPlan, options: RepairTextOptions): string {
  const taken = new Set<string>();
  const name = (wanted: string): string => {
    const free = freeName(wanted, (n) => taken.has(n) || options.isTaken(n));
    taken.add(free);
    return free;
  };
  const repair = name(`cut-out-${piece.name}`);
  const own = piece.name === piece.line.name ? '' : piece.name;
  const lines: string[] = [];
  const at = (position_m: number, careful: 'up' | 'down'): string => cutAtText(piece, position_m, careful);
  const cutOutboard = (of: PlannedPiece): void => {
    // An end that no splice holds is spliced as it is: there is nothing to cut off.
    if (piece.outboard.buried !== undefined || isBelow(of.to_m, isUnknown(piece.length) ? Infinity : piece.length.amount.low)) lines.push(`  cut     ${at(of.to_m, 'down')}`);
  };
  if (plan.main.cutInboard) {
    lines.push(`  cut     ${at(plan.main.from_m, 'up')} drop inboard`);
    const { form } = piece.inboard.facts;
    // A knot at the drum becomes an eye, which holds more.
    if (form !== 'bare' && form !== 'unstated') lines.push(`  splice  ${own === '' ? '' : own + ' '}inboard ${form === 'lug' ? form : eyeText(piece, piece.inboard)}`);
  }
  if (plan.main.cutOutboard) {
    cutOutboard(plan.main);
    lines.push(`  splice  ${own === '' ? '' : own + ' '}outboard ${eyeText(piece)}`);
  }
  for (const extension of plan.extensions) {
    const kept = name('tail');
    if (extension.cutInboard) lines.push(`  cut     ${at(extension.from_m, 'up')} keep ${kept}`, `  splice  ${kept} inboard ${eyeText(piece)}`);
    if (extension.cutOutboard) {
      cutOutboard(extension);
      lines.push(`  splice  ${kept} outboard ${eyeText(piece)}`);
    }
  }
  const label = options.label === undefined ? '' : ` "${options.label.replaceAll('"', "'")}"`;
  return `repair ${repair} on ${piece.line.name}${label} {\n${lines.join('\n')}\n}\n`;
}

/** `at 7.85 m from inboard`: where a piece is cut, in the unit of its line. */
export function cutAtText(piece: AssessedPiece, position_m: number, careful: 'up' | 'down'): string {
  const unit = unitOfLine(piece);
  return `at ${printNumber(fromSI(position_m, unit), careful, 2)} ${unit.symbol} from inboard${piece.name === piece.line.name ? '' : ` of ${piece.name}`}`;
}

function unitOfLine(piece: AssessedPiece): Unit {
  const { length } = piece.line;
  const metre = unitNamed('m')!;
  return isUnknown(length) || length.origin.from !== 'written' ? metre : (length.origin.unit ?? metre);
}

/** The full eye of the shop's practice, made like the old one where that says more. */
function eyeText(piece: AssessedPiece, end = piece.outboard): string {
  const { practice, material } = piece.line;
  const diameters = (key: string): string => `${key} ${printNumber(practice.number(key, 'high', material), 'up', 1).replace(/\.0$/, '')} d`;
  const { form, thimble, size } = end.facts;
  const written = size === undefined ? '' : ` size ${(size.place.chunk as Chunk).text.slice(size.place.start, size.place.end)}`;
  return `${form === 'hook' && end === piece.inboard ? form : 'eye'}${thimble === undefined ? '' : ` thimble ${thimble}`} ${diameters('bury')} ${diameters('taper')}${written} stitched`;
}

/** Plans the cuts of a piece and writes them as a repair, or tells why nothing can be planned. Undefined when nothing has to be cut. */
export function cutOutText(piece: AssessedPiece, assessing: Assessing, options: PlanCutsOptions = {}): Known<{ readonly choices: CutChoices; readonly text: string }> | undefined {
  const choices = planCuts(piece, options);
  if (isUnknown(choices)) return choices;
  if (choices.recommended.splices === 0) return undefined;
  return { choices, text: repairText(piece, choices.recommended, { isTaken: (name) => assessing.reader.declarations(name).length > 0 }) };
}
