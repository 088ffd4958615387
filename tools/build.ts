/**
 * Bundles the server for running: `dist/server/main.mjs` and the thread beside it. Also packs the files of the built app,
 * so that nobody waits for that either.
 */
import { join } from "node:path";
import { bundleServer } from "./bundle-server.ts";
import { precompress } from "./precompress.ts";

const root = join(import.meta.dirname, "..");
await bundleServer(join(root, "dist/server"));
await precompress(join(root, "packages/web/dist"));
