import { expect, test } from 'vitest';
import { codeActions } from '../../src-core/ide/code-actions.ts';
import { Project } from '../../src-core/project.ts';
import { formatFile } from '../../src-core/syntax/format.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { cursorIn, day, type Cursor } from './cursor.ts';

const rig = (steps: string, facts = ''): string => `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
${facts}
  2026-05-02  fitted
  2026-06-21  damage     cut 2 strands at 8.4 m from inboard
}

# What we mean to do.
repair $0field-fix on main "trackside" {
${steps}
}

chain reach after field-fix {
  main outboard -> bow
}

shackle bow {
  wll  6.5 t
}
`;

const textsAfter = (cursor: Cursor): Map<string, string> | undefined => {
  const action = codeActions(cursor.project, cursor.path, { start: cursor.offset, end: cursor.offset }, day).find((a) => a.kind === 'rewrite');
  if (action === undefined) return undefined;
  const texts = new Map([...cursor.project.paths].map((path) => [path, cursor.text(path)]));
  for (const { path, start, end, text } of [...action.edits].sort((a, b) => b.start - a.start)) texts.set(path, texts.get(path)!.slice(0, start) + text + texts.get(path)!.slice(end));
  return texts;
};
const carriedOut = (cursor: Cursor): string | undefined => textsAfter(cursor)?.get(cursor.path);

test('cuts go from outboard inward, splices after them; the plan and its mention go', () => {
  const text = carriedOut(cursorIn(rig(`  cut     at 7.6 m from inboard
  splice  outboard eye thimble tube bury 72 d taper 24 d size 200 mm
  cut     at 9.4 m from inboard keep tail
  splice  tail inboard eye bury 72 d taper 24 d size 200 mm`)))!;
  expect(text).toContain(`  2026-06-21  damage     cut 2 strands at 8.4 m from inboard
  # What we mean to do.
  # trackside
  2026-06-22  cut        at 9.4 m from inboard keep tail
  2026-06-22  cut        at 7.6 m from inboard
  2026-06-22  splice     outboard eye thimble tube bury 72 d taper 24 d size 200 mm
  2026-06-22  splice     tail inboard eye bury 72 d taper 24 d size 200 mm
}
`);
  expect(text).not.toContain('field-fix');
  // What is left is what the formatter would write: one empty line where the repair stood.
  expect(text).toBe(formatFile(text, topHeads));
  const project = new Project();
  project.set('a.rig', text);
  expect(project.findings('a.rig', day).filter((f) => f.severity === 'error').map((f) => f.code)).toEqual([]);
});

test('a position from the far end is turned where the line was exact', () => {
  const text = carriedOut(cursorIn(rig('  cut at 20.6 m from outboard keep tail\n  cut at 22.4 m from outboard')))!;
  expect(text).toContain('  2026-06-22  cut        at 9.4 m from inboard keep tail\n  2026-06-22  cut        at 7.6 m from inboard\n');
});

test('where the line is known only between two lengths, a position from its far end is not rewritten', () => {
  const spliced = '  2026-06-01  cut  at 29 m from inboard\n  2026-06-01  splice  outboard eye bury 72 d';
  expect(carriedOut(cursorIn(rig('  cut at 10 m from outboard', spliced)))).toBeUndefined();
  expect(carriedOut(cursorIn(rig('  cut at 10 m from inboard', spliced)))).toContain('cut        at 10 m from inboard');
});

test('a broken step is not carried out', () => {
  expect(carriedOut(cursorIn(rig('  cut at 10 m')))).toBeUndefined();
});

const steps = `  # First the far side.
  cut     at 7.6 m from inboard  # mind the marker
  splice  outboard eye thimble tube bury 72 d taper 24 d size 200 mm
  cut     at 9.4 m from inboard keep tail
  # The eye comes later.`;

test('what is written about the steps goes along with them', () => {
  expect(carriedOut(cursorIn(rig(steps).replace('{\n  # First', '{ # on Sunday\n  # First').replace('}\n\nchain', '} # and no sooner\n\nchain')))).toContain(`  # What we mean to do.
  # on Sunday
  # and no sooner
  # trackside
  2026-06-22  cut        at 9.4 m from inboard keep tail
  # First the far side.
  2026-06-22  cut        at 7.6 m from inboard  # mind the marker
  2026-06-22  splice     outboard eye thimble tube bury 72 d taper 24 d size 200 mm
  # The eye comes later.
}
`);
});

test('a repair whose findings are set aside is not carried out', () => {
  expect(carriedOut(cursorIn(rig(steps).replace('# What we mean to do.', '# allow repair-leaves-damage: until we are home')))).toBeUndefined();
});

test('entries of later days stay behind those of the repair', () => {
  const text = carriedOut(cursorIn(rig(steps).replace('from inboard\n}', 'from inboard\n  2026-12-01  washed\n}')))!;
  expect(text).toMatch(/2026-06-22 {2}splice[^\n]*\n {2}# The eye comes later\.\n {2}2026-12-01 {2}washed\n\}/);
});

test('every root that sees the repair loses its mention of it', () => {
  const chain = (name: string): string => `use "shared.rig"\n\nchain ${name} after field-fix "far" {\n  main outboard -> bow\n}\n`;
  const texts = textsAfter(cursorIn(`=== shared.rig\n${rig(steps)}=== one.rig\n${chain('long')}=== two.rig\n${chain('short')}`))!;
  expect([texts.get('one.rig'), texts.get('two.rig')]).toEqual([chain('long'), chain('short')].map((text) => text.replace(' after field-fix', '')));
});

test('a cut that drops the end at the drum is written as such, counted from inboard', () => {
  expect(carriedOut(cursorIn(rig(`  cut     at 28.4 m from outboard drop inboard
  splice  inboard lug
  cut     at 9.4 m from inboard keep tail`)))).toContain(`  2026-06-22  cut        at 9.4 m from inboard keep tail
  2026-06-22  cut        at 1.6 m from inboard drop inboard
  2026-06-22  splice     inboard lug
}
`);
});
