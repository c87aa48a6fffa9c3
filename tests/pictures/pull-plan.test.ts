import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AssessedPull } from '../../src-core/assess/assess-pull.ts';
import { hullOf, outlineAround } from '../../src-core/pictures/keep-out.ts';
import { boxAround, LabelPlacer, runsThrough } from '../../src-core/pictures/place-labels.ts';
import { planLayout } from '../../src-core/pictures/plan-layout.ts';
import { planScene } from '../../src-core/pictures/plan-scene.ts';
import { pullPlan } from '../../src-core/pictures/pull-plan.ts';
import { assessRig } from './pictures-of.ts';
import { pullRig } from './pull-rig.ts';
import { allElements, readXml, textOf } from './read-xml.ts';

const pulls = new Map(assessRig(pullRig).flatMap((a) => (a.kind === 'pull' ? [[a.name, a] as const] : [])));
const pull = (name: string): AssessedPull => pulls.get(name)!;
const textsOf = (name: string): string[] => [...allElements(readXml(pullPlan(pull(name)).svg))].filter((e) => e.name === 'text').map(textOf);

describe('the plan of a pull', () => {
  it('stands to scale where places are written', () => {
    const layout = planLayout(planScene(pull('placed')));
    const [winch, block, end] = layout.nodes;
    const metres = (a: typeof winch, b: typeof winch): number => Math.hypot(a!.x - b!.x, a!.y - b!.y) / layout.perMetre!;
    // From 15 m ahead, 9 m right to 18 m ahead, 4 m left; and from there to the load.
    expect(metres(winch, block)).toBeCloseTo(Math.hypot(3, 13), 6);
    expect(metres(block, end)).toBeCloseTo(Math.hypot(18, 4), 6);
    // Left of the way of the load is up in the picture.
    expect(block!.y).toBeLessThan(end!.y);
    expect(textsOf('placed')).toContain('Plan, to scale');
    expect(textsOf('placed')).toContain('10 m');
  });

  it('says that it is not to scale where they are not', () => {
    expect(planLayout(planScene(pull('unplaced'))).perMetre).toBeUndefined();
    expect(textsOf('unplaced')).toContain('Plan, not to scale');
    expect(textsOf('unplaced').some((t) => t.startsWith('Where things stand is not written'))).toBe(true);
  });

  it('writes the tension on each part, and load and limit beside what is loaded', () => {
    const texts = textsOf('placed');
    const { table } = pullPlan(pull('placed'));
    expect(table.rows[0]![0]).toBe('part 1 of the line, bow-winch to snatch');
    for (const part of table.rows.slice(0, 2)) expect(texts).toContain(part[1]);
    expect(table.rows[0]![1]).not.toBe(table.rows[1]![1]);
    expect(texts).toContain('within its limit, 39.2 kN');
    expect(texts).toContain('by trunk');
    expect(texts).toContain('what it holds is not known');
  });

  it('marks what is above its limit with more than a colour', () => {
    expect(textsOf('heavy')).toContain('✕ above its limit, 39.2 kN');
    expect(textsOf('heavy').some((t) => t.startsWith('✕ above what it holds'))).toBe(true);
    expect(textsOf('placed').some((t) => t.startsWith('✕ People keep 35 m off'))).toBe(true);
    expect(textsOf('unplaced').some((t) => t.startsWith('✕'))).toBe(false);
  });

  it('takes nothing for within its limit while a part of the resistance is not known', () => {
    const { table } = pullPlan(pull('by-pickets'));
    const judged = table.rows.filter((r) => r[0]!.startsWith('pickets'));
    expect(judged.map((r) => [r[1]!.startsWith('at least '), r[3]])).toEqual([[true, 'not judged']]);
    expect(textsOf('by-pickets').some((t) => t.startsWith('within'))).toBe(false);
  });

  it('holds both legs of a bridle, each by its own anchor', () => {
    const scene = planScene(pull('forked'));
    expect(scene.bodies.map((b) => [b.name, b.form])).toEqual([['plover', 'vehicle'], ['boulder', 'rock'], ['larch', 'tree']]);
    const { bodies } = planLayout(scene);
    expect(Math.hypot(bodies[1]!.x - bodies[2]!.x, bodies[1]!.y - bodies[2]!.y)).toBeGreaterThan(60);
  });

  it('draws what stands behind a second fork, with the gear that leads there', () => {
    const scene = planScene(pull('twice'));
    expect(scene.bodies.map((b) => b.name)).toEqual(['plover', 'boulder', 'larch', 'wren']);
    const layout = planLayout(scene);
    // The fork stands between the end of the line and both that hold it there.
    const [end, fork] = [layout.nodes.at(-1)!, layout.forks[0]!];
    const [, , larch, wren] = layout.bodies;
    for (const held of [larch!, wren!]) expect(Math.hypot(held.x - fork.x, held.y - fork.y)).toBeLessThan(Math.hypot(held.x - end.x, held.y - end.y));
    expect(layout.forks).toHaveLength(1);
    expect(textsOf('twice')).toEqual(expect.arrayContaining(['by bow-22', 'by joint', 'to larch by short', 'to wren by long, wren stern', 'where gear forks']));
    expect(textsOf('twice').join(' ')).not.toContain('Not drawn');
  });

  it('draws a bridle behind a block', () => {
    const scene = planScene(pull('bridled-block'));
    expect(scene.fastenings.filter((f) => f.node === 1).map((f) => scene.bodies[f.body]!.name)).toEqual(['larch', 'boulder']);
    expect(textsOf('bridled-block')).toEqual(expect.arrayContaining(['by trunk, joint', 'to larch by short', 'to boulder by long']));
  });

  it('says what it leaves out: gear behind which nothing holds', () => {
    expect(textsOf('loose').join(' ')).toContain('Not drawn, because no anchor and no vehicle is written behind it: short, joint.');
    expect(textsOf('forked').join(' ')).not.toContain('Not drawn');
  });

  it('loses no words: what has no room beside its thing stands below the plan', () => {
    const { table, svg } = pullPlan(pull('crowded'));
    for (const name of ['boulder', 'larch', 'snatch', 'second', 'plover', 'wren', 'bow-winch']) expect(svg).toContain(name);
    expect(table.rows.length).toBeGreaterThan(6);
  });
});

const points = fc.array(fc.record({ x: fc.integer({ min: -50, max: 50 }), y: fc.integer({ min: -50, max: 50 }) }), { minLength: 1, maxLength: 12 });

describe('the keep-out area', () => {
  it('has every point inside its hull', () => {
    fc.assert(
      fc.property(points, (all) => {
        const hull = hullOf(all);
        for (const p of all) {
          hull.forEach((a, i) => {
            const b = hull[(i + 1) % hull.length]!;
            if (hull.length > 2) expect((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)).toBeGreaterThanOrEqual(-1e-6);
          });
        }
      }),
    );
  });

  it('keeps its edge at the distance from a straight line, and around a single point', () => {
    expect(outlineAround([{ x: 0, y: 0 }, { x: 10, y: 0 }], 4)).toBe('M0 -4L10 -4A4 4 0 0 1 10 4L0 4A4 4 0 0 1 0 -4Z');
    expect(outlineAround([{ x: 5, y: 5 }], 3)).toBe('M2 5a3 3 0 1 0 6 0a3 3 0 1 0 -6 0Z');
  });

  it('is never drawn for a distance that is not known', () => {
    const picture = pullPlan(pull('nothing'));
    expect(picture.svg).not.toContain('keep-out"');
    expect(picture.description).toContain('How far people must keep off is not known');
  });
});

describe('labels', () => {
  it('know whether a line runs through a box', () => {
    const box = boxAround(10, 10, 5, 5);
    expect(runsThrough({ x1: 0, y1: 10, x2: 20, y2: 10 }, box)).toBe(true);
    expect(runsThrough({ x1: 0, y1: 0, x2: 20, y2: 20 }, box)).toBe(true);
    expect(runsThrough({ x1: 0, y1: 0, x2: 4, y2: 4 }, box)).toBe(false);
    expect(runsThrough({ x1: 0, y1: 16, x2: 20, y2: 16 }, box)).toBe(false);
  });

  it('say when there is no room', () => {
    const placer = new LabelPlacer(0, 120);
    placer.take({ left: -10, top: -300, right: 130, bottom: 300 });
    expect(placer.place({ x: 60, y: 0, clear: { x: 5, y: 5 }, lines: [{ says: 'larch', look: 't-strong' }] })).toBe(false);
    const free = new LabelPlacer(0, 120);
    expect(free.place({ x: 60, y: 0, clear: { x: 5, y: 5 }, lines: [{ says: 'larch', look: 't-strong' }] })).toBe(true);
  });
});
