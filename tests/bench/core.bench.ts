// The core alone, in this process: no editor, no messages.
import { planCutsOf } from '../../src-core/mechanics/cut-planner.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import { assessRig, picturesOf } from '../pictures/pictures-of.ts';
import { wholeRig, worn } from '../pictures/rigs.ts';
import { fortyEntries } from '../support/forty-entries.ts';
import { rigText, rigTextDay } from '../support/rig-text.ts';
import { figure, median, printTable, quantile } from './figures.ts';
import { options } from './options.ts';

const day = readDay(rigTextDay)!;
const path = 'fleet.rig';

function times(count: number, run: (i: number) => void, warm = Math.ceil(count / 4)): number[] {
  for (let i = 0; i < warm; i++) run(i);
  return Array.from({ length: count }, (_, i) => {
    const started = performance.now();
    run(warm + i);
    return performance.now() - started;
  });
}

function opened(text: string): Project {
  const project = new Project();
  project.set(path, text);
  project.findings(path, day);
  return project;
}

/** Nothing of what was worked out before is used: the project is new each time. */
const check = (text: string, count: number): number[] => times(count, () => void opened(text));

/** Ten pulls and no more, in 1,000 lines. */
function tenPulls(): string {
  let pulls = 0;
  const blocks = rigText(1200, 5).split(/(?<=^}\n)/m).filter((block) => !/^\s*(?:#[^\n]*\n)*\s*pull /.test(block) || ++pulls <= 10);
  return blocks.join('').split('\n').slice(0, 1000).join('\n');
}

const limited = (name: string, took: readonly number[], limit_ms: number): void =>
  console.log(`${median(took) <= limit_ms ? 'within' : 'BEYOND'} ${name}: ${figure(median(took))} ms (p95 ${figure(quantile(took, 0.95))}), limit ${limit_ms} ms`);

console.log('\nThe core alone');
limited('check of a rig of 100 lines, warm', check(rigText(100, 3), 60), 10);
limited('assessing a rig of 1,000 lines with ten pulls', check(tenPulls(), 30), 50);
limited('planning the cuts of 30 m with forty entries', times(20, () => void planCutsOf(fortyEntries)), 100);
const drawn = assessRig(wholeRig.replace('  2026-06-21  damage  cut', `${worn(60).split('\n').slice(7, 67).join('\n')}\n  2026-06-21  damage  cut`));
const { size: pictures } = picturesOf(drawn);
limited('a picture of a rig of 100 lines', times(20, () => void picturesOf(drawn)).map((took) => took / pictures), 20);

const kinds: Readonly<Record<string, RegExp>> = { grade: /grade +\d\d/g, shackle: /body +\d\d/g, mass: /mass +2,\d\d\d/g, 'line length': /length {8}\d\d/g };
const rows: { readonly lines: number; readonly open: number; readonly perLine_us: number; readonly edits: Record<string, number> }[] = [];
for (const lines of options.sizes) {
  const text = rigText(lines, 3);
  const open = median(check(text, lines > 5000 ? 3 : 15));
  const project = opened(text);
  const edits: Record<string, number> = {};
  for (const [kind, place] of Object.entries(kinds)) {
    const places = [...text.matchAll(place)].map((m) => m.index + m[0].length);
    if (places.length === 0) continue;
    edits[kind] = median(
      times(120, (i) => {
        const at = places[(i >> 1) % places.length]!;
        project.edit(path, i % 2 === 0 ? { start: at, end: at, text: '1' } : { start: at, end: at + 1, text: '' });
        project.findings(path, day);
      }),
    );
  }
  rows.push({ lines, open, perLine_us: (open / lines) * 1000, edits });
}
printTable(['lines', 'open ms', 'us a line', ...Object.keys(kinds).map((k) => `edit ${k} ms`)], rows.map((r) => [String(r.lines), figure(r.open), figure(r.perLine_us), ...Object.keys(kinds).map((k) => figure(r.edits[k] ?? NaN))]));
const [first, last] = [rows[0], rows.at(-1)];
if (first !== undefined && last !== undefined && first !== last) {
  for (const kind of Object.keys(kinds)) {
    const ratio = (last.edits[kind] ?? NaN) / (first.edits[kind] ?? NaN);
    console.log(`${ratio <= 3 ? 'within' : 'BEYOND'} edit of a ${kind}: ${figure(ratio)} times as long at ${last.lines} lines as at ${first.lines}, limit 3`);
  }
}
