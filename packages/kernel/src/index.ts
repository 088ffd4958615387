export { compareText } from "./order.ts";
export { roundTo, roundUpTo, toMicrometres } from "./quantise.ts";
export { deepEqual, Query } from "./remember/index.ts";
