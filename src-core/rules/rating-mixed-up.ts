import { isBelow } from '../base/compare.ts';
import { statementOf } from '../assess/facts.ts';
import { newNameOf, quantityOf, type BoundBlock, type BoundQuantity } from '../model/bound.ts';
import { textAt } from './force-text.ts';
import { defineRule } from './rule.ts';

interface Ratings {
  readonly what: string;
  readonly working: BoundQuantity;
  readonly breaking: BoundQuantity;
}

const written = (quantity: BoundQuantity): string => textAt(quantity.place);

/** Every pair of figures that a block gives for one thing: gear, line, or a vehicle's points. */
function ratings(block: BoundBlock): Ratings[] {
  const pairs: { what: string; working: BoundQuantity | undefined; breaking: BoundQuantity | undefined }[] = [];
  const value = (head: string): BoundQuantity | undefined => {
    const statement = statementOf(block, head);
    return statement === undefined ? undefined : quantityOf(statement.values, head);
  };
  pairs.push({ what: `\`${block.name ?? block.definition.head}\``, working: value('wll') ?? value('working'), breaking: value('breaking') });
  for (const statement of block.statements) {
    if (statement.definition.head !== 'point') continue;
    pairs.push({ what: `point \`${newNameOf(statement.values, 'name')?.name ?? ''}\``, working: quantityOf(statement.values, 'rated'), breaking: quantityOf(statement.values, 'breaking') });
  }
  return pairs.filter((pair): pair is Ratings => pair.working !== undefined && pair.breaking !== undefined);
}

export const ratingMixedUp = defineRule({
  name: 'rating-mixed-up',
  on: 'block',
  severity: 'error',
  summary: 'A working limit is not below the breaking strength of the same thing.',
  why: 'the two figures stand in each other\'s place, and what is judged by them would be judged five times too kindly',
  source: 'arithmetic: a working limit is the breaking strength over a design factor above 1',
  citesRating: true,
  bad: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   39 t
  breaking  6.5 t
}
`,
  good: `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   6.5 t
  breaking  39 t
}
`,
  check(block, judge) {
    for (const { what, working, breaking } of ratings(block)) {
      judge.holds(isBelow(working.value, breaking.value), () => ({
        place: working.place,
        message: `working limit of ${what} is ${written(working)}, not below its breaking strength of ${written(breaking)}`,
        help: 'read both again from the tag; the working limit is the lower figure',
        related: [{ place: breaking.place, message: 'its breaking strength' }],
        fixes: [{ title: 'Swap the two figures', edits: [{ place: working.place, text: written(breaking) }, { place: breaking.place, text: written(working) }] }],
      }));
    }
  },
});
