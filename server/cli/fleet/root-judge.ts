import type { DayNumber } from '../../../src-core/model/day.ts';
import { locateIn } from '../../../src-core/papers/locate.ts';
import { Project, type Absence, type JudgedFile } from '../../../src-core/project.ts';
import { loadWanted, readInside, rigOf } from '../../files/load-project.ts';
import { calledFrom } from '../../files/open-rigs.ts';
import { tell, type Telling, type Told } from './tell.ts';

export interface Counts {
  readonly made: number;
  readonly failed: number;
  readonly notJudged: number;
}

/** How the rigs of one workspace folder are judged and told. Plain data. */
export interface Judging {
  /** Real path of the workspace folder, and of the folder that names are counted from. */
  readonly folder: string;
  readonly cwd: string;
  readonly day: DayNumber;
  readonly telling: Telling;
}

/** What came of one root, file by file. Plain data. */
export interface JudgedRig {
  readonly root: string;
  readonly files: readonly { readonly path: string; readonly told: readonly Told[]; readonly counts: Counts }[];
  /** Set when the root was gone since it was listed. */
  readonly absent?: Absence;
}

/** So many used files are kept from one root to the next; then all are let go. */
const mostKept = 400;

/** Judges roots one after the other. What only the last one needed is forgotten, what others may use as well is kept. */
export class RootJudge {
  readonly #judging: Judging;
  readonly #called: (path: string) => string;
  #project = new Project();
  #kept = 0;

  constructor(judging: Judging) {
    this.#judging = judging;
    this.#called = calledFrom(judging.cwd, judging.folder);
  }

  judge(root: string): JudgedRig {
    const { folder, day, telling } = this.#judging;
    const read = readInside(folder, root);
    if ('absent' in read) return { root, files: [], absent: read.absent };
    if (mostKept < this.#kept) this.#project = new Project();
    const project = this.#project;
    project.set(root, rigOf(root, read.text));
    loadWanted(project, folder);
    const judged = [...project.judge(root, day).files.values()];
    const locate = judged.some(({ findings }) => findings.length > 0) ? locateIn(judged.map(({ file }) => file), this.#called) : () => undefined;
    const files = judged.map((one) => ({ path: one.file.path, told: one.findings.map((finding) => tell(one.file, finding, locate, telling)), counts: countsOf(one) }));
    project.remove(root);
    this.#kept = [...project.paths].length;
    return { root, files };
  }
}

function countsOf({ blocks }: JudgedFile): Counts {
  let [made, failed, notJudged] = [0, 0, 0];
  for (const block of blocks) {
    made += block.made;
    failed += block.failed;
    notJudged += block.notJudged.length;
  }
  return { made, failed, notJudged };
}
