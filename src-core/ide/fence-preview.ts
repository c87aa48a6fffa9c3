import type { Assessed } from '../assess/assessing.ts';
import { severities, type Finding } from '../assess/finding.ts';
import type { DayNumber } from '../model/day.ts';
import { blockSheet, sayChecks } from '../papers/block-sheet.ts';
import { stretches } from '../papers/document.ts';
import { escapeHtml, isolatedHtml } from '../papers/escape-html.ts';
import { drumSection } from '../pictures/drum-section.ts';
import { lineMap } from '../pictures/line-map.ts';
import { loadPath } from '../pictures/load-path.ts';
import type { Picture } from '../pictures/picture.ts';
import { pullPlan } from '../pictures/pull-plan.ts';
import { repairMap } from '../pictures/repair-map.ts';
import type { Project } from '../project.ts';
import type { RigFence } from './markdown-fences.ts';

/** More pictures than these under one fence would bury the text around it. */
const mostPictures = 4;
const mostFindings = 12;

function pictureOf(assessed: Assessed): Picture | undefined {
  switch (assessed.kind) {
    case 'line':
      return lineMap(assessed);
    case 'winch':
      return drumSection(assessed);
    case 'repair':
      return repairMap(assessed);
    case 'chain':
      return loadPath(assessed);
    case 'pull':
      return pullPlan(assessed);
    default:
      return undefined;
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const html = (says: string): string => stretches(says).map(({ name, says: s }) => (name ? `<code>${isolatedHtml(s)}</code>` : isolatedHtml(s))).join('');

const findingHtml = ({ severity, code, message, help }: Finding): string =>
  `<li class="linewright-${severity}"><b>${severity}</b> ${html(message)} <i>${escapeHtml(code)}</i><br><span>${html(help)}</span></li>`;

/**
 * What stands under each fence of a Markdown document: its pictures, and what is found in it. Static HTML, in the order of
 * the fences; nothing in it runs or is fetched.
 */
export function fencePreviews(project: Project, path: string, fences: readonly RigFence[], day: DayNumber): string[] {
  const file = project.file(path);
  if (file === undefined) return fences.map(() => '');
  const blocks = project.judge(project.rootsOf(path)[0] ?? path, day).files.get(path)?.blocks ?? [];
  const findings = project.findings(path, day);
  return fences.map(({ content }) => {
    const inside = (at: number | undefined): boolean => at !== undefined && content.start <= at && at < content.end;
    const own = blocks.filter(({ block }) => inside(file.spanOf(block.place)?.start));
    const found = findings.filter(({ place }) => inside(file.spanOf(place)?.start)).sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity));
    const pictures = own.flatMap(({ assessed }) => pictureOf(assessed) ?? []);
    const more = (number: number, what: string): string => (number > 0 ? `<p>${number} more ${what}</p>` : '');
    const counts = own.map((b) => blockSheet(b).checks);
    const checks = { made: sum(counts.map((c) => c.made)), failed: sum(counts.map((c) => c.failed)), notJudged: counts.flatMap((c) => c.notJudged) };
    const verdict = own.length === 0 && found.length === 0 ? '' : `<p class="linewright-verdict">${escapeHtml(sayChecks(checks))}</p>`;
    const list = found.length === 0 ? '' : `<ul>${found.slice(0, mostFindings).map(findingHtml).join('')}</ul>${more(found.length - mostFindings, 'findings')}`;
    const drawn = pictures.slice(0, mostPictures).map(({ svg }) => `<figure>${svg}</figure>`).join('') + more(pictures.length - mostPictures, 'pictures');
    const body = verdict + list + drawn;
    return body === '' ? '' : `<div class="linewright">${body}</div>\n`;
  });
}
