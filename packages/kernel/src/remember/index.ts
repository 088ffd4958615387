export { deepEqual } from "./deep-equal.ts";
export { Query } from "./query.ts";
