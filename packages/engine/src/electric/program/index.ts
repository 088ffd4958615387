export { checkProgram } from "./checks/index.ts";
export { type Conductors, conductors } from "./conductors.ts";
export { type ProgramPoint, programMap, programMapText } from "./map.ts";
export type { Control } from "./trace.ts";
export { type Traced, traces } from "./traces.ts";
