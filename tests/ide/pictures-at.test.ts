import { describe, expect, test } from 'vitest';
import { picturesAt, picturesOfFile } from '../../src-core/ide/pictures-at.ts';
import { cursorIn, day, line, shown, winch } from './cursor.ts';

const rig = `${line}}
${winch}shackle bow-22 {
  wll  6.5 t
}
chain out {
  main outboard -> bow-22
}
repair field-fix on main {
  cut     at 27 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d temporary
}
`;
const at = (marked: string): string[] => {
  const { project, path, offset } = cursorIn(marked);
  return picturesAt(project, path, offset, day).map((p) => p.id);
};

test('a whole file has a picture of everything that has one, in the order of the text', () => {
  const { project, path } = cursorIn(`$0${rig}`);
  const { pictures, leftOut, broken } = picturesOfFile(project, path, day);
  expect(pictures.map((p) => p.id)).toEqual([
    'line main map',
    'line main splice main outboard',
    'winch bow-winch drum',
    'winch bow-winch pull by line out',
    'chain out load path',
    'repair field-fix map',
    'repair field-fix splice main outboard',
  ]);
  expect([leftOut, broken]).toEqual([0, []]);
  expect(pictures.every((p) => p.svg.startsWith('<svg ') && p.table.rows.length > 0)).toBe(true);
});

test('a picture belongs to its block, that of a splice to its statement', () => {
  const { project, path } = cursorIn(`$0${rig}`);
  const spans = new Map(picturesOfFile(project, path, day).pictures.map((p) => [p.id, shown(project, path, p.span)]));
  expect(spans.get('line main splice main outboard')).toBe('a.rig:8 outboard  eye thimble tube bury 72 d taper 24 d');
  expect(spans.get('repair field-fix splice main outboard')).toMatch(/^a\.rig:26 splice {2}outboard .* temporary$/);
  expect(spans.get('winch bow-winch drum')).toMatch(/^a\.rig:10 winch bow-winch \{[^}]*\}$/);
});

describe('at the cursor', () => {
  test.each([
    ['a statement with a splice', rig.replace('outboard  eye', 'outb$0oard  eye'), ['line main splice main outboard', 'line main map']],
    ['another statement of the block', rig.replace('strands', 'str$0ands'), ['line main map']],
    ['a winch', rig.replace('barrel', '$0barrel'), ['winch bow-winch drum', 'winch bow-winch pull by line out']],
    ['a shackle, which has none', rig.replace('6.5 t', '6.5$0 t'), []],
  ])('%s', (_, text, ids) => {
    expect(at(text)).toEqual(ids);
  });
});

test('a pull has its plan, and its need across the pull of its winch', () => {
  const pull = 'vehicle plover { mass 2,650 kg }\nanchor larch { kind tree }\npull out with bow-winch {\n  load plover$0\n  surface gravel\n  back-to larch\n}\n';
  const { project, path, offset } = cursorIn(`${line}}\n${winch.replace('bow-winch', 'bow-winch on plover')}${pull}`);
  const [plan, steps] = picturesAt(project, path, offset, day);
  expect([plan!.title, steps!.title]).toEqual(['Pull out, from above', 'Pull of bow-winch by line out']);
  expect(steps!.table.head).toContain('against the pull needed');
});

test('text that cannot be read is said where it stands, by the pictures that it breaks and no others', () => {
  const { project, path } = cursorIn(`$0${rig.replace('64 mm', '64 mmm')}`);
  const { pictures, broken } = picturesOfFile(project, path, day);
  expect(broken.map((b) => shown(project, path, b.span))).toEqual(['a.rig:12 mmm']);
  expect(pictures.filter((p) => p.broken !== undefined).map((p) => p.id)).toEqual(['winch bow-winch drum', 'winch bow-winch pull by line out']);
});

test('what is weak but readable is not broken', () => {
  const { project, path } = cursorIn(`$0${rig.replaceAll('72 d', '7 d')}`);
  expect(picturesOfFile(project, path, day).broken).toEqual([]);
});

test('blocks of one name have pictures of their own', () => {
  const { project, path } = cursorIn(`$0${winch}${winch}`);
  const ids = picturesOfFile(project, path, day).pictures.map((p) => p.id);
  expect(new Set(ids).size).toBe(4);
});

test('of a long file those about the cursor are drawn, and the others counted', () => {
  const many = Array.from({ length: 100 }, (_, i) => winch.replace('bow-winch', `winch-${i}`)).join('');
  const offset = many.indexOf('winch-70 ');
  const { project, path } = cursorIn(`$0${many}`);
  const near = picturesOfFile(project, path, day, offset);
  expect([near.pictures.length, near.leftOut]).toEqual([60, 140]);
  expect(near.pictures.map((p) => p.id)).toContain('winch winch-70 drum');
  const last = picturesOfFile(project, path, day, many.length);
  expect(last.pictures.at(-1)!.id).toBe('winch winch-99 pull by line out');
  expect(last.pictures).toHaveLength(60);
});

test('at any offset of any prefix there is an answer', () => {
  for (let end = 0; end <= rig.length; end += 17) {
    const { project, path } = cursorIn(`${rig.slice(0, end)}$0`);
    for (const picture of picturesOfFile(project, path, day, end).pictures) expect(picture.span.end).toBeLessThanOrEqual(end);
    picturesAt(project, path, end, day);
  }
});
