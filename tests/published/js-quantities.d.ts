// The library brings no types of its own; this is the part of it that the tests use.
declare module 'js-quantities' {
  interface Quantity {
    readonly scalar: number;
    to(unit: string): Quantity;
  }
  export default function Qty(text: string): Quantity;
}
