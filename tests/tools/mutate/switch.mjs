// What the copied sources ask at each place that was chosen: is it this one whose error is switched on? Where none is, it keeps
// which places were reached with values that the error would have changed. It also runs in a bundle for a page.

const MOST = 20_000;
export const ENDLESS = 'it never ends';
const here = Symbol.for('pullin.mutate');
globalThis[here] ??= {
  /** what the parent of this process asks for: `on`, `omits`, `spared`, `note` */
  asked: JSON.parse(globalThis.process?.env.PULLIN_MUTANT ?? '{"on":-1}'),
  hit: new Uint8Array(MOST),
  on: undefined,
  /** ms on the clock after which an error that is tried beside others counts as one that never ends */
  until: Infinity,
  times: 0,
};
/** One for all copies of this file that are loaded side by side. `on`: the error that is switched on, or -1. */
export const state = globalThis[here];
state.on ??= state.asked.on;

const operators = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '===': (a, b) => a === b,
  '!==': (a, b) => a !== b,
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '%': (a, b) => a % b,
  '**': (a, b) => a ** b,
};

export const isPlainOperator = (operator) => operator in operators;

function isOn(id) {
  if (state.on !== id) return false;
  if ((++state.times & 1023) === 0 && performance.now() > state.until) throw new Error(ENDLESS);
  return true;
}

/** True where the error is switched on. */
export function mutated(id) {
  if (state.on === -1) state.hit[id] = 1;
  return isOn(id);
}

export function binary(id, is, becomes, left, right) {
  if (state.on !== -1) return operators[isOn(id) ? becomes : is](left, right);
  const value = operators[is](left, right);
  if (!Object.is(value, operators[becomes](left, right))) state.hit[id] = 1;
  return value;
}

export function condition(id, becomes, value) {
  if (state.on !== -1) return isOn(id) ? becomes : value;
  if (Boolean(value) !== becomes) state.hit[id] = 1;
  return value;
}
