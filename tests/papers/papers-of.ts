import { readFileSync } from 'node:fs';
import { readDay } from '../../src-core/model/day.ts';
import type { PaperDocument } from '../../src-core/papers/document.ts';
import { inspectionSheet } from '../../src-core/papers/inspection-sheet.ts';
import { locateIn } from '../../src-core/papers/locate.ts';
import { logbookDocument } from '../../src-core/papers/logbook.ts';
import type { PaperSubject } from '../../src-core/papers/paper-subject.ts';
import { pullBrief } from '../../src-core/papers/pull-brief.ts';
import { sheetDocument } from '../../src-core/papers/sheet-document.ts';
import { stepCard } from '../../src-core/papers/step-card.ts';
import { projectOf, type Texts } from '../support/judge-text.ts';

export const paperDay = '2026-06-22';

export const example = (name: string): string => readFileSync(new URL(`../../examples/${name}`, import.meta.url), 'utf8');
export const plover = (): Texts => ({ 'plover.rig': example('plover.rig'), 'practice.rig': example('practice.rig') });

/** The first file of some texts, judged. */
export function subjectOf(texts: Texts, day = paperDay): PaperSubject {
  const project = projectOf(texts);
  const path = [...project.paths][0]!;
  return { root: project.judge(path, readDay(day)!), path, file: path, day };
}

/** Every paper that the blocks of a file give, by what it is. */
export function papersOf(texts: Texts, day = paperDay): Map<string, PaperDocument> {
  const subject = subjectOf(texts, day);
  const locate = locateIn([...subject.root.files.values()].map((f) => f.file));
  const papers = new Map<string, PaperDocument>([['sheet', sheetDocument(subject)]]);
  for (const { assessed } of subject.root.files.get(subject.path)!.blocks) {
    if (assessed.kind === 'repair') papers.set(`card ${assessed.name}`, stepCard(subject, assessed));
    else if (assessed.kind === 'pull') papers.set(`brief ${assessed.name}`, pullBrief(subject, assessed));
    else if (assessed.kind === 'line') {
      papers.set(`inspect ${assessed.facts.name}`, inspectionSheet(subject, assessed));
      papers.set(`logbook ${assessed.facts.name}`, logbookDocument(subject, assessed, locate));
    }
  }
  return papers;
}

/** Prose that would be markup, run the other way, or never end, wherever it is let in. */
export const hostile = '<script>alert(1)</script> | a | **b** [c](javascript:d) `e` &amp; ![f](http://g/h.png) \u202Eevil\u202C @everyone #1 ${x} $y$ ~~z~~';
export const hebrew = 'החבל נבדק 5 מ׳ (שלם)';
export const long = 'wear '.repeat(400).trim();

/** A rig in which everything that takes prose is given some. */
export const hostileRig = `vehicle v "${hostile}" {
  mass  2,650 kg
  point bow rated 4.7 t
}
winch w on v "${hebrew}" {
  rated   42 kN at layer 1
  barrel  64 mm
  width   230 mm
  flange  165 mm
  keep    10 wraps
  carries main
}
line main "${hostile}" {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-05-01  fitted     "${hebrew}"
  2026-05-02  inspected  "${hostile}"
  2026-05-03  damage     cut 1 strand at 8.4 m from inboard "${long}"
  2026-05-04  pulled     12 kN "${'x'.repeat(3000)}"
}
anchor larch "${hebrew}" {
  kind     tree
  holding  40 kN "${hostile}"
}
repair fix on main "${hostile}" {
  cut     at 7.6 m from inboard "${hebrew}"
  splice  outboard eye thimble tube bury 72 d taper 24 d temporary "${long}"
}
chain c after fix "${hostile}" {
  main outboard -> larch
}
pull p with w through c "${hebrew}" {
  load     v
  surface  gravel
  reach    5 m
}
`;
