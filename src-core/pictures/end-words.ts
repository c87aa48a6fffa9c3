import { writtenValue } from '../assess/facts.ts';
import { show } from '../assess/show.ts';
import type { AssessedEnd } from '../assess/splice-end.ts';

const forms: Readonly<Record<string, string>> = {
  eye: 'eye', lug: 'lug', hook: 'hook', bare: 'bare end', knot: 'knot', 'end-to-end': 'end-to-end splice', unstated: 'not given', unknown: 'cannot be read',
};

export const formWords = (form: string): string => forms[form] ?? form;

/** How an end is made, in a few words: `eye, tube thimble, bury 46 cm, temporary`. */
export function endWords({ facts }: AssessedEnd): string {
  const words = [formWords(facts.form)];
  if (facts.thimble !== undefined) words.push(facts.thimble === 'sleeve' ? 'sleeve' : `${facts.thimble} thimble`);
  if (facts.bury !== undefined) words.push(`bury ${show(writtenValue(facts.bury))}`);
  if (facts.holds !== undefined) words.push(`holds ${show(writtenValue(facts.holds))}`);
  if (facts.locked) words.push('locked');
  if (facts.tucked) words.push('tucked');
  if (facts.stitched) words.push('stitched');
  if (facts.temporary) words.push('temporary');
  return words.join(', ');
}
