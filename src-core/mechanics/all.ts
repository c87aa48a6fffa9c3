// Importing this file registers every calculation.
import './drum-calculations.ts';
import './line-calculations.ts';
import './splice-calculations.ts';
import './pull-calculations.ts';
