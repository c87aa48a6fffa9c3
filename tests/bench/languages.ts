import { formatFile } from '../../src-core/syntax/format.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { kinds, records, type BenchRecord, type RecordOptions } from './records.ts';

export type SiteKind = 'number' | 'digit' | 'colon' | 'name' | 'word' | 'key';
export interface Site {
  readonly kind: SiteKind;
  readonly offset: number;
}

/** One language of the comparison. */
export interface Language {
  readonly extension: string;
  readonly id: string;
  /** A file of at most so many lines in which nothing is found. */
  text(lines: number, seed: number, options?: RecordOptions & { readonly use?: string }): string;
  /** A file of one anchor for others to name; absent where names end with their file. */
  readonly shared?: string;
  /** Where one character makes an error (`number`, `colon`, `name`) or none (`digit`), and where a hand would rest. */
  sites(text: string): readonly Site[];
  /** What is typed at a `colon` site. */
  readonly colon: { readonly remove: number; readonly insert: string };
}

/** Numbers whose highest value is passed by a 9 in front. */
const bounded = 'diameter|body|pin|strands';
/** Every twentieth gap is two spaces wide, so that a formatter has something to do. */
const gaps = (): (() => string) => {
  let n = 0;
  return () => (++n % 20 === 0 ? '  ' : ' ');
};

function find(text: string, kind: SiteKind, pattern: RegExp): Site[] {
  return [...text.matchAll(pattern)].map((m) => ({ kind, offset: m.index + m[1]!.length }));
}

/** What is asked for besides, so that nothing is found. */
const told: Readonly<Record<string, readonly string[]>> = { line: ['  outboard  eye thimble tube bury 72 d taper 24 d size 160 mm stitched'], shackle: ['  inside  80 mm'], strap: ['  marking  legible'] };

function rigBlock({ kind, name, fields }: BenchRecord): string[] {
  const value = (key: string): string => fields.find((f) => f.field.key === key)!.value;
  const row = (key: string): string => {
    const { field, value: v } = fields.find((f) => f.field.key === key)!;
    return `  ${key} ${v}${field.type === 'number' && field.unit !== '' ? ` ${field.unit}` : ''}`;
  };
  if (kind === 'chain') return [`chain ${name} {`, `  ${['line', 'shackle', 'strap', 'anchor'].map((k) => (k === 'line' ? `${value(k)} outboard` : value(k))).join(' -> ')}`, row('out'), '}'];
  const body = fields.filter((f) => f.field.type !== 'date' && f.field.key !== 'on').map((f) => (f.field.key === 'holding' ? `${row('holding')} "tested"` : f.field.key === 'fairlead' ? `${row('fairlead')} condition sound` : row(f.field.key)));
  body.push(...(told[kind] ?? []));
  const log = fields.flatMap((f) => (f.field.type === 'date' ? [`  ${f.value}  ${f.field.key}${f.field.key === 'spooled' ? '  tight' : ''}`] : []));
  return [`${kind} ${name}${kind === 'winch' ? ` on ${value('on')}` : ''} {`, ...body, ...log, '}'];
}

const costOf = (kind: string): number => (kind === 'chain' ? 4 : kinds[kind]!.length + (told[kind]?.length ?? 0) + (kind === 'winch' ? 1 : 2));

const rig: Language = {
  extension: '.rig',
  id: 'rig',
  shared: 'anchor shared-anchor {\n  kind     tree\n  holding  48 kN "tested"\n}\n',
  text(lines, seed, { use, ...options } = {}) {
    const gap = gaps();
    const head = use === undefined ? [] : [`use "${use}"`];
    const text = [...head, ...records(lines - head.length, costOf, seed, options).flatMap(rigBlock)].join('\n') + '\n';
    // Laid out but for as many gaps as in the other languages: columns would give the formatter every second line to change.
    return formatFile(text, topHeads).replace(/^ {2}[a-z-]+(?= )/gm, (word) => word + gap().slice(1));
  },
  sites: (text) => [
    ...find(text, 'number', new RegExp(`^(  (?:${bounded}) +)\\d`, 'gm')),
    ...find(text, 'digit', /^( {2}mass +\d{3})\d/gm),
    ...find(text, 'colon', /^( {2}(?:form|kind|material))/gm),
    ...find(text, 'name', /^( {2}carries +)/gm),
    ...find(text, 'word', /^( {2}(?:form|kind|material) +\w)/gm),
    ...find(text, 'key', /^( {2}\w)\w+ /gm),
  ],
  colon: { remove: 0, insert: ':' },
};

const sections = (made: readonly BenchRecord[]): [string, BenchRecord[]][] => Object.keys(kinds).map((kind): [string, BenchRecord[]] => [kind, made.filter((r) => r.kind === kind)]).filter(([, list]) => list.length > 0);
const literal = (field: { type: string }, value: string, quoted: boolean): string => (field.type === 'number' || !quoted ? value : `"${value}"`);

const json: Language = {
  extension: '.rig.json',
  id: 'json',
  text(lines, seed, options) {
    const gap = gaps();
    const made = records(lines - 2 - 2 * Object.keys(kinds).length, (kind) => kinds[kind]!.length + 2, seed, options);
    const block = (r: BenchRecord): string => `    "${r.name}": {\n${r.fields.map((f) => `      "${f.field.key}":${gap()}${literal(f.field, f.value, true)}`).join(',\n')}\n    }`;
    return `{\n${sections(made).map(([kind, list]) => `  "${kind}": {\n${list.map(block).join(',\n')}\n  }`).join(',\n')}\n}\n`;
  },
  sites: (text) => [
    ...find(text, 'number', new RegExp(`^( {6}"(?:${bounded})": +)\\d`, 'gm')),
    ...find(text, 'digit', /^( {6}"mass": +\d{3})\d/gm),
    ...find(text, 'colon', /^( {6}"(?:form|kind|material)"):/gm),
    ...find(text, 'word', /^( {6}"(?:form|kind|material)": +")\w/gm),
    ...find(text, 'key', /^( {6}"\w)\w+":/gm),
  ],
  colon: { remove: 1, insert: '' },
};

const yaml: Language = {
  extension: '.rig.yaml',
  id: 'yaml',
  text(lines, seed, options) {
    const gap = gaps();
    const made = records(lines - Object.keys(kinds).length, (kind) => kinds[kind]!.length + 1, seed, options);
    return sections(made).map(([kind, list]) => `${kind}:\n${list.map((r) => `  ${r.name}:\n${r.fields.map((f) => `    ${f.field.key}:${gap()}${f.field.type === 'date' ? `"${f.value}"` : f.value}\n`).join('')}`).join('')}`).join('');
  },
  sites: (text) => [
    ...find(text, 'number', new RegExp(`^( {4}(?:${bounded}): +)\\d`, 'gm')),
    ...find(text, 'digit', /^( {4}mass: +\d{3})\d/gm),
    ...find(text, 'colon', /^( {4}(?:form|kind|material)):/gm),
    ...find(text, 'word', /^( {4}(?:form|kind|material): +)\w/gm),
    ...find(text, 'key', /^( {4}\w)\w+:/gm),
  ],
  colon: { remove: 1, insert: '' },
};

const langium: Language = {
  extension: '.riglang',
  id: 'riglang',
  shared: 'anchor shared-anchor {\n  kind: tree\n  holding: 48 kN\n}\n',
  text(lines, seed, options) {
    const gap = gaps();
    const block = (r: BenchRecord): string[] => [`${r.kind} ${r.name} {`, ...r.fields.map(({ field, value }) => `  ${field.key}:${gap()}${field.type === 'date' ? `"${value}"` : value}${field.type === 'number' && field.unit !== '' ? ` ${field.unit}` : ''}`), '}'];
    return records(lines, (kind) => kinds[kind]!.length + 2, seed, options).flatMap(block).join('\n') + '\n';
  },
  sites: (text) => [
    ...find(text, 'number', new RegExp(`^( {2}(?:${bounded}): +)\\d`, 'gm')),
    ...find(text, 'digit', /^( {2}mass: +\d{3})\d/gm),
    ...find(text, 'colon', /^( {2}(?:form|kind|material)):/gm),
    ...find(text, 'name', /^( {2}carries: +)/gm),
    ...find(text, 'word', /^( {2}(?:form|kind|material): +)\w/gm),
    ...find(text, 'key', /^( {2}(?:carries|on): +\w)/gm),
  ],
  colon: { remove: 1, insert: '' },
};

export const languages = { rig, json, yaml, langium };

/** The same limits and words for the servers that judge by a schema. */
export function jsonSchema(): object {
  const definitions = Object.entries(kinds).map(([kind, fields]) => [
    kind,
    {
      type: 'object', description: `A ${kind}`, additionalProperties: false, required: fields.map((f) => f.key),
      properties: Object.fromEntries(fields.map((f) => [f.key,
        f.type === 'number' ? { type: 'number', minimum: f.least, maximum: f.most, description: `${f.key} of the ${kind}, in ${f.unit}` }
        : f.type === 'word' ? { enum: f.words, description: `${f.key} of the ${kind}` }
        : f.type === 'date' ? { type: 'string', pattern: '^\\d{4}-\\d{2}-\\d{2}$', description: `day on which the ${kind} was ${f.key}` }
        : { type: 'string', pattern: '^[a-z0-9-]+$', description: `name of a ${f.of}` }])),
    },
  ]);
  const properties = Object.keys(kinds).map((kind) => [kind, { type: 'object', description: `Every ${kind}`, additionalProperties: { $ref: `#/definitions/${kind}` } }]);
  return { $schema: 'http://json-schema.org/draft-07/schema#', type: 'object', additionalProperties: false, properties: Object.fromEntries(properties), definitions: Object.fromEntries(definitions) };
}

const upper = (word: string): string => word.replace(/(?:^|-)(\w)/g, (_, c: string) => c.toUpperCase());

/** The grammar of the language that the Langium server reads. */
export function langiumGrammar(): string {
  const rules = Object.entries(kinds).map(([kind, fields]) => {
    const part = (f: (typeof fields)[number]): string => {
      const value = f.type === 'number' ? `=NUM${f.unit === '' ? '' : ` '${f.unit}'`}` : f.type === 'word' ? `=(${f.words.map((w) => `'${w}'`).join(' | ')})` : f.type === 'date' ? '=STRING' : `=[${upper(f.of)}:ID]`;
      return `'${f.key}' ':' ${f.key}${value}`;
    };
    return `${upper(kind)}: '${kind}' name=ID '{' ${fields.map(part).join(' ')} '}';`;
  });
  return `grammar Riglang
entry Model: blocks+=Block*;
Block: ${Object.keys(kinds).map(upper).join(' | ')};
${rules.join('\n')}
terminal NUM returns number: /[0-9]+(\\.[0-9]+)?/;
terminal STRING: /"[^"]*"/;
terminal ID: /[_a-zA-Z][\\w-]*/;
hidden terminal WS: /\\s+/;
hidden terminal COMMENT: /#[^\\n\\r]*/;
`;
}

/** Limits of numbers by the grammar's types. */
export const langiumLimits = (): Record<string, [string, number, number][]> =>
  Object.fromEntries(Object.entries(kinds).map(([kind, fields]) => [upper(kind), fields.flatMap((f): [string, number, number][] => (f.type === 'number' ? [[f.key, f.least, f.most]] : []))]));
