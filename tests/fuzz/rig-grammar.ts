import { endForms, ends } from '../../src-core/vocabulary/blocks/line.ts';
import type { BlockDefinition, Measure, Part, StatementDefinition } from '../../src-core/vocabulary/shape.ts';
import { vocabulary } from '../../src-core/vocabulary/vocabulary.ts';

type Random = () => number;

const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const from = (random: Random, low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
/** Few names, so that what is used is often declared, and declared twice. */
const names = ['main', 'tail', 'spare', 'bow-22', 'larch', 'plover', 'winch-1', 'reach', 'out', 'fix', 'bow', 'stern', 'snatch', 'ring-a'];
const units: Readonly<Record<string, readonly string[]>> = {
  'mm': ['mm', 'cm', 'in', 'm'], 'm': ['m', 'ft', 'cm'], 'kN': ['kN', 'lbf', 't', 'kgf', 'kg', 'lb'], 't': ['t', 'kN', 'lb', 'kg'], 'kg': ['kg', 't', 'lb'], 'd': ['d', 'mm', 'fids', 'cm'], 'deg': ['deg', '°', '%'],
};

function quantity(random: Random, measure: Measure): string {
  const [, number = '1', unit = ''] = /^([\d.,]+)\s*(.*)$/.exec(measure.example) ?? [];
  const value = Number(number.replaceAll(',', '')) * oneOf(random, [1, 1, 1, 1, 0.5, 0.9, 1.1, 2, 0, 0.001, 1000]);
  const written = oneOf(random, [String(value), String(Math.round(value)), value.toFixed(2), value.toLocaleString('en'), '3/8', '0.0000001']);
  return `${written} ${random() < 0.9 ? unit : oneOf(random, units[unit] ?? [unit, '', 'xyz'])}`.trim();
}

const station = (random: Random, stretch: boolean): string => {
  const end = oneOf(random, Object.keys(ends));
  const at = (): string => `${(random() * 35).toFixed(1)} m`;
  return stretch && random() < 0.5 ? `from ${at()} to ${at()} from ${end}` : `at ${at()} from ${end}`;
};

const link = (random: Random): string => oneOf(random, [() => oneOf(random, names), () => `${oneOf(random, names)} ${oneOf(random, ['outboard', 'inboard', 'bow', 'stern'])}`, () => `shackle ${oneOf(random, ['', 'bow ', 'dee '])}${oneOf(random, ['19 mm', '3/4 in', '22 mm AS-2741'])}`])();

function value(random: Random, part: Part): string {
  switch (part.part) {
    case 'new-name':
    case 'name':
      return oneOf(random, names);
    case 'quantity':
      return quantity(random, part.measure);
    case 'count':
      return `${from(random, part.min, Math.min(part.max, part.min + 40))}${part.noun === undefined ? '' : ` ${part.noun[0]}`}`;
    case 'choice':
      return oneOf(random, Object.keys(part.of));
    case 'text':
      return oneOf(random, ['"seen"', '"ü ✓ → 線"', '""', '"`a` <b> & c"']);
    case 'date':
      return oneOf(random, ['2026-01-31', '2024-02-29', '2026-02-30']);
    case 'marking':
      return part.example;
    case 'flag':
      return part.word;
    case 'clause':
      return `${part.word} ${values(random, part.parts)}`;
    case 'station':
      return station(random, part.stretch);
    case 'route':
      return Array.from({ length: from(random, 2, 5) }, () => link(random)).join(' -> ');
  }
}

/** Required parts mostly, optional ones now and then, now and then out of order. */
function values(random: Random, parts: readonly Part[]): string {
  const chosen = parts.filter((part) => random() < ('optional' in part && part.optional === true ? 0.35 : 0.97)).map((part) => value(random, part));
  if (random() < 0.03) chosen.reverse();
  return chosen.join(' ');
}

const statement = (random: Random, definition: StatementDefinition): string => (random() < 0.25 ? definition.example : `${definition.head} ${values(random, definition.parts)}`.trim());

function entry(random: Random, definition: StatementDefinition): string {
  if (random() < 0.2) return definition.example;
  const day = `202${from(random, 3, 7)}-${String(from(random, 1, 12)).padStart(2, '0')}-${String(from(random, 1, 28)).padStart(2, '0')}`;
  return `${day}  ${definition.head} ${values(random, definition.parts)}`;
}

function block(random: Random, definition: BlockDefinition): string {
  if (random() < 0.1) return definition.example;
  const lines = [`${definition.head} ${values(random, definition.header)} {`];
  for (const s of definition.statements) {
    for (let times = random() < 0.7 ? 1 : s.many === true ? from(random, 0, 3) : 0; times > 0; times--) lines.push(`  ${statement(random, s)}`);
  }
  if (definition.headless !== undefined) for (let i = from(random, 0, 3); i > 0; i--) lines.push(`  ${values(random, definition.headless.parts)}`);
  for (let i = definition.entries === undefined ? 0 : from(random, 0, 8); i > 0; i--) lines.push(`  ${entry(random, oneOf(random, definition.entries!))}`);
  if (random() < 0.1) lines.splice(from(random, 1, lines.length), 0, `  # allow ${oneOf(random, ['bury-too-short: tried', 'missing-fact: known', 'taper-missing', 'no-such-rule: x'])}`);
  return [...lines, '}', ''].join('\n');
}

/** What lines and winches are mostly made of, so that the mechanics have something to work on. */
const sound = (random: Random): string => `line ${oneOf(random, names)} {
  material  ${oneOf(random, ['HMPE', 'HMPE', 'nylon', 'wire', 'polyester'])}
  strands   12
  diameter  ${from(random, 5, 14)} mm
  length    ${from(random, 5, 60)} m
  breaking  ${from(random, 20, 140)} kN
  inboard   ${oneOf(random, ['lug', 'bare', 'eye bury 40 d taper 10 d'])}
  outboard  ${oneOf(random, Object.keys(endForms))} thimble tube bury ${from(random, 5, 100)} d taper ${from(random, 0, 60)} d
  2025-04-02  fitted
  ${station(random, false).replace('at', `2026-06-21  damage cut ${from(random, 1, 12)} strands at`)}
  2026-06-22  cut ${station(random, false)} keep ${oneOf(random, names)}
}
`;

/** A rig file that follows the vocabulary, for the most part. */
export function grammarText(random: Random): string {
  const parts: string[] = [];
  for (let i = from(random, 1, 4); i > 0; i--) {
    const kind = random();
    if (kind < 0.05) parts.push(`use "${oneOf(random, ['other.rig', 'x.rig', '../x.rig', 'a/../other.rig', ''])}"\n`);
    else if (kind < 0.3) parts.push(sound(random));
    else parts.push(block(random, oneOf(random, vocabulary)));
  }
  return parts.join('\n');
}
