import { isAbove } from '../base/compare.ts';
import type { AssessedPull, Loaded } from '../assess/assess-pull.ts';
import { showMost } from '../assess/show.ts';
import { asGiven, isUnknown, type Cause, type Value } from '../mechanics/derivation.ts';
import { causesOf, figuresOf, showForce, showLength, type Figures } from './figures.ts';
import { keepOut } from './keep-out.ts';
import { finish, margin, PictureIds, rightEdge, type LegendEntry, type Picture } from './picture.ts';
import { anchorGlyph, bareLoadGlyph, blockGlyph, endGlyphInPlan, forkGlyph, vehicleGlyph, vehicleHalf, winchGlyph } from './plan-glyphs.ts';
import { planLayout, type PlanLayout, type Point } from './plan-layout.ts';
import { isOnWinch, planScene, standingOf, type PlanFastening, type PlanScene, type Standing } from './plan-scene.ts';
import { boxAround, LabelPlacer, type Label, type Side } from './place-labels.ts';
import { roundStep } from './scale.ts';
import { group, line, measureAcross, text, textSizes, type TextClass } from './shapes.ts';
import { own, ownInside, type Part } from './svg.ts';
import { fitText, wrapText } from './text-width.ts';

const longestName = 230;

/** Against its limit, in words that are short enough to stand beside the thing. */
function limitWords(loaded: Loaded, pull: AssessedPull, figures: Figures): string {
  const holds = loaded.sort === 'anchor' ? 'what it holds' : 'its limit';
  const standing: Record<Standing, string> = {
    within: `within ${holds}, ${showForce(loaded.limit, figures)}`,
    over: `✕ above ${holds}, ${showMost(loaded.limit, { unit: figures.force })}`,
    either: `✕ may be above ${holds}, ${showForce(loaded.limit, figures)}`,
    'not known': isUnknown(loaded.limit) ? `${holds} is ${showForce(loaded.limit, figures)}` : `${holds} is ${showForce(loaded.limit, figures)}, not judged`,
  };
  return standing[standingOf(loaded, pull)];
}

/** A load, which is only the least of it while a part of the resistance is not known. */
const loadWords = (load: Value, { incomplete }: AssessedPull, figures: Figures): string => `${incomplete === undefined || isUnknown(load) ? '' : 'at least '}${showForce(load, figures)}`;

/** A name that may be a sentence of ours with names in it. */
const nameText = (name: string): string => (name.includes('`') ? ownInside(name) : own(name));

interface Drawing {
  readonly pull: AssessedPull;
  readonly scene: PlanScene;
  readonly layout: PlanLayout;
  readonly figures: Figures;
  readonly placer: LabelPlacer;
  /** Words that found no room beside what they name. */
  readonly left: Label[];
}

/** A pull from above: what is pulled, what holds, the line with its tension in every part, and the area to keep out of. */
export function pullPlan(pull: AssessedPull): Picture {
  const ids = new PictureIds();
  const scene = planScene(pull);
  const layout = planLayout(scene);
  const figures = figuresOf([pull.reach.reach, pull.people ?? pull.reach.reach, ...(pull.line === undefined ? [] : [pull.line.length])], [pull.available, ...pull.loaded.map((l) => l.limit)]);
  const drawing: Drawing = { pull, scene, layout: centred(layout), figures, placer: new LabelPlacer(margin, rightEdge), left: [] };
  const { lines, things } = drawn(drawing);
  labels(drawing);
  const { placer } = drawing;
  const head = 26;
  const [top, bottom] = [Math.floor(placer.top) - 8, Math.ceil(placer.bottom) + 10];
  const body: Part[] = [text(margin, 12, layout.perMetre === undefined ? 'Plan, not to scale' : 'Plan, to scale', 't-strong'), group(0, head - top, [...lines, ...things, ...placer.parts])];
  let y = head + bottom - top;
  if (layout.perMetre !== undefined) {
    body.push(...scaleBar(layout.perMetre, y));
    y += 26;
  }
  for (const label of drawing.left.slice(0, 8)) body.push(text(margin, (y += 17), fitText(label.lines.map((l) => l.says).join(' · '), rightEdge - margin, textSizes['t-quiet']), 't-quiet'));
  y += 14;
  const area = keepOut(pull, scene, figures, ids, margin, rightEdge);
  body.push(line(margin, y, rightEdge, y, 's-grid'), group(0, y + 10, area.parts));
  y += 10 + area.height;
  const lead = leadOf(pull, figures);
  return finish({
    ids, title: `Pull ${own(pull.name)}, from above`, lead, more: moreOf(pull, figures), body, height: y, legend: legendOf(scene), causes: causesIn(pull),
    notes: [
      layout.perMetre === undefined ? 'Where things stand is not written, so the plan shows only what leads to what: `stands` gives the places. The load is to go to the right.' : 'Places are as written; vehicles, blocks and gear are drawn larger than they are. The load is to go to the right.',
      ...(scene.loose.length === 0 ? [] : [`Not drawn, because no anchor and no vehicle is written behind it: ${gearNames(scene.loose).join(', ')}.`]),
      ...(scene.isPlaced || isUnknown(pull.reach.reach) ? [] : ['The keep-out area is drawn over the reach as if all of the line lay straight.']),
    ],
    description: `${lead} ${area.says.join(' ')}`,
    table: {
      head: ['what', 'load', 'limit', 'judgement'],
      rows: [
        ...scene.nodes.slice(1).map((_, i) => [`part ${i + 1} of the line, ${partName(drawing, i)}`, tensionWords(pull, i, figures), '', '']),
        ...pull.loaded.map((l) => [`${nameText(l.name)} (${sortWords[l.sort]})`, loadWords(l.load, pull, figures), showForce(l.limit, figures), standingWords[standingOf(l, pull)]]),
        ['keep-out distance', area.distance, '', pull.people === undefined ? 'distance of people not written' : `people keep ${showLength(pull.people, figures)} off`],
      ],
    },
  });
}

const sortWords: Readonly<Record<Loaded['sort'], string>> = { line: 'line', link: 'gear', block: 'block', point: 'recovery point', anchor: 'anchor' };
const standingWords: Readonly<Record<Standing, string>> = { within: 'within the limit given', over: 'above the limit', either: 'may be above the limit', 'not known': 'not judged' };

const tensionWords = (pull: AssessedPull, i: number, figures: Figures): string => loadWords(pull.tensions[i] ?? pull.tension, pull, figures);

function partName({ scene }: Drawing, i: number): string {
  const name = (k: number): string => own(scene.nodes[k]!.name);
  return `${name(i)} to ${name(i + 1)}`;
}

/** Moved so that the drawing stands in the middle of the picture. */
function centred(layout: PlanLayout): PlanLayout {
  const xs = [...layout.nodes, ...layout.bodies].map((p) => p.x);
  const by = (margin + rightEdge) / 2 - (Math.min(...xs) + Math.max(...xs)) / 2;
  const moved = <P extends Point>(points: readonly P[]): P[] => points.map((p) => ({ ...p, x: p.x + by }));
  return { ...layout, nodes: moved(layout.nodes), bodies: moved(layout.bodies), forks: moved(layout.forks) };
}

function drawn({ scene, layout, placer }: Drawing): { lines: Part[]; things: Part[] } {
  const lines: Part[] = [];
  const things: Part[] = [];
  const fastened = (a: Point, b: Point): void => {
    lines.push(line(a.x, a.y, b.x, b.y, 's-dashed'));
    placer.cross({ x1: a.x, y1: a.y, x2: b.x, y2: b.y });
  };
  for (const { node, fork, body } of scene.fastenings) fastened(fork === undefined ? layout.nodes[node]! : layout.forks[fork]!, layout.bodies[body]!);
  scene.forks.forEach(({ node, before }, i) => fastened(before === undefined ? layout.nodes[node]! : layout.forks[before]!, layout.forks[i]!));
  for (let i = 1; i < layout.nodes.length; i++) {
    const [a, b] = [layout.nodes[i - 1]!, layout.nodes[i]!];
    lines.push(line(a.x, a.y, b.x, b.y, 's-rope'));
    placer.cross({ x1: a.x, y1: a.y, x2: b.x, y2: b.y });
  }
  scene.bodies.forEach((body, i) => {
    const at = layout.bodies[i]!;
    const isVehicle = body.form === 'vehicle';
    things.push(isVehicle ? vehicleGlyph(at.x, at.y, at.turn, body.isLoad) : body.form === 'load' ? bareLoadGlyph(at.x, at.y) : anchorGlyph(body.form, at.x, at.y, at.turn));
    const half = halfOf(body.form, at.turn);
    placer.take(boxAround(at.x, at.y, half.x, half.y));
  });
  for (const at of layout.forks) {
    things.push(forkGlyph(at.x, at.y));
    placer.take(boxAround(at.x, at.y, 6, 6));
  }
  scene.nodes.forEach((node, i) => {
    const at = layout.nodes[i]!;
    const next = layout.nodes[1];
    if (node.role === 'winch') things.push(winchGlyph(at.x, at.y, next === undefined ? 0 : (Math.atan2(next.y - at.y, next.x - at.x) * 180) / Math.PI));
    else if (node.role === 'block') things.push(...blockGlyph(at.x, at.y));
    else things.push(endGlyphInPlan(at.x, at.y));
    placer.take(boxAround(at.x, at.y, 12, 14));
  });
  return { lines, things };
}

/** Half the room that a body takes, turned as it is. */
function halfOf(form: string | undefined, turn: number): { readonly x: number; readonly y: number } {
  if (form !== 'vehicle') return form === 'load' ? { x: 34, y: 23 } : { x: 24, y: 24 };
  const [cos, sin] = [Math.abs(Math.cos((turn * Math.PI) / 180)), Math.abs(Math.sin((turn * Math.PI) / 180))];
  const { long, wide } = vehicleHalf;
  return { x: long * cos + wide * sin, y: long * sin + wide * cos };
}

function labels(drawing: Drawing): void {
  const { pull, scene, layout, figures, placer, left } = drawing;
  const isUpper = (y: number): boolean => y <= (Math.min(...layout.nodes.map((n) => n.y)) + Math.max(...layout.nodes.map((n) => n.y))) / 2;
  const put = (at: { readonly x: number; readonly y: number }, clear: { readonly x: number; readonly y: number }, lines: readonly (readonly [string, TextClass])[], first: readonly Side[]): void => {
    const label: Label = { ...at, clear, lines: lines.map(([says, look]) => ({ says: fitText(says, longestName, textSizes[look]), look })), first };
    if (!placer.place(label)) left.push(label);
  };
  for (let i = 1; i < layout.nodes.length; i++) {
    const [a, b] = [layout.nodes[i - 1]!, layout.nodes[i]!];
    placer.along({ x1: a.x, y1: a.y, x2: b.x, y2: b.y }, tensionWords(pull, i - 1, figures), 't-strong');
  }
  scene.nodes.forEach((node, i) => {
    const at = layout.nodes[i]!;
    const lines = nodeLines(drawing, i);
    if (lines.length > 0) put(at, { x: 10, y: 13 }, lines, node.moves ? [isUpper(at.y) ? 'right-above' : 'right-below', isUpper(at.y) ? 'above' : 'below'] : [isUpper(at.y) ? 'above' : 'below', isUpper(at.y) ? 'left-above' : 'left-below']);
  });
  scene.forks.forEach(({ gear }, i) => {
    const at = layout.forks[i]!;
    put(at, { x: 6, y: 6 }, [...gearLines(drawing, gear), ...fasteningLines(drawing, (f) => f.fork === i)], [isUpper(at.y) ? 'above' : 'below']);
  });
  scene.bodies.forEach((body, i) => {
    const at = layout.bodies[i]!;
    const lines: (readonly [string, TextClass])[] = [[own(body.name), 't-strong']];
    if (body.isLoad && !isUnknown(pull.resistance.weight)) lines.push([`weighs ${showForce(pull.resistance.weight, figures)}`, 't-quiet']);
    if (body.loaded !== undefined) lines.push([`load ${loadWords(body.loaded.load, pull, figures)}`, 't-quiet'], [limitWords(body.loaded, pull, figures), 't-quiet']);
    const half = halfOf(body.form, at.turn);
    put(at, { x: half.x + 6, y: half.y }, lines, ['below', 'above', body.moves ? 'left' : 'right']);
  });
}

/** What is said at a point of the line: the thing itself, then the gear that holds it. */
function nodeLines(drawing: Drawing, i: number): (readonly [string, TextClass])[] {
  const { pull, scene, figures } = drawing;
  const node = scene.nodes[i]!;
  const lines: (readonly [string, TextClass])[] = [];
  if (node.role === 'winch') {
    lines.push([own(node.name), 't-strong'], [isUnknown(pull.available) ? 'what it pulls is not known' : `pulls ${showForce(pull.available, figures)}${isUnknown(pull.layer) ? '' : ` on layer ${showLength(pull.layer, figures)}`}`, 't-quiet']);
    if (!isUnknown(pull.needed) && !isUnknown(pull.available) && isAbove(pull.needed.amount.high, pull.available.amount.low)) lines.push([`✕ ${showForce(pull.needed, figures)} needed`, 't-quiet']);
  } else if (node.role === 'block') {
    lines.push([own(node.name), 't-strong']);
    if (node.loaded !== undefined) lines.push([`load ${loadWords(node.loaded.load, pull, figures)}`, 't-quiet'], [limitWords(node.loaded, pull, figures), 't-quiet']);
  }
  return [...lines, ...gearLines(drawing, node.gear), ...fasteningLines(drawing, (f) => f.node === i && f.fork === undefined)];
}

/** What is said of the fastenings that begin at one point: to which body each leads, where there are several. */
function fasteningLines(drawing: Drawing, begins: (fastening: PlanFastening) => boolean): (readonly [string, TextClass])[] {
  const { bodies, fastenings } = drawing.scene;
  const here = fastenings.filter(begins);
  return here.flatMap(({ gear, point, body }) => gearLines(drawing, [...gear, ...(point === undefined ? [] : [point])], here.length > 1 ? `to ${own(bodies[body]!.name)} ` : ''));
}

const gearNames = (gear: readonly Loaded[]): string[] => gear.map((l) => nameText(l.name));

/** Gear and a recovery point, with a line more for each that is not within its limit. */
function gearLines({ pull, figures }: Drawing, all: readonly Loaded[], to = ''): (readonly [string, TextClass])[] {
  // The line itself is drawn: only its ends that are too weak are named.
  const held = all.filter((l) => !isOnWinch(l, pull));
  const odd = all.filter((l) => standingOf(l, pull) !== 'within').slice(0, 3);
  const says = [...(held.length === 0 ? [] : [`${to}by ${gearNames(held).join(', ')}`]), ...odd.map((l) => `${nameText(l.name)}: ${limitWords(l, pull, figures)}`)];
  return says.flatMap((words) => wrapText(words, longestName, textSizes['t-quiet'], 2)).map((words) => [words, 't-quiet'] as const);
}

function scaleBar(perMetre: number, y: number): Part[] {
  const metres = roundStep(200 / perMetre, 2);
  const long = metres * perMetre;
  return [measureAcross(margin, margin + long, y + 8), text(margin + long + 10, y + 12, `${Number(metres.toPrecision(3))} m`, 't-quiet')];
}

function legendOf(scene: PlanScene): LegendEntry[] {
  const entries: LegendEntry[] = [
    { symbol: [line(0, 8, 26, 8, 's-rope')], says: 'line, with its tension' },
    { symbol: [line(0, 8, 26, 8, 's-dashed')], says: 'made fast' },
    { symbol: [line(0, 8, 26, 8, 's-limit')], says: 'edge of the keep-out area' },
  ];
  if (scene.forks.length > 0) entries.splice(2, 0, { symbol: [forkGlyph(13, 8)], says: 'where gear forks' });
  return scene.fastenings.length === 0 ? entries.filter((e) => e.says !== 'made fast') : entries;
}

function leadOf(pull: AssessedPull, figures: Figures): string {
  const odd = pull.loaded.filter((l) => ['over', 'either'].includes(standingOf(l, pull)));
  const open = pull.loaded.filter((l) => standingOf(l, pull) === 'not known').length;
  const needs = isUnknown(pull.needed) ? 'The line pull needed is not known' : `Needs ${showForce(pull.needed, figures)}${pull.incomplete === undefined ? '' : ' or more'} of line pull${isUnknown(pull.available) ? '; what the winch pulls is not known' : ` of the ${showForce(pull.available, figures)} there is`}`;
  const limits = odd.length > 0 ? `${odd.length === 1 ? `${nameText(odd[0]!.name)} is` : `${odd.length} things are`} or may be above the limit given` : pull.loaded.length > open ? 'no known limit is passed' : 'no limit is judged';
  return `${needs}; ${limits}${open === 0 ? '' : `, ${open} not judged`}.`;
}

function moreOf(pull: AssessedPull, figures: Figures): string {
  const { rigging, reach } = pull;
  const advantage = rigging.blocks.length === 0 || isUnknown(rigging.advantage) ? '' : ` The load gets ${showForce(rigging.advantage, figures)} times the line pull.`;
  return `Reach ${showLength(reach.reach, figures)}, line out ${showLength(reach.lineOut, figures)}.${advantage}${rigging.problems.length === 0 ? '' : ` ${rigging.problems.map((p) => `${p.message[0]!.toUpperCase()}${ownInside(p.message.slice(1))}.`).join(' ')}`}`;
}

function causesIn(pull: AssessedPull): Cause[] {
  const values: (Value | undefined)[] = [pull.needed, pull.available, asGiven(pull.standOff), pull.reach.lineOut, pull.rigging.advantage, ...pull.tensions, ...pull.loaded.flatMap((l) => [l.load, l.limit])];
  return [...causesOf(...values), ...(pull.incomplete === undefined ? [] : [pull.incomplete])];
}
