export { deepEqual } from "./deep-equal.ts";
export { NestedQuery } from "./nested-query.ts";
export { Query } from "./query.ts";
export { sameMembers } from "./same-members.ts";
export { SharedMemory } from "./shared-memory.ts";
