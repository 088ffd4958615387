import type { Topic } from "./author.ts";
import { cablesTopic } from "./cables.ts";
import { boardsTopic } from "./electrics-boards.ts";
import { harnessesTopic } from "./harnesses.ts";
import { wireBus } from "./wiring-bus.ts";
import { wireCoils } from "./wiring-coils.ts";
import { wireHead } from "./wiring-head.ts";
import { INLINES } from "./wiring-inlines.ts";
import { Wiring } from "./wiring-kit.ts";
import { wireLamps } from "./wiring-lamps.ts";
import { wirePower } from "./wiring-power.ts";
import { wireSwitches } from "./wiring-switches.ts";

const w = new Wiring();
w.inline(...INLINES);
const { hops, terminated } = wireBus(w);
wirePower(w);
wireCoils(w);
wireLamps(w);
wireSwitches(w);
wireHead(w);

/** Nets, ends, in-line connectors, and what the designer decided about their order. */
export const wiring: Topic = w.topic();
/** Boards, with address and termination as the bus runs. */
export const boards: Topic = boardsTopic(terminated);
export const cables: Topic = cablesTopic(hops);
export const harnesses: Topic = harnessesTopic(w.harnessIds);
