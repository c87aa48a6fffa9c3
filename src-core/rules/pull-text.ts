import type { AssessedPull, Loaded } from '../assess/assess-pull.ts';
import { statementOf } from '../assess/facts.ts';
import { show, unitOf } from '../assess/show.ts';
import type { Draft, Severity } from '../assess/finding.ts';
import { isAbove } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { quantityOf } from '../model/bound.ts';
import { unitNamed, type Unit } from '../units/unit-table.ts';
import { mostOf, type Given } from '../mechanics/derivation.ts';
import { limitText } from './force-text.ts';
import type { Judge } from './judge.ts';

export const lessResistance = 'lower the resistance first: dig, drain, unload, clear the way';

/** Where a pull says how far it reaches. */
export const reachPlace = (pull: AssessedPull): Place => statementOf(pull.block, 'reach')?.place ?? pull.block.namePlace;

/** The unit of force in which the winch is rated: everything on the pull is said in it. */
export function winchUnit({ winch }: AssessedPull): Unit | undefined {
  const statement = winch === undefined ? undefined : statementOf(winch.block, 'rated');
  const rated = statement === undefined ? undefined : quantityOf(statement.values, 'pull');
  if (rated?.mass === undefined) return rated?.unit;
  return unitNamed(rated.unit.system === 'us' ? 'lbf' : 'kN');
}

/** An estimate that passes a limit with both its ends is an error; one that may pass it, a warning. */
export const estimateSeverity = (load: Given, limit: Given): Severity => (isAbove(load.amount.low, limit.amount.low) ? 'error' : 'warning');

/** Braked vehicles and buried logs, where nobody wrote what they hold. */
export const isJudgedElsewhere = ({ anchor, vehicle }: Loaded): boolean => anchor?.holdingFrom !== 'written' && (vehicle !== undefined || anchor?.log !== undefined);

/** Judges what the pull loads; of the two ends of one piece of line the weaker is spoken of. */
export function judgeLoads(pull: AssessedPull, judge: Judge, which: (loaded: Loaded) => boolean, draft: (loaded: Loaded, load: Given, limit: Given) => Draft): void {
  const low = ({ limit }: Loaded): number => mostOf(limit)?.amount.low ?? Infinity;
  const said = new Set<string>();
  for (const loaded of pull.loaded.filter(which).sort((a, b) => low(a) - low(b))) {
    const piece = loaded.link?.piece?.name;
    if (piece !== undefined && said.has(piece)) continue;
    const held = judge.atMost(loaded.load, loaded.limit, loaded.place, (load, limit) => draft(loaded, load, limit), loaded.doubt ?? pull.incomplete);
    if (held === false && piece !== undefined) said.add(piece);
  }
}

/** The finding for a load above a limit. A limit that only a factor gives is practice, until the load passes what breaks. */
export function overLimit(pull: AssessedPull, loaded: Loaded, load: Given, limit: Given, what: 'load' | 'pull', limitName: string, help: string): Draft {
  const unit = unitOf(limit) ?? winchUnit(pull);
  const text = { load: show(load, { unit, careful: 'up' }), limit: limitText(limit, unit) };
  const byFactor = loaded.limitSays !== undefined && ['line factor', 'breaking strength'].includes(loaded.limitSays);
  const breaks = loaded.breaking !== undefined && isAbove(load.amount.high, mostOf(loaded.breaking)?.amount.low ?? Infinity);
  const severity: Severity = byFactor && !breaks ? 'warning' : estimateSeverity(load, limit);
  return {
    place: loaded.place,
    severity,
    message: `${what} on \`${loaded.name}\` in \`${pull.name}\` is ${text.load}, above its ${limitName} of ${text.limit}${byFactor ? ', which the factor leaves of its breaking strength' : ''}`,
    help,
    ...(loaded.own === undefined ? {} : { related: [{ place: loaded.own, message: 'what is loaded' }] }),
  };
}
