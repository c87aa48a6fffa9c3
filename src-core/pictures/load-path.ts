import { isAbove, isBelow } from '../base/compare.ts';
import type { AssessedChain, AssessedLink } from '../assess/assess-chain.ts';
import { showMost } from '../assess/show.ts';
import { isUnknown, mostOf, type Given } from '../mechanics/derivation.ts';
import { printNumber } from '../units/print.ts';
import { endWords } from './end-words.ts';
import { causesOf, figuresOf, showForce, type Figures } from './figures.ts';
import { gearGlyph } from './gear-glyph.ts';
import { finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { filled, group, line, path, polyline, rect, text, unknownMark } from './shapes.ts';
import { coordinate as c, own, ownInside, type Part } from './svg.ts';

const spine = margin + 20;
const nameLeft = spine + 28;
const barLeft = 268;
const barRight = 560;
const wordsLeft = 576;
const rowHeight = 58;

/** What is known of a link against the load on it. */
type Standing = 'within' | 'over' | 'either' | 'not known';

function standingOf({ load, workingLimit, doubt }: AssessedLink): Standing {
  const most = mostOf(workingLimit);
  if (most === undefined || isUnknown(load)) return 'not known';
  if (isUnknown(workingLimit)) return isAbove(load.amount.high, most.amount.low) ? 'over' : 'not known';
  if (!isAbove(load.amount.high, workingLimit.amount.low)) return doubt === undefined ? 'within' : 'not known';
  return isBelow(workingLimit.amount.high, load.amount.low) ? 'over' : 'either';
}

const standingWords: Readonly<Record<Standing, string>> = { within: 'within the limit given', over: 'above the limit', either: 'may be above the limit', 'not known': 'not judged' };

/** As the file calls it, the user's name apart from our word for its end. */
const linkName = ({ link, name }: AssessedLink): string => (link.link === 'name' ? `${own(link.name)}${link.part === undefined ? '' : ` ${own(link.part.name)}`}` : own(name));

/** What a link is, in a few words. */
function kindWords(link: AssessedLink): string {
  switch (link.sort) {
    case 'line':
      return link.end === undefined ? 'line' : `line: ${endWords(link.end)}`;
    case 'gear':
      return (link.gear ?? 'gear').replace('-', ' ');
    case 'anchor':
      return 'anchor';
    case 'vehicle':
      return 'recovery point';
    default:
      return 'not known';
  }
}

/** Load on a limit in per cent, rounded to the careful side. */
const shareWords = (load: Given, limit: Given): string => `${printNumber((load.amount.high / limit.amount.low) * 100, 'up', 0)} % of it`;

/** Every link of a chain in its order, its limit as a bar against the load; the lowest known limit is framed. */
export function loadPath(chain: AssessedChain): Picture {
  const name = own(chain.name);
  const ids = new PictureIds();
  const links = chain.routes.flatMap((r) => r.links);
  const figures = figuresOf([], [chain.load, ...links.map((l) => l.workingLimit)]);
  const load = isUnknown(chain.load) ? undefined : chain.load;
  const limits = links.flatMap((l) => (isUnknown(l.workingLimit) ? [] : [l.workingLimit.amount.high]));
  // Far stronger links would press the others together: their bars are broken off.
  const most = Math.max(0, ...limits, load?.amount.high ?? 0);
  const least = Math.min(...limits, load?.amount.high ?? Infinity);
  const domain = (most === 0 ? 1 : Math.min(most, Math.max((load?.amount.high ?? 0) * 1.8, least * 3))) || most;
  const x = (force: number): number => barLeft + Math.min(1, force / domain) * (barRight - barLeft);
  const parts: Part[] = [];
  const legend: LegendEntry[] = [];
  let y = 30;
  const top = y - 8;
  const spans: [number, number][] = [];
  const rows: Part[] = [];
  let usesRange = false;
  let framed = false;
  for (const [i, route] of chain.routes.entries()) {
    if (chain.routes.length > 1) {
      const before = chain.routes[i - 1]?.links.at(-1)?.piece?.name;
      const along = before !== undefined && before === route.links[0]?.piece?.name ? `, from the other end of ${own(before)}` : '';
      rows.push(text(margin, y + 10, `part ${i + 1}${along}`, 't-quiet'));
      y += 18;
    }
    if (route.links.length > 0) spans.push([y + rowHeight / 2, y + rowHeight * (route.links.length - 0.5)]);
    for (const link of route.links) {
      const isWeakest: boolean = !framed && chain.weakestByLimit !== undefined && link.name === chain.weakestByLimit.name;
      framed ||= isWeakest;
      rows.push(...linkRow(link, y, x, domain, figures, ids, isWeakest));
      usesRange ||= !isUnknown(link.workingLimit) && link.workingLimit.amount.high > link.workingLimit.amount.low;
      y += rowHeight;
    }
  }
  const [frames, others] = [rows.filter((r) => r.attributes.class === 'panel'), rows.filter((r) => r.attributes.class !== 'panel')];
  parts.push(...frames);
  for (const [a, b] of spans) parts.push(line(spine, a, spine, b, 's-rope'));
  parts.push(...others);
  if (load !== undefined) {
    const at = x(load.amount.high);
    parts.push(path(`M${c(at)} ${top + 4}V${y}`, 's-ink'), path(polyline([[at - 6, top - 2], [at + 6, top - 2], [at, top + 7]], true), 'ink'));
    parts.push(text(at, top - 8, `load ${showForce(load, figures)}`, 't-strong', { anchor: at > barRight - 40 ? 'end' : 'middle' }));
  } else if (links.length > 0) parts.push(unknownMark(barLeft + 9, top), text(barLeft + 24, top + 5, 'load not known', 't-strong'));
  legend.push({ symbol: [rect(0, 3, 26, 10, 'rope')], says: 'working limit' });
  if (ids.used.has('short')) legend.push({ symbol: [filled(0, 3, 26, 10, ids.pattern('short')), rect(0, 3, 26, 10, 's-alarm')], says: 'working limit below the load' });
  if (framed) legend.push({ symbol: [rect(1, 2, 24, 12, 's-ink', 4)], says: 'lowest known limit' });
  if (usesRange) legend.push({ symbol: [filled(0, 3, 26, 10, ids.pattern('between')), rect(0, 3, 26, 10, 's-thin')], says: 'between its lowest and highest' });
  if (ids.used.has('unknown')) legend.push({ symbol: [filled(0, 3, 26, 10, ids.pattern('unknown')), rect(0, 3, 26, 10, 's-dots')], says: 'not known' });
  const lead = leadOf(chain, figures);
  return finish({
    ids, title: `Load path of ${name}`, lead,
    more: load === undefined ? undefined : `Loaded by ${ownInside(chain.loadSays)}, ${showForce(load, figures)} on every link${links.some((l) => l.turned) ? ' up to where the line turns, and twice that from there' : ''}${links.some((l) => l.parts !== undefined) ? '; what several parts pull at has the load of all' : ''}.`,
    body: [group(0, 0, parts)], height: y, legend,
    causes: causesOf(chain.load, ...links.map((l) => l.workingLimit)),
    description: `${lead} ${links.length} links.`,
    table: {
      head: ['link', 'what', 'working limit', 'load', 'breaking strength', 'judgement'],
      rows: links.map((l) => [linkName(l), ownInside(kindWords(l)), showForce(l.workingLimit, figures), showForce(l.load, figures), showForce(l.breaking, figures), standingWords[standingOf(l)]]),
    },
  });
}

function leadOf(chain: AssessedChain, figures: Figures): string {
  const weakest = chain.weakestByLimit;
  const open = chain.unjudged.length === 0 ? '' : ` ${chain.unjudged.length === 1 ? '1 link is' : `${chain.unjudged.length} links are`} not judged and may be lower.`;
  if (weakest === undefined) return `No link has a known limit.${open}`;
  const limit = showMost(weakest.workingLimit, { unit: figures.force });
  const standing = standingOf(weakest);
  const against = isUnknown(weakest.load) ? 'the load is not known' : `the load of ${showForce(weakest.load, figures)} is ${standing === 'within' || standing === 'not known' ? 'within it' : standing === 'either' ? 'above its lower end' : 'above it'}`;
  return `Lowest known limit: ${linkName(weakest)}, ${limit}; ${against}.${open}`;
}

function linkRow(link: AssessedLink, y: number, x: (force: number) => number, domain: number, figures: Figures, ids: PictureIds, isWeakest: boolean): Part[] {
  const middle = y + rowHeight / 2;
  const parts: Part[] = [];
  if (isWeakest) parts.push(rect(margin - 8, y + 2, rightEdge - margin + 16, rowHeight - 4, 'panel', 6), rect(margin - 8, y + 2, rightEdge - margin + 16, rowHeight - 4, 's-ink', 6));
  parts.push(...gearGlyph(link, spine, middle));
  const nameWidth = barLeft - nameLeft - 12;
  parts.push(text(nameLeft, middle - 4, linkName(link), 't-strong', { width: nameWidth }), text(nameLeft, middle + 13, ownInside(kindWords(link)), 't-quiet', { width: nameWidth }));
  const wordsWidth = rightEdge - wordsLeft;
  const barY = middle - 9;
  if (isUnknown(link.workingLimit)) {
    const { atMost } = link.workingLimit;
    const end = atMost === undefined ? barRight : x(atMost.amount.high);
    parts.push(filled(barLeft, barY, end - barLeft, 18, ids.pattern('unknown')), rect(barLeft, barY, end - barLeft, 18, 's-dots'));
    parts.push(text(wordsLeft, middle - 4, 'limit not known', 't-strong', { width: wordsWidth }));
    const most = atMost === undefined ? '' : showMost(link.workingLimit, { unit: figures.force });
    parts.push(text(wordsLeft, middle + 13, standingOf(link) === 'over' ? `✕ ${most}` : [most, 'not judged'].filter((t) => t !== '').join(', '), 't-quiet', { width: wordsWidth }));
    return parts;
  }
  const { load, workingLimit: limit } = link;
  const standing = standingOf(link);
  const [low, high] = [x(limit.amount.low), x(limit.amount.high)];
  const isOver = standing === 'over' || standing === 'either';
  parts.push(isOver ? rect(barLeft, barY, low - barLeft, 18, 'paper') : rect(barLeft, barY, low - barLeft, 18, 'rope'));
  if (isOver) parts.push(filled(barLeft, barY, low - barLeft, 18, ids.pattern('short')), rect(barLeft, barY, low - barLeft, 18, 's-alarm'));
  if (high > low) parts.push(filled(low, barY, high - low, 18, ids.pattern('between')), rect(low, barY, high - low, 18, 's-thin'));
  // A bar that goes on beyond the picture ends in a break.
  if (limit.amount.low > domain) parts.push(path(polyline([[barRight - 9, barY - 3], [barRight - 3, barY + 6], [barRight - 9, barY + 12], [barRight - 3, barY + 21], [barRight + 2, barY + 21], [barRight - 4, barY + 12], [barRight + 2, barY + 6], [barRight - 4, barY - 3]], true), 'paper'));
  const share = isUnknown(load) ? 'load not known' : isOver ? `load is ${shareWords(load, limit)}` : `load is ${shareWords(load, limit)}, ${standing === 'within' ? 'within' : 'not judged'}`;
  parts.push(text(wordsLeft, middle - 4, `limit ${showForce(limit, figures)}`, 't-strong', { width: wordsWidth }), text(wordsLeft, middle + 13, isOver ? `✕ ${share}` : share, 't-quiet', { width: wordsWidth }));
  return parts;
}
