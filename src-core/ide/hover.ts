import type { Span } from '../base/span.ts';
import { nameOf, textOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import type { Project } from '../project.ts';
import type { DayNumber } from '../model/day.ts';
import { printDay } from '../model/day.ts';
import { drumSection } from '../pictures/drum-section.ts';
import { lineMap } from '../pictures/line-map.ts';
import type { Picture } from '../pictures/picture.ts';
import { ruleNamed } from '../rules/all.ts';
import { kinds } from '../units/dimension.ts';
import { unitNamed } from '../units/unit-table.ts';
import { resolveUse } from '../use-path.ts';
import { blockNamed, useStatement } from '../vocabulary/vocabulary.ts';
import { materials } from '../vocabulary/blocks/line.ts';
import { printAnswer, type Answer } from './answer.ts';
import { hoverChainName, hoverLink, linkAt } from './hover-chain.ts';
import { hoverGear } from './hover-gear.ts';
import { hoverLine } from './hover-line.ts';
import { hoverDeclared } from './hover-name.ts';
import { hoverMaterial, hoverPractice, hoverRepair, hoverVehicle } from './hover-plan.ts';
import { hoverAnchor, hoverPull } from './hover-pull.ts';
import { hoverWinch } from './hover-winch.ts';
import { measureText } from './measure-text.ts';
import { declarationOf, mentionAt } from './mentions.ts';
import { spanIn, spotAt, valueAt, type Spot, type ValueAt } from './spot.ts';
import { assessedOf, viewing, type Viewing } from './viewing.ts';
import { blockText, statementText, wordMeaning } from './vocabulary-text.ts';

export interface Hover {
  readonly span: Span;
  readonly markdown: string;
  /** Where a drawing says more than words, for editors that show one. */
  readonly picture?: () => Picture;
}

/** What is known about the thing at an offset: the answer first, how it came about, on whose word. */
export function hoverAt(project: Project, path: string, offset: number, day: DayNumber): Hover | undefined {
  const view = viewing(project, path, day);
  const spot = view === undefined ? undefined : spotAt(view.file, offset);
  if (view === undefined || spot === undefined) return undefined;
  if (spot.comment !== undefined) return hoverAllowance(spot);
  const { token } = spot;
  if (token === undefined) return undefined;
  const markdown = markdownAt(view, spot);
  if (markdown === undefined) return undefined;
  const value = spot.statement === undefined ? undefined : valueAt(spot.statement.values, spot.at);
  const whole = value?.value.type === 'quantity' || value?.value.type === 'count' ? value.value.place : token;
  const picture = pictureAt(view, spot);
  return { span: spanIn(spot, whole), markdown, ...(picture === undefined ? {} : { picture }) };
}

/** The drum at the winch's name and at what it carries, the line map at the line's own name. */
function pictureAt(view: Viewing, { block, statement, token, at }: Spot): (() => Picture) | undefined {
  const onName = block?.name !== undefined && block.namePlace.start <= at && at <= block.namePlace.end;
  if (block === undefined || !(onName || (statement?.definition.head === 'carries' && token?.text === 'carries'))) return undefined;
  const assessed = assessedOf(view, block);
  if (assessed.kind === 'winch') return () => drumSection(assessed);
  return assessed.kind === 'line' && onName ? () => lineMap(assessed) : undefined;
}

function hoverAllowance(spot: Spot): Hover | undefined {
  const allowance = spot.bound.allowances.find((a) => a.place.start <= spot.at && spot.at <= a.place.end);
  const rule = allowance === undefined ? undefined : ruleNamed(allowance.code);
  if (allowance === undefined || rule === undefined) return undefined;
  return { span: spanIn(spot, allowance.place), markdown: `**${rule.name}**: ${rule.summary}\n\n${rule.why}\n\nSource: ${rule.source}` };
}

function markdownAt(view: Viewing, spot: Spot): string | undefined {
  const { block, statement, raw, token } = spot;
  if (raw === undefined || token === undefined) return undefined;
  if (raw.tokens[0]?.text === 'use' && block === undefined) return token.kind === 'string' ? hoverUsed(view, token.text.slice(1, -1)) : statementText(useStatement);
  if (block === undefined) return undefined;
  if (spot.at <= block.headPlace.end) return hoverHeader(view, spot, block);
  if (statement === undefined) return undefined;
  const { definition } = statement;
  const onHead = token.text === definition.head && token === raw.tokens[statement.day === undefined ? 0 : 1];
  const onDate = statement.day !== undefined && token === raw.tokens[0];
  const found = onHead || onDate ? undefined : valueAt(statement.values, spot.at);
  const answer = answerFor(view, spot, block, statement, found);
  const parts: string[] = answer === undefined ? [] : [printAnswer(view, answer)];
  if (onHead) parts.push(answer === undefined ? statementText(definition) : `*${definition.head}: ${definition.summary}*`);
  else if (!onDate && token.kind === 'word') {
    const meaning = wordMeaning(definition.parts, token.text) ?? stationWords[token.text];
    const unit = found?.value.type === 'quantity' || found?.value.type === 'station' ? unitNamed(token.text) : undefined;
    if (unit !== undefined) parts.push(`\`${unit.symbol}\`: ${unit.meaning}`);
    else if (meaning !== undefined && !(answer !== undefined && found?.key === 'material')) parts.push(`\`${token.text}\`: ${meaning}`);
  }
  return parts.length === 0 ? undefined : parts.join('\n\n');
}

const stationWords: Readonly<Record<string, string>> = {
  at: 'the distance along the line, from the end that is named',
  from: 'which end the distance is counted from, or where a stretch begins',
  to: 'where a stretch ends',
  inboard: 'the end at the drum',
  outboard: 'the outer end, away from the drum',
};

/** The repair whose pieces are meant where the reader stands. */
function repairHere(view: Viewing, block: BoundBlock): BoundBlock | undefined {
  if (block.definition.head === 'repair') return block;
  const named = nameOf(block.header, 'repair');
  return named === undefined ? undefined : view.assessing.reader.find(named.name, ['repair'])?.block;
}

function answerFor(view: Viewing, spot: Spot, block: BoundBlock, statement: BoundStatement, found: ValueAt | undefined): Answer | undefined {
  if (found?.value.type === 'route') {
    const chain = assessedOf(view, block);
    const link = chain.kind === 'chain' ? linkAt(chain, spot.chunk, spot.at) : undefined;
    return chain.kind === 'chain' && link !== undefined ? hoverLink(chain, link) : undefined;
  }
  const mention = mentionAt(spot.bound, spot.at);
  if (found !== undefined && mention !== undefined && (found.value.type === 'name' || found.value.type === 'new-name')) {
    const declared = declarationOf(view, mention);
    if (declared !== undefined) return hoverDeclared(view, declared, repairHere(view, block));
  }
  if (found?.value.type === 'text') return undefined;
  const own = ownAnswer(view, block, statement, found?.key);
  if (own !== undefined) return own;
  if (found?.value.type === 'word' && found.key === 'material' && Object.hasOwn(materials, found.value.word)) return hoverMaterial(view, found.value.word, (materials as Record<string, string>)[found.value.word]!);
  const quantity = found?.value.type === 'quantity' ? found.value : [...statement.values.all()].find((v) => v.type === 'quantity');
  if (quantity?.type === 'quantity' && (found === undefined || found.value === quantity)) {
    const text = measureText(quantity);
    // Of loads there are several sorts, which are not the same thing; a length is a length.
    const sort = kinds[quantity.kind].dimension === 'force' ? `· ${quantity.kind}` : '';
    return { lead: text.lead, after: [text.also === undefined ? '' : `= ${text.also}`, sort].filter((t) => t !== '').join(' ') || undefined };
  }
  if (found?.value.type === 'count') return { lead: String(found.value.count), after: `· ${statement.definition.summary}` };
  return undefined;
}

function ownAnswer(view: Viewing, block: BoundBlock, statement: BoundStatement, key: string | undefined): Answer | undefined {
  switch (block.definition.head) {
    case 'line':
      return hoverLine(view, block, statement, key);
    case 'winch':
      return hoverWinch(view, block, statement);
    case 'repair':
      return hoverRepair(view, block, statement, key);
    case 'chain': {
      const chain = assessedOf(view, block);
      return chain.kind === 'chain' ? hoverChainName(chain) : undefined;
    }
    case 'vehicle':
      return hoverVehicle(statement);
    case 'practice':
      return hoverPractice(statement);
    case 'pull':
      return hoverPull(view, block, statement);
    case 'anchor':
      return hoverAnchor(view, block, statement);
    default:
      return hoverGear(view, block, statement);
  }
}

function hoverHeader(view: Viewing, spot: Spot, block: BoundBlock): string | undefined {
  const token = spot.token!;
  const onHead = token === spot.raw!.tokens[0];
  if (onHead) return blockText(block.definition);
  const mention = mentionAt(spot.bound, spot.at);
  if (mention !== undefined) {
    const declared = declarationOf(view, mention);
    if (declared === undefined) return undefined;
    const label = textOf(declared.block.header, 'label');
    const text = printAnswer(view, hoverDeclared(view, declared, repairHere(view, block)));
    return label === undefined ? text : `${text}\n\n${label}`;
  }
  const meaning = token.kind === 'word' ? wordMeaning(block.definition.header, token.text) : undefined;
  return meaning === undefined ? undefined : `\`${token.text}\`: ${meaning}`;
}

/** What a used file brings in. */
function hoverUsed(view: Viewing, written: string): string {
  const path = resolveUse(view.path, written);
  const file = path === undefined ? undefined : view.project.file(path);
  if (path === undefined) return `**\`${written}\` is no path inside the workspace folder**: write it from this file's folder, with \`/\` between names`;
  if (file === undefined) return `**\`${path}\` is not there**`;
  const blocks = file.bound.flatMap((c) => c.blocks);
  const names = blocks.map((b) => `${b.definition.head}${b.name === undefined ? '' : ` \`${b.name}\``}`);
  const shown = names.slice(0, 8).join(', ') + (names.length > 8 ? `, and ${names.length - 8} more` : '');
  return `**${path}** brings in ${shown === '' ? 'no names' : shown}, judged on ${printDay(view.day)}`;
}

/** The documentation of a block head, for places where no block stands yet. */
export const headText = (head: string): string | undefined => {
  const definition = blockNamed(head);
  return definition === undefined ? undefined : blockText(definition);
};
