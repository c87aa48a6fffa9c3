import { planCutsOf, recommended, serves, type CutNeed, type CutPlan, type CutQuestion, type PlannedDamage } from '../mechanics/cut-planner.ts';
import { asGiven, isUnknown, unknown, type Known, type Value } from '../mechanics/derivation.ts';
import { buryNeeded } from '../mechanics/bury-needed.ts';
import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import { ropeUsedByEye } from '../mechanics/rope-used-by-eye.ts';
import { strengthOfSplice } from '../mechanics/strength-of-splice.ts';
import { taperNeeded } from '../mechanics/taper-needed.ts';
import { finishedAt } from '../model/line-state.ts';
import { clearOfDamage } from '../trade/plan-sources.ts';
import { ownChoice } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import type { AssessedPiece } from './assess-line.ts';
import { damageWords } from './damage-words.ts';
import type { AssessedWinch } from './assess-winch.ts';
import { show } from './show.ts';

export interface CutChoice {
  readonly plan: CutPlan;
  readonly serves: boolean;
  /** Against the recommended one, in words. */
  readonly buys: string;
}

/** Every choice of cuts that is worth a thought, for one piece of line. */
export interface CutChoices {
  readonly piece: AssessedPiece;
  readonly question: CutQuestion;
  readonly need: CutNeed;
  readonly recommended: CutPlan;
  readonly reason: string;
  readonly alternatives: readonly CutChoice[];
}

export interface PlanCutsOptions {
  readonly winch?: AssessedWinch | undefined;
  /** Distance from the drum that line and extensions have to bridge, kept wraps not counted. */
  readonly reach?: Value | undefined;
}

/** A cut stays this many diameters clear of damage. */
const clear_d = exactly(5);
/** Shorter extensions are not worth their splices. */
const leastPiece_m = 1;

/** Plans the cuts that take out what may not stay on a piece; the cause, when nothing can be planned. */
export function planCuts(piece: AssessedPiece, options: PlanCutsOptions = {}): Known<CutChoices> {
  const question = questionOf(piece, options);
  if (isUnknown(question)) return question;
  const plans = planCutsOf(question);
  const need = needOf(piece, question, plans, options);
  if (isUnknown(need)) return need;
  const best = recommended(plans, need);
  if (best === undefined) return unknown({ key: `cuts of ${piece.name}`, says: `no cut leaves a main line of \`${piece.name}\` that is worth its splice`, help: question.mayDropInboard === true ? 'retire it' : 'where the end at the drum may go, write a `cut` with `drop inboard` and how that end is made again; else retire it', place: piece.named });
  return { piece, question, need, recommended: best, reason: reasonFor(best, need, piece), alternatives: plans.filter((plan) => plan !== best).map((plan) => ({ plan, serves: serves(plan, need), buys: buysOf(plan, best, piece) })) };
}

/** How far a cut stays clear of what it takes out. */
export const clearanceOf = (d: Value) => lengthInDiameters({ k: { amount: clear_d, kind: 'in diameters', origin: { from: 'assumed', source: clearOfDamage, means: 'cut where you see fit' } }, d });

export interface CutPlace {
  readonly at_m: number;
  /** On which side of the damage it lies. */
  readonly side: 'inboard' | 'outboard';
  readonly damage: AssessedPiece['damages'][number];
}

/** Where a piece may be cut beside its damage: as clear of it as a plan keeps, and not within other damage. */
export function cutsAround(piece: AssessedPiece): CutPlace[] {
  const clear = clearanceOf(piece.line.diameter);
  if (isUnknown(clear) || isUnknown(piece.length)) return [];
  const c = clear.amount.high;
  const most = piece.length.amount.low;
  const placed = piece.damages.flatMap((damage) => (damage.from === undefined || damage.to === undefined ? [] : [{ damage, from: damage.from.low - c, to: damage.to.high + c }]));
  const places = placed.flatMap(({ damage, from, to }): CutPlace[] => [{ at_m: from, side: 'inboard', damage }, { at_m: to, side: 'outboard', damage }]);
  return places.filter(({ at_m, damage }) => 0 < at_m && at_m < most && !placed.some((other) => other.damage !== damage && other.from < at_m && at_m < other.to));
}

function questionOf(piece: AssessedPiece, { winch }: PlanCutsOptions): Known<CutQuestion> {
  const { line } = piece;
  const { practice, diameter: d, material } = line;
  if (line.tooOddToSplice !== undefined) return line.tooOddToSplice;
  if (line.materialCause !== undefined) return unknown(line.materialCause);
  if (piece.incomplete !== undefined) return unknown(piece.incomplete);
  if (piece.retired !== undefined) return unknown({ key: `cuts of ${piece.name}`, says: `\`${piece.name}\` is retired`, help: 'write a new line', place: piece.retired.statement.place });
  if (isUnknown(piece.length)) return piece.length;
  const length_m = piece.length.amount.low;
  const bury = asGiven(buryNeeded({ k: practice.value('bury', material), d }), 'length');
  const eye = asGiven(lengthInDiameters({ k: practice.value('eye-size'), d }));
  const used = ropeUsedByEye({ T: bury, E: eye, c: practice.value('splice-shortening') });
  const taper = asGiven(taperNeeded({ k_t: practice.value('taper', material), d }));
  const spliced = strengthOfSplice({ F_b: line.base, η: practice.value('splice-efficiency'), T: bury, T_0: asNeeded(bury), t: asLength(taper), t_0: taper, β: practice.value('blunt-loss') });
  const clear = clearanceOf(d);
  for (const value of [line.base, used, spliced, clear]) if (isUnknown(value)) return value;
  const kept = winch === undefined ? undefined : winch.keptLength;
  if (kept !== undefined && isUnknown(kept)) return kept;
  const damages = damagesOf(piece);
  if (isUnknown(damages)) return damages;
  const end = piece.outboard;
  const { form } = piece.inboard.facts;
  const plain = form === 'bare' || form === 'unstated';
  const endUses = end.buried === undefined ? 0 : isUnknown(end.buried.used) ? undefined : end.buried.used.amount.high;
  if (endUses === undefined) return end.buried!.used as never;
  const amount = (value: object): { low: number; high: number } => (value as { amount: { low: number; high: number } }).amount;
  return {
    length_m,
    damages,
    eyeUses_m: amount(used).high,
    clear_m: amount(clear).high,
    leastPiece_m,
    leastMain_m: kept === undefined ? leastPiece_m : kept.amount.high,
    soundStrength_N: amount(line.base).low,
    eyeStrength_N: amount(spliced).low,
    outboardStrength_N: isUnknown(end.strength) ? undefined : end.strength.amount.low,
    outboardFrom_m: Math.max(0, length_m - endUses),
    mayDropInboard: !plain || winch !== undefined,
    drumUses_m: plain || form === 'lug' ? 0 : amount(used).high,
  };
}

const asNeeded = (value: Value): Value => (isUnknown(value) ? value : { ...value, kind: 'needed length' });
const asLength = (value: Value): Value => (isUnknown(value) ? value : { ...value, kind: 'length' });

function damagesOf(piece: AssessedPiece): Known<PlannedDamage[]> {
  const found: PlannedDamage[] = [];
  for (const damage of piece.damages) {
    const { fact, from, to } = damage;
    if (damage.remedy === 'retire') return unknown({ key: `cuts of ${piece.name}`, says: `${damageWords(fact)} on \`${piece.name}\` is not cured by a cut: ${damage.because}`, help: 'retire it', place: fact.place, reported: true });
    if (from === undefined || to === undefined) return unknown({ key: `place of ${fact.kind} at ${fact.place.start}`, says: `where the ${damageWords(fact)} lies on \`${piece.name}\` cannot be told`, help: 'measure it again', place: fact.place });
    found.push({ from_m: from.low, to_m: to.high, strength_N: isUnknown(damage.strength) ? undefined : damage.strength.amount.low, ...(damage.remedy === 'cut-out' ? { mustGo: true } : {}) });
  }
  for (const { from, to, strength } of piece.heats) {
    if (!isUnknown(strength)) continue;
    if (from === undefined || to === undefined) return strength;
    found.push({ from_m: from.low, to_m: to.high, strength_N: undefined, mustGo: true });
  }
  for (const [i, joint] of piece.joints.entries()) {
    const at = piece.long.joints[i]?.at;
    const other = piece.short.joints[i]?.at;
    const half = joint.buried === undefined || isUnknown(joint.buried.used) ? undefined : joint.buried.used.amount.high;
    if (at === undefined || other === undefined || half === undefined) return unknown({ key: `joint of ${piece.name}`, says: `where the joint in \`${piece.name}\` lies cannot be told`, help: 'write its bury', place: joint.facts.place });
    const places = [finishedAt(piece.long, at), finishedAt(piece.short, other)];
    found.push({ from_m: Math.max(0, Math.min(...places) - half), to_m: Math.max(...places) + half, strength_N: isUnknown(joint.strength) ? undefined : joint.strength.amount.low });
  }
  return found;
}

/** Strong enough for the winch, and as long as the reach; without a reach, as much line as there is to keep. */
function needOf(piece: AssessedPiece, question: CutQuestion, plans: readonly CutPlan[], { winch, reach }: PlanCutsOptions): Known<CutNeed> {
  const pull = winch === undefined || isUnknown(winch.greatestPull) ? undefined : winch.greatestPull.amount.high;
  const factor = piece.line.practice.value('line-factor');
  const wanted = pull === undefined || isUnknown(factor) ? undefined : pull * factor.amount.high;
  // New line of this kind may not reach the factor either: then it is at least as strong as the winch pulls.
  const weakest_N = wanted === undefined ? undefined : wanted <= question.eyeStrength_N ? wanted : Math.min(pull!, question.eyeStrength_N);
  if (reach !== undefined && isUnknown(reach)) return reach;
  const kept = winch === undefined || isUnknown(winch.keptLength) ? 0 : winch.keptLength.amount.high;
  const strong = plans.filter((plan) => serves(plan, { weakest_N }));
  const most = Math.max(...(strong.length > 0 ? strong : plans).map((plan) => plan.total_m));
  return { weakest_N, total_m: reach === undefined ? (plans.length === 0 ? undefined : most) : reach.amount.high + kept };
}

const metres = (value: number, piece: AssessedPiece, careful: 'up' | 'down' = 'down'): string => show({ amount: exactly(value), kind: 'length', origin: isUnknown(piece.line.length) ? { from: 'constant', source: lengths } : piece.line.length.origin }, { careful });
const force = (value: number, piece: AssessedPiece): string => show({ amount: exactly(value), kind: 'breaking strength', origin: isUnknown(piece.line.breaking) ? { from: 'constant', source: lengths } : piece.line.breaking.origin }, { careful: 'down' });
const lengths = ownChoice('metric-unless-written', 'lengths are shown in metres where nobody wrote another unit');
const counted = (n: number, word: string): string => `${n === 0 ? 'no' : n} ${word}${n === 1 ? '' : 's'}`;

/** A plan in one clause: what is left of the line, and at what price. */
export function describePlan(plan: CutPlan, piece: AssessedPiece): string {
  const extensions = plan.extensions.length === 0 ? '' : `, ${counted(plan.extensions.length, 'extension')} of ${plan.extensions.map((e) => metres(e.length_m, piece)).join(' and ')}`;
  return `main line of ${metres(plan.main.length_m, piece)}${extensions}, weakest place ${force(plan.weakest_N, piece)}, ${counted(plan.splices, 'splice')}`;
}

function reasonFor(plan: CutPlan, need: CutNeed, piece: AssessedPiece): string {
  const what = describePlan(plan, piece);
  if (serves(plan, need)) return `${what}: the fewest splices that keep the length and the strength that are needed`;
  if (serves(plan, { weakest_N: need.weakest_N })) return `${what}: no choice reaches the ${metres(need.total_m!, piece, 'up')} that are needed, and this one comes nearest`;
  return `${what}: no choice is as strong as the ${force(need.weakest_N!, piece)} that are needed, and this one is the strongest`;
}

function buysOf(plan: CutPlan, best: CutPlan, piece: AssessedPiece): string {
  const said: string[] = [];
  const difference = (value: number, print: (v: number) => string, what: string): void => {
    if (Math.abs(value) > 1e-6) said.push(`${print(Math.abs(value))} ${value > 0 ? 'more' : 'less'} ${what}`);
  };
  difference(plan.main.length_m - best.main.length_m, (v) => metres(v, piece), 'main line');
  difference(plan.total_m - best.total_m, (v) => metres(v, piece), 'in all');
  difference(plan.weakest_N - best.weakest_N, (v) => force(v, piece), 'at the weakest place');
  const splices = plan.splices - best.splices;
  if (splices !== 0) said.push(`${counted(Math.abs(splices), 'splice')} ${splices > 0 ? 'more' : 'less'}`);
  return said.join(', ');
}
