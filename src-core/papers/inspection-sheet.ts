import type { AssessedDamage, AssessedLine, AssessedPiece } from '../assess/assess-line.ts';
import { damageWords } from '../assess/damage-words.ts';
import { carriedName, type AssessedWinch } from '../assess/assess-winch.ts';
import { show, showValue, writtenUnit } from '../assess/show.ts';
import type { AssessedEnd } from '../assess/splice-end.ts';
import { asGiven, isUnknown } from '../mechanics/derivation.ts';
import { wordOf } from '../model/bound.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import { isWire } from '../model/line-make.ts';
import { endWords } from '../pictures/end-words.ts';
import { lineWords } from '../pictures/line-map.ts';
import { statementOf } from '../assess/facts.ts';
import { printNumber } from '../units/print.ts';
import { unitNamed } from '../units/unit-table.ts';
import { heading, points, quiet, table, text, type PaperDocument, type PaperPart, type PaperText } from './document.ts';
import { ownPractice } from './own-practice.ts';
import { assessingOf, deference, findingsOn, foundParts, type PaperSubject } from './paper-subject.ts';

/** Rows for a line whose length is not known. */
const openRows = 24;

/** The sheet to fill in by hand: hook, fairlead, the line stretch by stretch, drum, in the order in which one walks. */
export function inspectionSheet(subject: PaperSubject, line: AssessedLine): PaperDocument {
  const assessing = assessingOf(subject);
  const pieces = [...line.pieces.values()].filter((p) => p.retired === undefined);
  const retired = [...line.pieces.values()].filter((p) => p.retired !== undefined);
  const winches = [line.facts.name, ...[...line.pieces.keys()].filter((name) => name !== line.facts.name)].flatMap((name) => assessing.reader.winchesCarrying(name).map((block) => assessing.winch(block)));
  // A drum whose piece nobody can tell is looked at with the first.
  const drumsOf = (piece: AssessedPiece): AssessedWinch[] => winches.filter((w) => (pieces.find((p) => p.name === carriedName(w.block)) ?? pieces[0]) === piece);
  return {
    title: `Inspection: \`${line.facts.name}\``,
    subtitle: `${lineWords(line)}. ${subject.file}, known as of ${subject.day}`,
    parts: [
      { part: 'blanks', labels: ['date', 'by', `${isWire(line.block) ? 'dry, oiled' : 'washed, dry'}, whole length out`, 'mended or noted in the logbook'] },
      quiet(`Last inspected: ${lastInspection(line, subject.root.day)}.`),
      ...foundAlready(subject, line),
      ...before(line, pieces.some((piece) => drumsOf(piece).length > 0)),
      ...pieces.flatMap((piece, i): PaperPart[] => [
        ...(i > 0 ? [{ part: 'heading', says: `Piece \`${piece.name}\``, newPage: true } satisfies PaperPart] : []),
        ...endsPart(piece, drumsOf(piece)),
        ...alongPart(piece),
        ...drumsOf(piece).flatMap(drumPart),
      ]),
      ...(retired.length === 0 ? [] : [quiet(`Retired, and not to be used: ${retired.map((p) => `\`${p.name}\``).join(', ')}.`)]),
    ],
    foot: [
      'What to do before hands go to the line is common practice.',
      isWire(line.block) ? 'Look for broken wires, rust and pits, strands that stand out, flat and kinked places. Write what is seen as dated entries: kind (cut with its strands, broken-wires, rust, birdcage, kink, flattened), and where, from the inboard end. A broken strand takes it out of service, and so does anything of which you are not sure. A stretch that was looked at from all sides and shows nothing gets a tick under “seen”.' : 'Write what is seen as dated entries: kind (cut, abrasion, glaze, melt, pulled, flattened, kink, stain, brittle), how many strands or what share of their volume, and where, from the inboard end. A stretch that was looked at from all sides and shows nothing gets a tick under “seen”.',
      ...ownPractice(subject, { ofLine: true }),
      ...deference.slice(1),
    ],
  };
}

/** What is usual before hands go to a line that a winch can pull in. */
function before(line: AssessedLine, isOnDrum: boolean): PaperPart[] {
  const tension = line.facts.practice.value('spooling-tension');
  const out = [
    `Gloves on, no loose cuffs and no rings.${isWire(line.block) ? ' A broken wire goes through leather: look before you feel.' : ''}`,
    ...(isOnDrum
      ? [
          'The winch is off and its remote unplugged whenever hands are at the drum, the fairlead or the line within a step of them.',
          'Run the line out on the free spool, by hand and without load. With all of it out its fastening holds nothing: nobody pulls on it.',
          `Afterwards wind it on under load, layer by layer${isUnknown(tension) ? '' : `, under at least ${show(tension, { careful: 'up' })}`}; hands stay a good step off the fairlead while the drum turns.`,
        ]
      : ['Lay it out straight, without load, and turn it as you go: the worn side is often the lower one.']),
  ];
  return [heading('Before hands go to the line'), points(out)];
}

function lastInspection({ block }: AssessedLine, until: DayNumber): string {
  const days = block.statements.flatMap((s) => (s.definition.head === 'inspected' && s.day !== undefined && s.day <= until ? [s.day] : []));
  return days.length === 0 ? 'never, by the logbook' : printDay(Math.max(...days));
}

/** What is found already, without the damage: that stands in the table of the line. */
function foundAlready(subject: PaperSubject, line: AssessedLine): PaperPart[] {
  const damaged = line.block.statements.filter((s) => s.definition.head === 'damage');
  // What is known of a place stands in the table of places; what condemns it is said first.
  const findings = findingsOn(subject, [line.block]).filter(({ place, severity }) => severity === 'error' || !damaged.some((s) => s.place.start <= place.start && place.end <= s.place.end));
  return foundParts('What is found already', findings);
}

const endRow = (name: PaperText, piece: AssessedPiece, end: AssessedEnd, look: string): readonly PaperText[] => [name, `${endWords(end)}${isUnknown(end.strength) || isUnknown(piece.line.base) || piece.heats.some((heat) => isUnknown(heat.strength)) ? '' : `; breaks at ${show(end.strength)}`}`, look, ''];

/** The outer end, what the line runs through, and the inner end where no drum holds it. */
function endsPart(piece: AssessedPiece, winches: readonly AssessedWinch[]): PaperPart[] {
  const rows: (readonly PaperText[])[] = [
    endRow('outboard end', piece, piece.outboard, 'throat, tail end, stitching, thimble; hook: latch, cracks, pin'),
    ...piece.joints.map((joint) => endRow(joint.isInDoubt === true ? 'joint, if it lies here' : 'joint', piece, joint, 'both tails, no hard step, stitching')),
    ...winches.map((w): readonly PaperText[] => [`fairlead of \`${w.name}\``, w.fairlead === undefined ? 'not written' : `${w.fairlead.form}${w.fairlead.condition === undefined ? '' : `, ${w.fairlead.condition}`}`, 'scores, burrs, corrosion where the line touches; rollers turn', '']),
    ...(winches.length > 0 ? [] : [endRow('inboard end', piece, piece.inboard, 'throat, tail end, stitching, thimble')]),
  ];
  return [heading('From the outer end inward'), table(['what', 'as written', 'look for', 'found'], rows, { byHand: [3], widths: [0.16, 0.27, 0.3, 0.27] })];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

/** Stretches of one metre or three feet, the outermost first; undefined when the length is not known. */
function stretchesOf(piece: AssessedPiece): { rows: readonly Stretch[]; unit: string } | undefined {
  if (isUnknown(piece.length)) return undefined;
  const unit = writtenUnit(piece.length, 'length')?.system === 'us' ? 'ft' : 'm';
  const { factor } = unitNamed(unit)!;
  const step = unit === 'ft' ? 3 : 1;
  const whole = piece.length.amount.high / factor;
  const rows: Stretch[] = [];
  const show = (n: number): string => printNumber(n, 'nearest', 2).replace(/\.?0+$/, '');
  for (let from = 0; from < whole - 1e-9; from += step) {
    const to = Math.min(from + step, whole);
    rows.push({ from: from * factor, to: to * factor, label: `${show(to)}–${show(from)}` });
  }
  return { rows: rows.reverse(), unit };
}

/** The line, stretch by stretch from the outer end, with what is known already. */
function alongPart(piece: AssessedPiece): PaperPart[] {
  const found = stretchesOf(piece);
  const head = (unit: string): string[] => [unit === '' ? 'place' : unit, 'entered', 'found now', 'seen'];
  const layout = { byHand: [2, 3], widths: [0.17, 0.3, 0.4, 0.13], folded: true } as const;
  const lost = [...piece.damages, ...piece.heats].filter((d) => d.from === undefined || d.to === undefined);
  const parts: PaperPart[] = [heading(`\`${piece.name}\`, from the outer end inward: places from the inboard end`)];
  if (piece.incomplete !== undefined) parts.push(text(`The logbook may say more about \`${piece.name}\`: ${piece.incomplete.says}; ${piece.incomplete.help}.`));
  if (lost.length > 0) parts.push(text(`Entered without a place that can be told: ${lost.map((d) => damageText(d)).join('; ')}.`));
  if (found === undefined) {
    const why = isUnknown(piece.length) ? `${piece.length.unknown.says}; ${piece.length.unknown.help}` : '';
    parts.push(text(`How long \`${piece.name}\` is, is not known: ${why}. Write the places into the first column.`), table(head(''), Array.from({ length: openRows }, () => ['', '', '', '']), { ...layout, byHand: [0, 2, 3] }));
    return parts;
  }
  const known = (stretch: Stretch): string => counted([...piece.damages, ...piece.heats].filter((d) => d.from !== undefined && d.to !== undefined && touches(d, stretch)).map((d) => damageWords(d.fact))).join(', ');
  parts.push(table(head(found.unit), found.rows.map((stretch) => [stretch.label, known(stretch), '', '']), layout));
  return parts;
}

/** Damage at the border of two stretches is shown in the outer one alone, unless it reaches into both. */
function touches({ from, to }: Pick<AssessedDamage, 'from' | 'to'>, stretch: Stretch): boolean {
  const [low, high] = [Math.min(from!.low, to!.low), Math.max(from!.high, to!.high)];
  if (low === high) return (stretch.from <= low && low < stretch.to) || (low === 0 && stretch.from === 0);
  return low < stretch.to - 1e-9 && high > stretch.from + 1e-9;
}

/** What is said several times is said once, with how often. */
function counted(words: readonly string[]): string[] {
  const times = new Map<string, number>();
  for (const word of words) times.set(word, (times.get(word) ?? 0) + 1);
  return [...times].map(([word, n]) => (n === 1 ? word : `${n} times ${word}`));
}

const damageText = (damage: Pick<AssessedDamage, 'fact'>): string => `${printDay(damage.fact.day)} ${damageWords(damage.fact)}`;

function drumPart(winch: AssessedWinch): PaperPart[] {
  const outOf = winch.piece === undefined ? undefined : winch.piece.inboard;
  const sealing = statementOf(winch.block, 'sealing');
  const rows: (readonly PaperText[])[] = [
    ['inboard end', outOf === undefined ? 'not known' : endWords(outOf), 'lug, bolt, crushed fibre', ''],
    ['wraps kept', showValue(winch.keep), 'count them with all usable line out', ''],
    ['layers', `${showValue(asGiven(winch.outermostLayer))} on the drum, ${showValue(asGiven(winch.freeboard))} below the flange`, 'even layers, no wrap dived between others', ''],
    ['drum, brake, clutch', sealing === undefined ? 'sealing not written' : `sealing ${wordOf(sealing.values, 'class') ?? 'written'}`, 'flanges, heat marks, free spool, oil', ''],
  ];
  return [heading(`Drum of \`${winch.name}\``), table(['what', 'as written', 'look for', 'found'], rows, { byHand: [3], widths: [0.16, 0.27, 0.3, 0.27] })];
}
