import { show } from '../assess/show.ts';
import { assumedValues, allSources, numbersPutIn, showGiven } from '../mechanics/explain.ts';
import { isUnknown, type Cause, type Derivation, type Given, type Value } from '../mechanics/derivation.ts';
import { printSource, type Source } from '../trade/source.ts';
import { writtenSystem } from '../assess/show.ts';
import { placeText, type Viewing } from './viewing.ts';

export interface Table {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** What a hover says: the answer first, then how it came about, then on whose word. */
export interface Answer {
  /** Shown in bold. */
  readonly lead: string;
  /** Goes on in the same line. */
  readonly after?: string | undefined;
  readonly lines?: readonly string[];
  readonly table?: Table | undefined;
  /** Shown as formula and inputs, with assumptions and sources. */
  readonly derivation?: Derivation | undefined;
  /** Assumed values and sources of these are shown without their formula. */
  readonly restsOn?: readonly Value[];
  readonly sources?: readonly string[];
}

/** Rows of a table beyond this are counted, not shown. */
const mostRows = 7;
const mostSources = 2;
/** A hover longer than this is not read. */
const mostLines = 14;

const cell = (text: string): string => text.replaceAll('|', '\\|').replace(/[\r\n]+/g, ' ');

function printTable({ head, rows }: Table): string[] {
  const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  const shown = rows.length > mostRows ? rows.slice(0, mostRows - 1) : rows;
  const rest = rows.length - shown.length;
  return [row(head), `|${head.map(() => '---|').join('')}`, ...shown.map(row), ...(rest > 0 ? [row([`${rest} more`, ...head.slice(1).map(() => '')])] : [])];
}

function fromText(view: Viewing, given: Given): string {
  switch (given.origin.from) {
    case 'written':
      return placeText(view, given.origin.place);
    case 'assumed':
      return 'assumed';
    case 'derived':
      return `\`${given.origin.derivation.formula}\``;
    case 'constant':
      return 'by the method';
  }
}

function inputsTable(view: Viewing, derivation: Derivation): Table {
  const system = writtenSystem(derivation);
  return {
    head: ['', '', 'from'],
    rows: derivation.inputs.map(({ symbol, meaning, given }) => [`\`${symbol}\` ${meaning}`, showGiven(given, system), fromText(view, given)]),
  };
}

const derivationOf = (value: Value): Derivation | undefined => (!isUnknown(value) && value.origin.from === 'derived' ? value.origin.derivation : undefined);

function assumptions(values: readonly (Derivation | Given)[]): { assumed: string[]; sources: Source[] } {
  const assumed = new Set<string>();
  const sources = new Map<string, Source>();
  for (const value of values) {
    if ('calculation' in value) {
      for (const { input, source, means } of assumedValues(value)) {
        assumed.add(`${input.meaning} ${showGiven(input.given, writtenSystem(value))} (${means})`);
        sources.set(source.key, source);
      }
      for (const source of allSources(value)) sources.set(source.key, source);
    } else if (value.origin.from === 'assumed') {
      assumed.add(`${show(value)} (${value.origin.means})`);
      sources.set(value.origin.source.key, value.origin.source);
    } else if (value.origin.from === 'constant') sources.set(value.origin.source.key, value.origin.source);
  }
  return { assumed: [...assumed], sources: [...sources.values()] };
}

export function printAnswer(view: Viewing, answer: Answer): string {
  const blocks: string[] = [`**${answer.lead}**${answer.after === undefined ? '' : ` ${answer.after}`}`];
  for (const line of answer.lines ?? []) blocks.push(line);
  const { derivation } = answer;
  if (answer.table !== undefined && answer.table.rows.length > 0) blocks.push(printTable(answer.table).join('\n'));
  if (derivation !== undefined) {
    if (answer.table === undefined && derivation.inputs.length > 0) blocks.push(printTable(inputsTable(view, derivation)).join('\n'));
    blocks.push(`\`${numbersPutIn(derivation, { system: writtenSystem(derivation) })}\``);
  }
  const rests: (Derivation | Given)[] = [...(derivation === undefined ? [] : [derivation])];
  for (const value of answer.restsOn ?? []) if (!isUnknown(value)) rests.push(derivationOf(value) ?? value);
  const { assumed, sources } = assumptions(rests);
  if (assumed.length > 0) blocks.push(`Assumed: ${assumed.slice(0, 2).join('; ')}${assumed.length > 2 ? `; ${assumed.length - 2} more` : ''}`);
  const holds = [...(derivation?.assumptions ?? []), ...(derivation?.notes ?? [])];
  const lines = blocks.reduce((sum, block) => sum + block.split('\n').length, 0);
  if (holds.length > 0 && lines < mostLines - 1) blocks.push(`Holds when: ${holds.slice(0, 2).join('; ')}`);
  const named = [...(answer.sources ?? []), ...sources.map(printSource)];
  if (named.length > 0) blocks.push(`Source: ${named.slice(0, mostSources).join('; ')}${named.length > mostSources ? `; ${named.length - mostSources} more` : ''}`);
  return blocks.join('\n\n');
}

/** The answer for something that cannot be known yet: what is missing and how to make it known. */
export const notKnown = (what: string, cause: Cause): Answer => ({ lead: `${what} is not judged`, after: `because ${cause.says}. To have it judged, ${cause.help}.` });

/** The answer that is one value with its derivation. */
export function answerOf(value: Value, what: string, more: Omit<Answer, 'lead'> & { readonly lead?: string } = {}): Answer {
  if (isUnknown(value)) return notKnown(what, value.unknown);
  const derivation = derivationOf(value);
  return { lead: show(value), after: what, ...(derivation === undefined ? { restsOn: [value] } : { derivation }), ...more };
}
