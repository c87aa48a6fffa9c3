import { calculationsReference } from './reference-calculations.ts';
import { glossaryReference } from './reference-glossary.ts';
import { languageReference } from './reference-language.ts';
import { practiceReference } from './reference-practice.ts';
import { rulesReference } from './reference-rules.ts';
import { sourcesReference } from './reference-sources.ts';

/** The pages of the reference, by file name. */
export const referencePages = (): ReadonlyMap<string, string> =>
  new Map([
    ['language.md', languageReference()],
    ['rules.md', rulesReference()],
    ['calculations.md', calculationsReference()],
    ['practice.md', practiceReference()],
    ['sources.md', sourcesReference()],
    ['glossary.md', glossaryReference()],
  ]);
