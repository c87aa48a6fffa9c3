// Prints every published number beside what our calculation makes of it, and counts the documents behind them.
import { everyCheck, isNamed } from '../published/named-checks.ts';
import { differenceText } from '../../src-core/papers/reference-calculations.ts';
import { printSource } from '../../src-core/trade/source.ts';

const checks = [...everyCheck()].sort((a, b) => (a.calculation < b.calculation ? -1 : a.calculation > b.calculation ? 1 : 0));
const rows = [['calculation', 'expected', 'got', 'difference', 'source'], ...checks.map((c) => [c.calculation, c.expected, c.got, `${differenceText(c)}${c.within ? '' : ', TOO MUCH'}`, printSource(c.source)])];
const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
for (const row of rows) console.log(row.map((cell, column) => (column === row.length - 1 ? cell : cell.padEnd(widths[column]!))).join('  '));

const named = checks.filter((c) => isNamed(c.source));
const outside = checks.filter((c) => !c.within).length;
console.log(`\n${checks.length} numbers from ${new Set(checks.map((c) => c.source.key)).size} sources; ${named.length} of them from ${new Set(named.map((c) => c.source.key)).size} named documents.`);
console.log(outside === 0 ? 'Every one is as near as the rounding of its source allows.' : `${outside} differ by more than that.`);
process.exitCode = outside === 0 ? 0 : 1;
