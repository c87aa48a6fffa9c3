// Importing this file registers every calculation on the strength of a line.
import './breaking-from-working-limit.ts';
import './cut-strand-share.ts';
import './fibre-strength.ts';
import './length-of-diameters.ts';
import './overload-limit.ts';
import './strength-after-abrasion.ts';
import './strength-after-cut-strands.ts';
import './strength-after-losses.ts';
import './strength-after-outdoor-time.ts';
import './strength-of-knot.ts';
import './strength-of-splice.ts';
import './wet-strength.ts';
import './working-limit-from-breaking.ts';
