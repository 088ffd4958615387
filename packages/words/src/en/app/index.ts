import { common } from "./common.ts";
import { session } from "./session.ts";
import { shell } from "./shell.ts";
import { start } from "./start.ts";

/** All words of the app, by section. */
export const app = { common, session, shell, start };
