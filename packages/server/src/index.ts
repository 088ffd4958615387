export type { Reach, ServerDeps, ServerPaths } from "./deps.ts";
export type { AppEnv } from "./http/bind.ts";
export type { Place } from "./http/place.ts";
export { createServer, type PinwrightServer } from "./server.ts";
