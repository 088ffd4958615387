import { checks } from "./checks.ts";
import { common } from "./common.ts";
import { faults } from "./faults.ts";
import { session } from "./session.ts";
import { shell } from "./shell.ts";
import { start } from "./start.ts";

/** All words of the app, by section. */
export const app = { checks, common, faults, session, shell, start };
