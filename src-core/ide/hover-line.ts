import { assessLine, type AssessedDamage, type AssessedLine, type AssessedPiece, type Remedy } from '../assess/assess-line.ts';
import { positionText } from '../assess/damage-place.ts';
import { damageWords } from '../assess/damage-words.ts';
import { show, showValue } from '../assess/show.ts';
import { fidLength } from '../mechanics/fid-length.ts';
import { asGiven, isUnknown, type Given, type Value } from '../mechanics/derivation.ts';
import { lengthInDiameters } from '../mechanics/length-of-diameters.ts';
import { quantityOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { exactly } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import { answerOf, type Answer } from './answer.ts';
import { endOf, hoverBury, hoverEnd, hoverEyeSize, hoverTaper } from './hover-splice.ts';
import { measureText } from './measure-text.ts';
import { assessedOf, type Viewing } from './viewing.ts';

export const remedyWords: Readonly<Record<Remedy, string>> = {
  clean: 'work it back into shape',
  derate: 'use the line derated',
  'cut-out': 'cut it out',
  retire: 'retire the piece',
};

const strength = (value: Value): string => (isUnknown(value) ? 'strength not judged' : `${show(value)}`);

/** `at 8.4 m from inboard`, from where the damage lies on the line as it is now. */
export function whereIs(damage: AssessedDamage): string {
  if (damage.from === undefined || damage.to === undefined) return 'at a place that cannot be told';
  const [from, to] = [positionText(damage, damage.from), positionText(damage, damage.to)];
  return from === to ? `at ${from} from inboard` : `from ${from} to ${to} from inboard`;
}

export function lineSummary(piece: AssessedPiece): string {
  const weakest = isUnknown(piece.strength) ? 'its strength is not judged' : `${show(piece.strength)} at its weakest place${piece.weakest === undefined ? '' : ` (${piece.weakest.name})`}`;
  return `${piece.name}: ${isUnknown(piece.length) ? 'length not known' : show(piece.length)} · ${piece.retired === undefined ? weakest : `retired on ${printDay(piece.retired.day)}`}`;
}

/** What a piece is worth: its length, and the strength of every place that counts. */
export function hoverPiece(piece: AssessedPiece): Answer {
  const rows: string[][] = [['new, from the tag', strength(piece.line.breaking)]];
  for (const damage of piece.damages) rows.push([`${damageWords(damage.fact)} ${whereIs(damage)}`, `${strength(damage.strength)} · ${remedyWords[damage.remedy]}`]);
  for (const joint of piece.joints) rows.push([joint.isInDoubt === true ? 'end-to-end splice, which may lie here' : 'end-to-end splice', strength(joint.strength)]);
  for (const end of [piece.inboard, piece.outboard]) if (end.buried !== undefined || end.facts.form === 'knot') rows.push([`${end.which} ${end.facts.form}`, strength(end.strength)]);
  const cause = isUnknown(piece.strength) ? [`Not judged because ${piece.strength.unknown.says}: ${piece.strength.unknown.help}.`] : [];
  return { lead: lineSummary(piece), lines: cause, table: { head: ['place', 'breaking strength'], rows }, restsOn: [piece.strength, piece.length] };
}

export function hoverLineName(line: AssessedLine, name: string): Answer {
  const piece = line.pieces.get(name);
  if (piece === undefined) return { lead: `${name}: nothing of it is left`, after: 'on this day' };
  const others = [...line.pieces.keys()].filter((n) => n !== name);
  const answer = hoverPiece(piece);
  return others.length === 0 ? answer : { ...answer, lines: [...(answer.lines ?? []), `Pieces besides: ${others.map((n) => `\`${n}\``).join(', ')}`] };
}

function damageOf(line: AssessedLine, statement: BoundStatement): { piece: AssessedPiece; damage: AssessedDamage } | undefined {
  for (const piece of line.pieces.values()) for (const damage of piece.damages) if (damage.fact.statement === statement) return { piece, damage };
  return undefined;
}

function hoverDamage(view: Viewing, line: AssessedLine, block: BoundBlock, statement: BoundStatement): Answer {
  const now = damageOf(line, statement);
  const found = now ?? damageOf(assessLine(block, view.assessing.practice, statement.day ?? view.day), statement);
  if (found === undefined) return { lead: 'this damage is on no piece of the line' };
  const { damage, piece } = found;
  const place = now === undefined ? `cut out since; it lay ${whereIs(damage)}` : `\`${piece.name}\` ${whereIs(damage)}`;
  const together = damage.zone.length > 1 ? `; ${damage.zone.length} entries count as one place, with ${damage.strands} cut strands` : '';
  const why = `${remedyWords[damage.remedy]}: ${damage.because}`;
  const value = damage.strength;
  if (isUnknown(value)) return { lead: `strength there is not judged · ${why}`, lines: [`${place}${together}`, `${value.unknown.says}: ${value.unknown.help}.`] };
  return answerOf(value, `left of ${showValue(piece.line.breaking)} · ${why}`, { lines: [`${place}${together}`] });
}

const daySeconds = 86_400;

function hoverEntry(view: Viewing, line: AssessedLine, block: BoundBlock, statement: BoundStatement): Answer | undefined {
  const { head } = statement.definition;
  const ago = (day: number): string => {
    const days = view.day - day;
    return days === 0 ? 'today' : days > 0 ? `${days} ${days === 1 ? 'day' : 'days'} ago` : `in ${-days} ${days === -1 ? 'day' : 'days'}`;
  };
  const day = statement.day!;
  if (head === 'inspected' || head === 'washed') {
    const key = head === 'inspected' ? 'inspection-interval' : 'washing-interval';
    const due = day + Math.floor(view.assessing.practice.number(key, 'low') / daySeconds);
    const later = block.statements.some((s) => s.definition.head === head && s.day !== undefined && s.day > day && s.day <= view.day);
    return { lead: `${head} ${ago(day)}`, after: later ? 'and again since' : `· due again by ${printDay(due)}`, restsOn: [view.assessing.practice.value(key)] };
  }
  if (head === 'pulled') {
    const load = quantityOf(statement.values, 'load');
    const breaking = line.facts.breaking;
    if (load === undefined) return undefined;
    const text = measureText(load);
    const overload = view.assessing.practice.value('overload-share');
    const share = isUnknown(breaking) ? 'its share of the breaking strength is not known' : `${printAmount(exactly(load.value / breaking.amount.low), 'ratio', { careful: 'up' })} of the breaking strength of ${show(breaking)}`;
    return { lead: text.lead, after: `· ${share}`, lines: [`${ago(day)}${text.also === undefined ? '' : ` · ${text.also}`}; a pull from ${showValue(overload)} of the breaking strength counts as an overload`], restsOn: [overload] };
  }
  if (head === 'cut' || head === 'join' || head === 'reversed') {
    const then = assessLine(block, view.assessing.practice, day);
    return { lead: `${head} ${ago(day)}`, after: 'leaves, at the end of that day:', table: piecesTable(then) };
  }
  return { lead: `${head} ${ago(day)}` };
}

export function piecesTable(line: AssessedLine): { head: string[]; rows: string[][] } {
  return {
    head: ['piece', 'finished length', 'breaking strength'],
    rows: [...line.pieces.values()].map((p) => [`\`${p.name}\``, showValue(p.length), isUnknown(p.strength) ? 'not judged' : `${show(p.strength)}${p.weakest === undefined ? '' : `, ${p.weakest.name}`}`]),
  };
}

/** A splice in a logbook or a plan, or an end as it came: by the part of it that is pointed at. */
export function hoverEndStatement(view: Viewing, line: AssessedLine, statement: BoundStatement, key: string | undefined): Answer | undefined {
  const end = endOf(line, statement);
  if (end === undefined) return undefined;
  if (key === 'bury' || key === 'temporary') return hoverBury(view, end);
  if (key === 'taper') return hoverTaper(end);
  if (key === 'size') return hoverEyeSize(end);
  return statement.definition.head === 'splice' || statement.definition.head === 'join' ? hoverBury(view, end) : hoverEnd(view, end);
}

export function hoverLine(view: Viewing, block: BoundBlock, statement: BoundStatement, key: string | undefined): Answer | undefined {
  const line = assessedOf(view, block);
  if (line.kind !== 'line') return undefined;
  const { head } = statement.definition;
  if (head === 'damage') return hoverDamage(view, line, block, statement);
  if (head === 'outboard' || head === 'inboard' || head === 'splice' || head === 'join') {
    const now = hoverEndStatement(view, line, statement, key);
    if (now !== undefined) return now;
    const then = hoverEndStatement(view, assessLine(block, view.assessing.practice, statement.day ?? view.day), statement, key);
    if (then !== undefined) return { ...then, after: `${then.after ?? ''} · replaced since` };
  }
  if (statement.day !== undefined) return hoverEntry(view, line, block, statement);
  const { facts } = line;
  const own = line.pieces.get(facts.name);
  if (head === 'length') {
    if (own === undefined || isUnknown(own.length)) return answerOf(facts.length, 'as fitted');
    return answerOf(own.length, `finished length of \`${facts.name}\` now`, own.length === facts.length ? {} : { lines: [`${showValue(facts.length)} as fitted`] });
  }
  if (head === 'breaking') return hoverBreaking(statement, own, facts.base);
  if (head === 'diameter') return hoverDiameter(view, statement, facts.diameter, facts.material);
  if (head === 'strands' && !isUnknown(facts.strands)) {
    const each = isUnknown(facts.breaking) ? undefined : printAmount(exactly(facts.breaking.amount.low / facts.strands.amount.high), 'force');
    return { lead: `${show(facts.strands)} strands`, after: each === undefined ? 'carry the load in equal parts' : `· each carries ${each} of ${showValue(facts.breaking)}` };
  }
  if (head === 'stored' || head === 'wet') return answerOf(facts.base, 'before any damage is counted');
  return undefined;
}

function hoverBreaking(statement: BoundStatement, own: AssessedPiece | undefined, base: Value): Answer | undefined {
  const written = quantityOf(statement.values, 'breaking');
  if (written === undefined) return undefined;
  const text = measureText(written);
  const lines = [
    ...(isUnknown(base) ? [] : [`${show(base)} before any damage is counted`]),
    ...(own === undefined ? [] : [isUnknown(own.strength) ? `Strength of the line now is not judged, because ${own.strength.unknown.says}.` : `${show(own.strength)} at the weakest place now${own.weakest === undefined ? '' : `: ${own.weakest.name}`}`]),
  ];
  return { lead: `${text.lead} new`, after: text.also === undefined ? undefined : `= ${text.also}`, lines, restsOn: own === undefined ? [] : [own.strength] };
}

function hoverDiameter(view: Viewing, statement: BoundStatement, d: Value, material: string | undefined): Answer | undefined {
  const written = quantityOf(statement.values, 'diameter');
  if (written === undefined || isUnknown(d)) return undefined;
  const text = measureText(written);
  const { practice } = view.assessing;
  const in_d = (value: Value): string | undefined => {
    const length = asGiven(lengthInDiameters({ k: value, d }));
    return isUnknown(value) || isUnknown(length) ? undefined : `${show(value)} = ${show(length)}`;
  };
  const bury = material === undefined ? undefined : in_d(practice.value('bury', material));
  const taper = material === undefined ? undefined : in_d(practice.value('taper', material));
  const fid = asGiven(fidLength({ d }));
  const rows = [['a fid', isUnknown(fid) ? undefined : show(fid)], ['bury needed', bury], ['taper needed', taper]].filter((r): r is [string, string] => r[1] !== undefined);
  return { lead: text.lead, after: text.also === undefined ? undefined : `= ${text.also}`, table: { head: ['with this diameter', ''], rows }, restsOn: material === undefined ? [] : [practice.value('bury', material), practice.value('taper', material)].filter((v): v is Given => !isUnknown(v)) };
}
