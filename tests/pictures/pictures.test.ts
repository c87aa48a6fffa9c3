import { describe, expect, it } from 'vitest';
import type { AssessedChain } from '../../src-core/assess/assess-chain.ts';
import type { AssessedLine } from '../../src-core/assess/assess-line.ts';
import type { AssessedWinch } from '../../src-core/assess/assess-winch.ts';
import type { AssessedRepair } from '../../src-core/assess/assessing.ts';
import { unknown } from '../../src-core/mechanics/derivation.ts';
import { drumSection } from '../../src-core/pictures/drum-section.ts';
import { lineMap } from '../../src-core/pictures/line-map.ts';
import { loadPath } from '../../src-core/pictures/load-path.ts';
import { pictureClasses, pictureStyle } from '../../src-core/pictures/picture-style.ts';
import { pullByLineOut } from '../../src-core/pictures/pull-by-line-out.ts';
import { repairMap } from '../../src-core/pictures/repair-map.ts';
import { strengthAlong } from '../../src-core/pictures/strength-along.ts';
import { textSizes, widthOf, type TextClass } from '../../src-core/pictures/shapes.ts';
import { assessRig, needed, picturesOf } from './pictures-of.ts';
import { allElements, readXml, textOf, type Element } from './read-xml.ts';
import { pullRig } from './pull-rig.ts';
import { halfUnknownRig, wholeRig, worn } from './rigs.ts';

const one = <K extends string>(rig: string, kind: K, index = 0) => assessRig(rig).filter((a) => a.kind === kind)[index] as never;
const textsOf = (svg: string): string[] => [...allElements(readXml(svg))].filter((e) => e.name === 'text').map(textOf);

/** Where each text stands, groups moved, as wide as the widest usual font makes it. */
function textBoxes(svg: string): { says: string; left: number; right: number; top: number; bottom: number }[] {
  const boxes: { says: string; left: number; right: number; top: number; bottom: number }[] = [];
  const visit = (element: Element, dx: number, dy: number): void => {
    const moved = /^translate\(([-\d.]+) ([-\d.]+)\)$/.exec(element.attributes.get('transform') ?? '');
    const [ox, oy] = [dx + Number(moved?.[1] ?? 0), dy + Number(moved?.[2] ?? 0)];
    if (element.name === 'text') {
      const look = element.attributes.get('class')!.split(' ')[0] as TextClass;
      const says = textOf(element);
      const [x, y, width] = [ox + Number(element.attributes.get('x')), oy + Number(element.attributes.get('y')), widthOf(says, look)];
      const anchor = element.attributes.get('text-anchor');
      const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
      boxes.push({ says, left, right: left + width, top: y - textSizes[look] * 0.75, bottom: y + textSizes[look] * 0.2 });
    }
    for (const child of element.children) if (typeof child !== 'string') visit(child, ox, oy);
  };
  visit(readXml(svg), 0, 0);
  return boxes;
}

const oddRig = `line \u05D7\u05D1\u05DC-\u05E8\u05D0\u05E9\u05D9 "<b>&\\"" {
  material HMPE
  length 30 m
  2026-06-21 damage cut 2 strands at 8.4 m from inboard "<script>${'long '.repeat(2000)}"
}
winch ${'a-very-long-name-'.repeat(20)}end {
  rated 42 kN
  barrel 64 mm
  width 230 mm
  carries \u05D7\u05D1\u05DC-\u05E8\u05D0\u05E9\u05D9
}
chain c {
  \u05D7\u05D1\u05DC-\u05E8\u05D0\u05E9\u05D9 outboard -> ${'unheard-of-'.repeat(30)}thing
}
anchor ${'\u05E2\u05E5'.repeat(40)} {
  kind tree
}
block ${'b'.repeat(90)} {
}
pull ${'p'.repeat(120)} with ${'a-very-long-name-'.repeat(20)}end through c {
  load 3 t
  via ${'b'.repeat(90)} fixed on ${'\u05E2\u05E5'.repeat(40)}
}
`;

describe.each([['whole', wholeRig], ['half unknown', halfUnknownRig], ['worn', worn(500)], ['odd names', oddRig], ['pulls', pullRig]])('every picture of the %s rig', (_, rig) => {
  const pictures = [...picturesOf(assessRig(rig))];

  it('is there', () => {
    expect(pictures.length).toBeGreaterThan(2);
  });

  it.each(pictures)('%s is one closed element with title, description and scalable size', (_name, picture) => {
    const root = readXml(picture.svg);
    const elements = [...allElements(root)];
    expect(root.name).toBe('svg');
    expect(root.attributes.get('role')).toBe('img');
    expect(root.attributes.get('viewBox')).toBe(`0 0 ${root.attributes.get('width')} ${root.attributes.get('height')}`);
    expect(Number(root.attributes.get('width'))).toBeLessThanOrEqual(800);
    const title = elements.find((e) => e.name === 'title')!;
    const description = elements.find((e) => e.name === 'desc')!;
    expect(root.attributes.get('aria-labelledby')).toBe(`${title.attributes.get('id')} ${description.attributes.get('id')}`);
    expect(textOf(title)).toBe(picture.title);
    expect(textOf(description).length).toBeGreaterThan(10);
  });

  it.each(pictures)('%s runs nothing, fetches nothing and needs no inline style', (_name, picture) => {
    for (const element of allElements(readXml(picture.svg))) {
      expect(element.name).not.toMatch(/script|foreignObject|image|use|a$/);
      for (const [key, value] of element.attributes) {
        expect(key).not.toMatch(/^on|href|^style$/);
        if (key !== 'xmlns') expect(value).not.toMatch(/https?:|data:|javascript:/);
        if (value.startsWith('url(')) expect(picture.svg).toContain(`id="${value.slice(5, -1)}"`);
      }
    }
  });

  it.each(pictures)('%s has the one style, and only classes of it', (_name, picture) => {
    for (const element of allElements(readXml(picture.svg))) {
      if (element.name === 'style') expect(element.children).toEqual([pictureStyle()]);
      for (const name of element.attributes.get('class')?.split(' ') ?? []) expect(pictureClasses()).toContain(name);
    }
  });

  it.each(pictures)('%s keeps its texts inside, and apart from each other', (_name, picture) => {
    const boxes = textBoxes(picture.svg);
    expect(boxes.length).toBeGreaterThan(0);
    for (const [i, a] of boxes.entries()) {
      expect(a.left, a.says).toBeGreaterThanOrEqual(0);
      expect(a.right, a.says).toBeLessThanOrEqual(760);
      for (const b of boxes.slice(i + 1)) {
        const overlap = Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
        expect(overlap, `${a.says} | ${b.says}`).toBe(false);
      }
    }
  });

  it.each(pictures)('%s has a table as wide as its head, and a small file', (_name, picture) => {
    for (const row of picture.table.rows) expect(row).toHaveLength(picture.table.head.length);
    expect(new TextEncoder().encode(picture.svg).length).toBeLessThan(60_000);
  });

  it('is the same to the byte when made again', () => {
    for (const [name, picture] of picturesOf(assessRig(rig))) expect(picture).toEqual(pictures.find(([n]) => n === name)![1]);
  });

  it('has identities of its own on a page with all the others', () => {
    const seen = new Map<string, string>();
    for (const [name, { svg }] of pictures) {
      for (const element of allElements(readXml(svg))) {
        const id = element.attributes.get('id');
        if (id === undefined) continue;
        // The same picture asked for in two ways has the same identities.
        if (seen.has(id)) expect(seen.get(id), `${name}: ${id}`).toBe(svg);
        seen.set(id, svg);
      }
    }
  });
});

describe('the line map', () => {
  it('names damage, ends, stations and the strength that is left', () => {
    const picture = lineMap(one<'line'>(wholeRig, 'line'));
    const texts = textsOf(picture.svg);
    expect(texts).toContain('2 cut strands, 8.4 m');
    expect(texts).toContain('light abrasion, 7.9 to 9.1 m');
    expect(texts).toContain('outboard: eye, tube thimble, bury 72 d');
    expect(texts.some((t) => t.startsWith('lowest '))).toBe(true);
    expect(picture.table.rows.map((r) => r[1])).toContain('2 cut strands');
  });

  it('speaks the unit that the line was written in', () => {
    const picture = lineMap(assessRig(halfUnknownRig).find((a) => a.kind === 'line' && a.facts.name === 'l3') as AssessedLine);
    expect(textsOf(picture.svg)).toContain('ft from inboard end');
    expect(textsOf(picture.svg)).toContain('stain, 75 ft');
  });

  it('counts what would cover itself, and loses no entry', () => {
    const line = one<'line'>(worn(500), 'line') as AssessedLine;
    const picture = lineMap(line);
    const counts = textsOf(picture.svg).flatMap((t) => /^(\d+) entr(?:y|ies)$/.exec(t)?.[1] ?? []);
    expect(counts.length).toBeLessThan(10);
    expect(counts.reduce((sum, n) => sum + Number(n), 0)).toBe(500);
    expect(picture.table.rows.filter((r) => r[4] !== '')).toHaveLength(500);
  });

  it('draws what is known of a line without length, and marks the rest', () => {
    const texts = textsOf(lineMap(assessRig(halfUnknownRig).find((a) => a.kind === 'line' && a.facts.name === 'l2') as AssessedLine).svg);
    expect(texts).toContain('light abrasion, 3 to 4 m');
    expect(texts).toContain('?');
    expect(texts.some((t) => t.startsWith('length of `l2` is not given'))).toBe(true);
    expect(texts.some((t) => t.startsWith('1 damage entry is not marked'))).toBe(true);
  });

  it('never draws more strength where one more entry stands', () => {
    const strengths = (rig: string): (number | undefined)[] => {
      const piece = (one<'line'>(rig, 'line') as AssessedLine).pieces.get('main')!;
      const stretches = strengthAlong(piece, 30, true, 0.05);
      return Array.from({ length: 300 }, (_, i) => stretches.find((s) => s.to > i / 10)?.strength);
    };
    const sound = strengths(worn(0));
    const damaged = strengths(worn(2));
    expect(sound.some((s, i) => s !== damaged[i])).toBe(true);
    for (const [i, s] of damaged.entries()) if (s !== undefined) expect(s).toBeLessThanOrEqual(sound[i]!);
  });

  it('lets damage of unknown place count all along', () => {
    const lost = wholeRig.replace('length    30 m', '').replace('from 7.9 m to 9.1 m from inboard', 'at 3 m from outboard');
    const piece = (one<'line'>(lost, 'line') as AssessedLine).pieces.get('main')!;
    const stretches = strengthAlong(piece, 9, false, 0.1);
    for (const s of stretches) if (s.strength !== undefined) expect(s.strength).toBeLessThan(92_000);
    expect(stretches.some((s) => s.strength !== undefined)).toBe(true);
  });
});

describe('the repair map', () => {
  it('shows cuts, what goes out, and each piece that is left', () => {
    const picture = repairMap(one<'repair'>(wholeRig, 'repair') as AssessedRepair);
    const texts = textsOf(picture.svg);
    expect(texts).toContain('cut, 7.6 m from inboard');
    expect(texts).toContain('goes out');
    expect(texts.some((t) => t.startsWith('tail: '))).toBe(true);
    expect(picture.description).toContain('Cut at 7.6 m from inboard and 9.4 m from inboard. 2 pieces are left; 1.8 m of line goes out.');
  });

  it('shows the end at the drum going out where a cut drops it', () => {
    const rig = 'line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  length 30 m\n  breaking 92 kN\n}\nrepair fix on main {\n  cut at 12 m from inboard keep tail\n  cut at 1.6 m from inboard drop inboard\n  splice inboard lug\n}\n';
    const { description, table } = repairMap(one<'repair'>(rig, 'repair') as AssessedRepair);
    expect(description).toContain('2 pieces are left; 1.6 m of line goes out.');
    expect(table.rows.filter((row) => row.includes('goes out')).map((row) => row[3])).toEqual(['0 to 1.6 m']);
  });

  it('counts an inboard eye, which holds an extension', () => {
    const picture = repairMap(one<'repair'>(wholeRig, 'repair') as AssessedRepair);
    expect(picture.description).toMatch(/tail: [^;]*; breaking strength now [\d.]+ to [\d.]+ kN, lowest at the inboard end/);
  });
});

describe('the pull by line out', () => {
  const winch = (rig: string): AssessedWinch => one<'winch'>(rig, 'winch') as AssessedWinch;
  it('says from where on the pull needed is there', () => {
    expect(pullByLineOut(winch(wholeRig), needed(30_000, 31_000)).description).toContain('needed is there from');
    expect(pullByLineOut(winch(wholeRig), needed(50_000, 50_000)).description).toContain('no layer gives');
    expect(pullByLineOut(winch(wholeRig), needed(1_000, 2_000)).description).toContain('every layer gives');
    expect(pullByLineOut(winch(wholeRig), unknown({ key: 'k', says: 'the ground is not given', help: 'add `surface`' })).description).toContain('the pull needed is not known');
  });

  it('takes the upper end of what is needed', () => {
    // Layer 2 gives 33.06 kN: a need of 33 to 34 kN is met on layer 1 only.
    const picture = pullByLineOut(winch(wholeRig), needed(33_000, 34_000));
    expect(picture.table.rows.map((r) => r[4])).toEqual(['below', 'below', 'below', 'reaches it']);
  });
});

describe('the drum in section', () => {
  it('says by how much the line stands above the flange', () => {
    const rig = 'winch ring {\n  barrel   6 mm\n  width    30 mm\n  flange   65 mm\n  carries  a\n}\nline a {\n  diameter  9 mm\n  length    7 m\n}\n';
    expect(drumSection(one<'winch'>(rig, 'winch') as AssessedWinch).description).toMatch(/Outermost layer stands [\d.]+ mm above the flange/);
  });
});

describe('the load path', () => {
  it('has every link with load and limit, and says what is not judged', () => {
    const picture = loadPath(one<'chain'>(wholeRig, 'chain') as AssessedChain);
    expect(picture.table.rows).toHaveLength(7);
    expect(picture.description).toContain('Lowest known limit: main outboard');
    expect(picture.description).toContain('2 links are not judged and may be lower');
    expect(picture.table.rows.filter((r) => r[5] === 'not judged').map((r) => r[0])).toEqual(['shackle bow 19 mm', 'larch']);
    expect(picture.table.rows.find((r) => r[0] === 'bow-22')![5]).toBe('within the limit given');
    expect(picture.table.rows.find((r) => r[0] === 'trunk')![5]).toBe('above the limit');
  });
});
