/** Slack for comparing computed numbers, far below any figure that is shown: relative, and absolute (SI) around zero. */
const slack = 1e-9;
const nothing = 1e-12;

const near = (a: number, b: number): boolean => Math.abs(a - b) <= Math.max(nothing, slack * Math.max(Math.abs(a), Math.abs(b)));

/** a < b by more than rounding noise: 72 d of 10 mm line is not below 720 mm. */
export const isBelow = (a: number, b: number): boolean => a < b && !near(a, b);
export const isAbove = (a: number, b: number): boolean => isBelow(b, a);
export const isNear = near;
