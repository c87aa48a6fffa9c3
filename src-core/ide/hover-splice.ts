import { allEnds, type EndOfPiece } from '../assess/ends.ts';
import type { AssessedLine } from '../assess/assess-line.ts';
import { show, showValue } from '../assess/show.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import type { BoundStatement } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import type { EndFacts } from '../model/line-state.ts';
import { answerOf, notKnown, type Answer } from './answer.ts';
import type { Viewing } from './viewing.ts';

/** The end that a statement makes, on whichever piece it is now. */
export function endOf(line: AssessedLine, statement: BoundStatement): EndOfPiece | undefined {
  for (const end of allEnds(line)) if (end.end.facts.statement === statement) return end;
  return undefined;
}

const daySeconds = 86_400;

/** When a temporary splice falls due; undefined for a lasting one, or for a plan that has no date yet. */
export function dueDay(view: Viewing, facts: EndFacts): number | undefined {
  if (!facts.temporary || facts.day === undefined) return undefined;
  return facts.day + Math.floor(view.assessing.practice.number('temporary-life', 'low') / daySeconds);
}

/** Bury, and with it the whole splice: how much counts, where to put the marks, what it costs. */
export function hoverBury(view: Viewing, { buried, end, piece }: EndOfPiece): Answer {
  const { bury, buryIn_d, needed, needed_d, share, used, exit, shortening, marks } = buried;
  if (isUnknown(bury)) return notKnown('this splice', bury.unknown);
  const has = isUnknown(buryIn_d) ? show(bury) : showValue(asGiven(buryIn_d));
  const needs = isUnknown(needed_d) ? `what it needs is not known: ${needed_d.unknown.says}` : `needs ${show(needed_d, { careful: 'up' })}${isUnknown(needed) ? '' : ` (${show(needed, { careful: 'up' })})`}`;
  const counted = isUnknown(share) ? '' : `counted at ${showValue(asGiven(share))} of a full splice`;
  const due = dueDay(view, end.facts);
  const costs = [
    ...(isUnknown(used) ? [] : [`uses ${showValue(asGiven(used))} of finished length`]),
    ...(isUnknown(shortening) ? [] : [`the standing part shortens by ${showValue(asGiven(shortening))}`]),
    ...(isUnknown(exit) || marks !== undefined ? [] : [`the tail comes out ${showValue(asGiven(exit))} from its entry`]),
  ].join(' · ');
  return {
    lead: `${has} · ${needs}`,
    after: counted,
    lines: [
      `Strength of \`${piece.name}\` there: ${isUnknown(end.strength) ? `not judged, because ${end.strength.unknown.says}` : show(end.strength)}${due === undefined ? '' : ` · temporary, due again by ${printDay(due)}`}`,
      ...(costs === '' ? [] : [costs]),
    ],
    table: marks === undefined ? undefined : { head: ['mark', 'from the tail end', ''], rows: marks.map((m) => [m.name, showValue(m.at), m.meaning]) },
    restsOn: [needed, asGiven(used)],
  };
}

export function hoverTaper(end: EndOfPiece): Answer {
  const { taper, taperNeeded } = end.buried;
  if (isUnknown(taper)) return notKnown('this taper', taper.unknown);
  return {
    lead: `${show(taper)} of taper · ${isUnknown(taperNeeded) ? `what it needs is not known: ${taperNeeded.unknown.says}` : `needs ${show(taperNeeded, { careful: 'up' })}`}`,
    after: 'counted within the bury',
    ...(isUnknown(taperNeeded) || taperNeeded.origin.from !== 'derived' ? { restsOn: [taperNeeded] } : { derivation: taperNeeded.origin.derivation }),
  };
}

export function hoverEyeSize(end: EndOfPiece): Answer {
  return answerOf(end.buried.eyeLoop, 'of line around the eye, throat to throat', { restsOn: [end.buried.eyeLoop, asGiven(end.buried.used)] });
}

/** An end as a whole: what it holds. */
export function hoverEnd(view: Viewing, end: EndOfPiece): Answer {
  const { strength } = end.end;
  const splice = hoverBury(view, end);
  if (isUnknown(strength)) return splice;
  return { ...answerOf(strength, `breaking strength of \`${end.piece.name}\` at ${end.end.which === 'joint' ? 'this joint' : `its ${end.end.which} eye`}`), lines: [`${splice.lead}${splice.after ? ` · ${splice.after}` : ''}`] };
}
