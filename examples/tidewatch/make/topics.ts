import type { Topic } from "./author.ts";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldDeviceTypes } from "./playfield-device-types.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldPanel } from "./playfield-panel.ts";
import { playfieldSwitches } from "./playfield-switches.ts";

/** Every topic of the machine. A new topic file is added here and nowhere else. */
export const TOPICS: readonly Topic[] = [
  playfieldPanel,
  playfieldDeviceTypes,
  playfieldSwitches,
  playfieldLamps,
  mechanismTypes,
  mechanisms,
];
