import { isAbove, isBelow, isNear } from '../base/compare.ts';
import { paretoFront } from './pareto-front.ts';

/** A damaged stretch, measured from the inboard end on the line as it lies (m). */
export interface PlannedDamage {
  readonly from_m: number;
  readonly to_m: number;
  /** Breaking strength left there (N); undefined when nobody can say. */
  readonly strength_N: number | undefined;
  /** It may not stay on a line that is cut anyway, and neither may one whose strength is not known. */
  readonly mustGo?: boolean;
}

export interface CutQuestion {
  /** Finished length of the line, bearing point to bearing point; the lowest it may be. */
  readonly length_m: number;
  readonly damages: readonly PlannedDamage[];
  /** Rope that a new eye uses, cut end to bearing point; the most that it may be. */
  readonly eyeUses_m: number;
  /** A cut stays this far clear of damage. */
  readonly clear_m: number;
  /** Shorter finished pieces are not worth a splice. */
  readonly leastPiece_m: number;
  /** The main line is not cut shorter than this: its kept wraps, at least. */
  readonly leastMain_m: number;
  /** Line without damage, a new eye in it, and the outboard end as it is (N). */
  readonly soundStrength_N: number;
  readonly eyeStrength_N: number;
  /** Undefined when nobody can say: then it is made again, or goes. */
  readonly outboardStrength_N: number | undefined;
  /** Where the splice of the outboard end begins: a cut lies inboard of it, and takes the old end off. */
  readonly outboardFrom_m: number;
  /** The main line may begin at a cut: its end at the drum is made again, and is not what a pull loads. */
  readonly mayDropInboard?: boolean;
  /** Rope that this takes, for an eye or a hook. */
  readonly drumUses_m?: number;
}

/** A piece that stays in use. Cut ends get a new eye, but for the one at the drum. */
export interface PlannedPiece {
  readonly from_m: number;
  readonly to_m: number;
  readonly cutInboard: boolean;
  readonly cutOutboard: boolean;
  /** Finished length, at the least. */
  readonly length_m: number;
  readonly strength_N: number;
}

/** One choice of cuts: the main line first, then extensions from inboard to outboard. */
export interface CutPlan {
  readonly main: PlannedPiece;
  readonly extensions: readonly PlannedPiece[];
  /** Main line and extensions together. */
  readonly total_m: number;
  readonly weakest_N: number;
  readonly splices: number;
}

interface Gap {
  readonly from: number;
  readonly to: number;
  readonly cutInboard: boolean;
  readonly cutOutboard: boolean;
}

/** Stretches between what is cut out. */
function gaps(question: CutQuestion, bad: readonly PlannedDamage[], keepEnd: boolean): Gap[] {
  const found: Gap[] = [];
  let from = 0;
  for (const damage of [...bad].sort((a, b) => a.from_m - b.from_m)) {
    found.push({ from, to: Math.min(question.outboardFrom_m, damage.from_m - question.clear_m), cutInboard: found.length > 0, cutOutboard: true });
    from = Math.max(from, damage.to_m + question.clear_m);
  }
  found.push({ from, to: keepEnd ? question.length_m : question.outboardFrom_m, cutInboard: found.length > 0, cutOutboard: !keepEnd });
  return found;
}

/** The longest piece within a gap whose new splices lie in line without damage; undefined when nothing is left of it. */
function pieceIn(question: CutQuestion, gap: Gap, kept: readonly PlannedDamage[], atDrum = false): PlannedPiece | undefined {
  const { eyeUses_m: eye, clear_m: clear } = question;
  const { cutInboard, cutOutboard } = gap;
  const inboardEye = !cutInboard ? 0 : atDrum ? (question.drumUses_m ?? 0) : eye;
  let { from, to } = gap;
  for (let moved = true; moved && isBelow(from, to); ) {
    moved = false;
    for (const { from_m, to_m } of kept) {
      if (isAbove(to_m, from) && isBelow(from_m, to)) {
        if (cutOutboard && isAbove(to_m, to - eye)) [to, moved] = [from_m - clear, true];
        else if (cutInboard && isBelow(from_m, from + inboardEye)) [from, moved] = [to_m + clear, true];
      }
    }
  }
  if (cutInboard && !cutOutboard && isAbove(from + inboardEye, question.outboardFrom_m)) return undefined;
  const length_m = to - from - inboardEye - (cutOutboard ? eye : 0);
  if (!(length_m > 0)) return undefined;
  const inside = kept.filter(({ from_m, to_m }) => to_m >= from && from_m <= to).map((damage) => damage.strength_N!);
  const ends = [...(inboardEye > 0 || cutOutboard ? [question.eyeStrength_N] : []), ...(cutOutboard ? [] : [question.outboardStrength_N!])];
  return { from_m: from, to_m: to, cutInboard, cutOutboard, length_m, strength_N: Math.min(question.soundStrength_N, ...inside, ...ends) };
}

const splicesOf = (piece: PlannedPiece): number => Number(piece.cutInboard) + Number(piece.cutOutboard);

function planOf(main: PlannedPiece, extensions: readonly PlannedPiece[]): CutPlan {
  const pieces = [main, ...extensions];
  return {
    main,
    extensions: [...extensions].sort((a, b) => a.from_m - b.from_m),
    total_m: pieces.reduce((sum, piece) => sum + piece.length_m, 0),
    weakest_N: Math.min(...pieces.map((piece) => piece.strength_N)),
    splices: pieces.reduce((sum, piece) => sum + splicesOf(piece), 0),
  };
}

/**
 * Every choice of cuts that no other choice beats. One beats another when its main line is as long, main line and
 * extensions together are as long, its weakest place is as strong and it takes no more splices, one of them better.
 *
 * Exact, by these steps: cutting line that may stay never pays, because the two pieces together are shorter by their
 * splices than the one piece was; so for a wanted strength everything weaker goes, the outboard end too, everything else
 * stays, and every cut lies at the edge of what goes. That leaves one plan of pieces for each strength in the question and each of them that
 * may be the main line (the one at the drum; where the end at the drum may be dropped, any, and what lies inboard of it goes), and of its extensions
 * those are taken that give most length for each number of splices: the longest first, the one that keeps the old
 * outboard end with or without.
 */
export function planCutsOf(question: CutQuestion): CutPlan[] {
  const mayStay = question.damages.filter((damage) => damage.strength_N !== undefined && damage.mustGo !== true);
  const mustGo = question.damages.filter((damage) => !mayStay.includes(damage));
  const outboard = question.outboardStrength_N ?? 0;
  const levels = [...new Set([0, ...mayStay.map((damage) => damage.strength_N!), outboard, Infinity])].sort((a, b) => a - b);
  const found: CutPlan[] = [];
  for (const level of levels) {
    const bad = [...mustGo, ...mayStay.filter((damage) => damage.strength_N! < level)];
    const kept = mayStay.filter((damage) => damage.strength_N! >= level);
    const keepEnd = question.outboardStrength_N !== undefined && outboard >= level;
    const between = gaps(question, bad, keepEnd);
    const mayBeMain = question.mayDropInboard === true ? between : between.slice(0, 1);
    for (const [i, gap] of mayBeMain.entries()) {
      const main = pieceIn(question, gap, kept, true);
      if (main === undefined || isBelow(main.length_m, question.leastMain_m)) continue;
      const pieces = between.slice(i + 1).flatMap((other) => pieceIn(question, other, kept) ?? []).filter((piece) => !isBelow(piece.length_m, question.leastPiece_m));
      const twice = pieces.filter((piece) => splicesOf(piece) === 2).sort((a, b) => b.length_m - a.length_m);
      const once = pieces.find((piece) => splicesOf(piece) === 1);
      for (let n = 0; n <= twice.length; n++) {
        found.push(planOf(main, twice.slice(0, n)));
        if (once !== undefined) found.push(planOf(main, [...twice.slice(0, n), once]));
      }
    }
  }
  return paretoFront(found, (plan) => [plan.main.length_m, plan.total_m, plan.weakest_N, -plan.splices]);
}

/** What a plan has to serve; what is not asked for counts as served. */
export interface CutNeed {
  /** Line from drum to far end, kept wraps included (m). */
  readonly total_m?: number | undefined;
  readonly weakest_N?: number | undefined;
}

export const serves = (plan: CutPlan, need: CutNeed): boolean =>
  (need.total_m === undefined || !isBelow(plan.total_m, need.total_m)) && (need.weakest_N === undefined || !isBelow(plan.weakest_N, need.weakest_N));

/**
 * Of the plans that serve the need, the one with the fewest splices, then the longest main line, then the strongest.
 * Without such a plan, the one that is strong enough and reaches farthest, else the strongest.
 */
export function recommended(plans: readonly CutPlan[], need: CutNeed): CutPlan | undefined {
  const best = (of: readonly CutPlan[], ...by: ((plan: CutPlan) => number)[]): CutPlan | undefined =>
    of.reduce<CutPlan | undefined>((kept, plan) => {
      if (kept === undefined) return plan;
      const other = kept;
      const deciding = by.find((value) => !isNear(value(plan), value(other)));
      return deciding !== undefined && deciding(plan) > deciding(other) ? plan : kept;
    }, undefined);
  const serving = plans.filter((plan) => serves(plan, need));
  if (serving.length > 0) return best(serving, (p) => -p.splices, (p) => p.main.length_m, (p) => p.weakest_N);
  const strong = plans.filter((plan) => serves(plan, { weakest_N: need.weakest_N }));
  if (strong.length > 0) return best(strong, (p) => p.total_m, (p) => -p.splices);
  return best(plans, (p) => p.weakest_N, (p) => p.total_m, (p) => -p.splices);
}
