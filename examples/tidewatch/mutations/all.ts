import { access } from "./access.ts";
import { ball } from "./ball.ts";
import { boards } from "./boards.ts";
import { bundles } from "./bundles.ts";
import { clash } from "./clash.ts";
import { coils } from "./coils.ts";
import { colours } from "./colours.ts";
import { contacts } from "./contacts.ts";
import { currents } from "./currents.ts";
import { earth } from "./earth.ts";
import { fit } from "./fit.ts";
import { lamps } from "./lamps.ts";
import type { Mutation } from "./mutation.ts";
import { nets } from "./nets.ts";
import { order } from "./order.ts";
import { outside } from "./outside.ts";
import { panels } from "./panels.ts";
import { parts } from "./parts.ts";
import { program } from "./program.ts";
import { protection } from "./protection.ts";
import { routes } from "./routes.ts";
import { supplies } from "./supplies.ts";
import { threads } from "./threads.ts";

/** Faults of currents, fuses, coils, lamps, supplies and earth. */
export const ELECTRICAL: readonly Mutation[] = [
  ...protection,
  ...coils,
  ...currents,
  ...supplies,
  ...lamps,
  ...earth,
];

/** Faults of bundles, contacts, colours, nets, routes, and of what the program counts on. */
export const WIRING: readonly Mutation[] = [
  ...bundles,
  ...contacts,
  ...colours,
  ...nets,
  ...routes,
  ...program,
];

/** Faults of screws, of what stands in whose way, of the tool's room, of the ball's ways and of the order of work. */
export const FASTENING: readonly Mutation[] = [...fit, ...threads, ...clash, ...access, ...ball, ...order];

/** Faults of what the machine is made of, and of what the shop knows of its prices. */
export const MAKING: readonly Mutation[] = [...boards, ...parts, ...outside, ...panels];
