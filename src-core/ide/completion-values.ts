import type { AssessedPiece } from '../assess/assess-line.ts';
import { cutsAround } from '../assess/plan-cuts.ts';
import { cutAtText } from '../assess/repair-text.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { nameOf, type BoundBlock } from '../model/bound.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import type { Declaration } from '../model/scope.ts';
import { kinds } from '../units/dimension.ts';
import { unitsOf } from '../units/unit-table.ts';
import { shackleForms, standards } from '../vocabulary/blocks/gear.ts';
import type { Measure, NameKind, Part, StatementDefinition } from '../vocabulary/shape.ts';
import { ends } from '../vocabulary/blocks/line.ts';
import { damageWords } from '../assess/damage-words.ts';
import type { CompletionItem } from './completion.ts';
import type { Expected } from './expected-parts.ts';
import { explainCode, ruleList } from './explain-code.ts';
import { whereIs } from './hover-line.ts';
import { linkKinds, vehicleNamed } from './mentions.ts';
import { blockSummary } from './summary.ts';
import { assessedOf, type Viewing } from './viewing.ts';
import { partMeaning } from '../papers/part-text.ts';

interface Where {
  readonly header: boolean;
  readonly today: DayNumber;
  /** The statement that the values belong to; undefined in a header. */
  readonly statement?: StatementDefinition | undefined;
}

/** Items for everything that may come next, each label once. */
export function valueItems(view: Viewing, block: BoundBlock | undefined, expected: readonly Expected[], where: Where): CompletionItem[] {
  const items: CompletionItem[] = [];
  for (const one of expected) {
    for (const item of itemsFor(view, block, one, where)) {
      if (!items.some((other) => other.label === item.label)) items.push({ ...item, rank: items.length });
    }
  }
  return items;
}

function itemsFor(view: Viewing, block: BoundBlock | undefined, expected: Expected, where: Where): CompletionItem[] {
  const word = (label: string, detail: string): CompletionItem => ({ label, kind: 'word', detail, insert: `${label} `, rank: 0 });
  switch (expected.expect) {
    case 'unit':
      return unitItems(expected.measure);
    case 'noun':
      // A noun that only says the head again is left out.
      return expected.nouns[0] === where.statement?.head ? [] : [{ label: nounFor(expected.nouns, expected.one), kind: 'word', rank: 0 }];
    case 'distance':
      return [{ label: '8.4 m', kind: 'value', detail: 'a distance', snippet: '${1:distance} ${2|m,cm,ft,in|}', insert: '', rank: 0 }];
    case 'from':
      return [word('from', 'which end the distance is counted from')];
    case 'to':
      return [word('to', 'where the stretch ends')];
    case 'end':
      return Object.entries(ends).map(([label, detail]) => ({ label, kind: 'choice', detail, rank: 0 }));
    case 'link':
      return [...nameItems(view, linkKinds, undefined, block), word('shackle', 'a shackle by its size'), word('soft-shackle', 'a soft shackle by its size')];
    case 'arrow':
      return [{ label: '->', kind: 'word', detail: 'joins the next link', insert: '-> ', rank: 0 }];
    case 'size':
      return sizeItems(expected.gear, expected.hasForm);
    case 'standard':
      return Object.entries(standards).map(([label, detail]) => ({ label, kind: 'choice', detail: `made to ${detail}: its table gives the working limit`, rank: 0 }));
    case 'link-part':
      return linkParts(view, expected.name);
    case 'part':
      return partItems(view, block, expected.part, where);
  }
}

function unitItems(measure: Measure): CompletionItem[] {
  const { dimension } = kinds[measure.kind];
  const of = [dimension, ...(measure.load === true ? (['mass'] as const) : []), ...(measure.diameters === true && dimension !== 'diameters' ? (['diameters'] as const) : []), ...(measure.share === true ? (['ratio'] as const) : [])];
  const units = of.flatMap((d) => unitsOf(d));
  const likely = measure.example.split(' ').at(-1);
  return units.sort((a, b) => Number(b.symbol === likely) - Number(a.symbol === likely)).map((u) => ({ label: u.symbol, kind: 'unit', detail: u.meaning, rank: 0 }));
}

const nounFor = (nouns: readonly string[], one: boolean): string => (one ? nouns.at(-1) : nouns[0])!;

/** `bow 19 mm`: gear by its size, the number for a person to change. */
function sizeItems(gear: string, hasForm: boolean): CompletionItem[] {
  const usual_mm = gear === 'shackle' ? 19 : 11;
  const sized = (form: string, detail: string): CompletionItem => ({ label: `${form}${usual_mm} mm`, kind: 'value', detail, snippet: `${form}\${1:${usual_mm}} \${2|mm,in|}`, rank: 0 });
  if (gear === 'soft-shackle') return [sized('', 'diameter of the line it is made of')];
  return hasForm ? [sized('', 'diameter of its body')] : Object.entries(shackleForms).map(([form, meaning]) => sized(`${form} `, meaning));
}

/** The number that the example of the statement has at this place; the least one says nothing about what is usual. */
function usualCount(part: Part & { readonly part: 'count' }, statement: StatementDefinition | undefined): number {
  const example = statement?.example ?? '';
  const noun = (part.noun ?? []).map((n) => new RegExp(`(\\d+) ${n}\\b`).exec(example)).find((m) => m !== null);
  const found = noun ?? new RegExp(`\\b${part.key} +(\\d+)`).exec(example) ?? /(?:^|\s)(\d+)$/.exec(example);
  return found === undefined || found === null ? part.min : Number(found[1]);
}

function countItem(view: Viewing, block: BoundBlock | undefined, part: Part & { readonly part: 'count' }, { statement }: Where): CompletionItem {
  const winch = statement?.head === 'keep' && block !== undefined ? assessedOf(view, block) : undefined;
  const wraps = winch?.kind === 'winch' && !isUnknown(winch.keepNeeded) ? winch.keepNeeded : undefined;
  const n = wraps === undefined ? usualCount(part, statement) : Math.ceil(wraps.amount.high);
  const noun = part.noun === undefined || part.noun[0] === statement?.head ? '' : ` ${nounFor(part.noun, n === 1)}`;
  return { label: `${n}${noun}`, kind: 'value', detail: wraps === undefined ? partMeaning(part) : 'the least that practice keeps', snippet: `\${1:${n}}${noun}`, rank: 0 };
}

/** Every rule, for a place that names one. */
export const ruleItems = (): CompletionItem[] => ruleList().map(({ code, summary }, rank) => ({ label: code, kind: 'choice', detail: summary, documentation: explainCode(code), rank }));

function linkParts(view: Viewing, name: string): CompletionItem[] {
  const declared = view.assessing.reader.find(name, linkKinds);
  if (declared?.kind === 'line' || declared?.kind === 'piece') return Object.entries(ends).map(([label, detail]) => ({ label, kind: 'choice', detail, rank: 0 }));
  return (vehicleNamed(view, name)?.statements ?? []).flatMap((s) => {
    const named = s.values.get('name');
    return s.definition.head === 'point' && named?.type === 'new-name' ? [{ label: named.name, kind: 'name' as const, detail: `recovery point of ${name}`, rank: 0 }] : [];
  });
}

/** Why a name that fits by its kind is better left alone here. */
function whyNot(view: Viewing, declared: Declaration, part: Part | undefined, block: BoundBlock | undefined): string | undefined {
  if (block?.definition.head === 'winch' && part !== undefined && 'key' in part && part.key === 'line') {
    const other = view.assessing.reader.winchesCarrying(declared.name).find((w) => w !== block);
    if (other !== undefined) return `on \`${other.name ?? 'a winch'}\` already`;
  }
  return undefined;
}

function nameItems(view: Viewing, of: readonly NameKind[], part: Part | undefined, block: BoundBlock | undefined): CompletionItem[] {
  const repairName = block === undefined ? undefined : block.definition.head === 'repair' ? block.name : nameOf(block.header, 'repair')?.name;
  const items: CompletionItem[] = [];
  for (const declared of view.assessing.reader.scope.declarations()) {
    if (!of.includes(declared.kind)) continue;
    // A piece that a repair keeps exists in that repair and after it.
    if (declared.kind === 'piece' && declared.block.definition.head === 'repair' && declared.block.name !== repairName) continue;
    const not = whyNot(view, declared, part, block);
    const says = declared.kind === 'piece' ? `piece, kept by \`${declared.block.name ?? 'a line'}\`` : `${declared.kind} · ${blockSummary(view, declared.block)}`;
    items.push({ label: declared.name, kind: 'name', detail: not === undefined ? says : `${says} · ${not}`, rank: not === undefined ? 0 : 1 });
  }
  return items.sort((a, b) => a.rank - b.rank || (a.label < b.label ? -1 : a.label > b.label ? 1 : 0));
}

const atItem: CompletionItem = { label: 'at', kind: 'word', detail: 'a position: its distance, and from which end', snippet: 'at ${1:distance} ${2|m,cm,ft,in|} from ${3|inboard,outboard|}', insert: 'at ', rank: 0 };

/** The pieces whose damage is spoken of: those of a line as it is, or as it lies before a repair. */
function piecesOf(view: Viewing, block: BoundBlock | undefined): Iterable<AssessedPiece> {
  const line = block === undefined ? undefined : assessedOf(view, block);
  return (line?.kind === 'line' ? line.pieces : line?.kind === 'repair' ? line.before.pieces : new Map<string, AssessedPiece>()).values();
}

/** Positions that the logbook knows: where damage lies on the line as it is now. */
function stationItems(view: Viewing, block: BoundBlock | undefined, stretch: boolean): CompletionItem[] {
  const items: CompletionItem[] = [];
  for (const piece of piecesOf(view, block)) {
    for (const damage of piece.damages) {
      if (damage.from === undefined || damage.to === undefined) continue;
      const whole = whereIs(damage);
      if (whole.startsWith('at ') || stretch) items.push({ label: whole, kind: 'value', detail: damageWords(damage.fact), rank: 0 });
      else for (const [end, at] of [['from', damage.from], ['to', damage.to]] as const) items.push({ label: `at ${Math.round(at.low * 100) / 100} m from inboard`, kind: 'value', detail: `where the ${damageWords(damage.fact)} ${end === 'from' ? 'begins' : 'ends'}`, rank: 0 });
    }
  }
  items.push(atItem);
  if (stretch) items.push({ label: 'from', kind: 'word', detail: 'a stretch, from one position to another', snippet: 'from ${1:distance} ${2|m,cm,ft,in|} to ${3:distance} ${4|m,cm,ft,in|} from ${5|inboard,outboard|}', insert: 'from ', rank: 0 });
  return items;
}

/** Where a cut takes damage out: on both sides of it, as clear of it as a plan keeps, and clear of all other damage. */
function cutItems(view: Viewing, block: BoundBlock | undefined): CompletionItem[] {
  return [...piecesOf(view, block)].flatMap((piece) => cutsAround(piece).map(({ at_m, side, damage }): CompletionItem => ({ label: cutAtText(piece, at_m, side === 'inboard' ? 'down' : 'up'), kind: 'value', detail: `clear of the ${damageWords(damage.fact)}, on its ${side} side`, rank: 0 })));
}

function partItems(view: Viewing, block: BoundBlock | undefined, part: Part, where: Where): CompletionItem[] {
  switch (part.part) {
    case 'new-name':
      return [];
    case 'name':
      return nameItems(view, part.of, part, block);
    case 'quantity':
      return [{ label: part.measure.example, kind: 'value', detail: `an example of a ${part.measure.kind}`, documentation: partMeaning(part), snippet: `\${1:${part.measure.example}}`, rank: 0 }];
    case 'count':
      return [countItem(view, block, part, where)];
    case 'choice':
      return Object.entries(part.of).map(([label, detail]) => ({ label, kind: 'choice', detail, rank: 0 }));
    case 'text':
      return [{ label: '"..."', kind: 'value', detail: part.meaning, snippet: '"$1"', insert: '""', rank: 0 }];
    case 'date':
      return [{ label: printDay(where.today), kind: 'date', rank: 0 }];
    case 'marking':
      return part.key === 'rule' ? ruleItems() : [{ label: part.example, kind: 'value', rank: 0 }];
    case 'flag':
      return [{ label: part.word, kind: 'word', detail: part.meaning, rank: 0 }];
    case 'clause':
      return [{ label: part.word, kind: 'word', detail: part.meaning, insert: `${part.word} `, rank: 0 }];
    case 'station':
      return where.statement?.head === 'cut' ? [...cutItems(view, block), atItem] : stationItems(view, block, part.stretch);
    case 'route':
      return nameItems(view, linkKinds, undefined, block);
  }
}
