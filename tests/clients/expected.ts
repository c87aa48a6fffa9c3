/** What every client must show of the example rigs: one place to change when an example does. */
export const expected = {
  rig: 'plover.rig',
  /** The date that every client judges on, so that a screenshot of today equals one of next year. */
  asOf: '2026-06-22',
  finding: {
    code: 'bury-too-short',
    /** The words of the line that the squiggle stands under. */
    under: /bury/,
    message: /bury[^\n]*\bd\b[^\n]*below/,
  },
  hover: {
    line: /^\s*carries\s+main/,
    word: 'carries',
    answer: /\d(?:[.,]\d+)?\skN/,
  },
  /** An editor draws its spaces as no-break spaces. */
  sheet: /\d(?:[.,]\d+)?\skN/,
  /** Words of the example that a reader should see in colours of their own. */
  colours: { comment: /^#/, block: /^winch$/, unit: /^kN$/, string: /^"/ },
} as const;
