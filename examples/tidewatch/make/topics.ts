import type { Topic } from "./author.ts";
import { cabinetPanels } from "./cabinet-panels.ts";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldDeviceTypes } from "./playfield-device-types.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldPanel } from "./playfield-panel.ts";
import { playfieldRubbers } from "./playfield-rubbers.ts";
import { playfieldSwitches } from "./playfield-switches.ts";
import { playfieldWalls } from "./playfield-walls.ts";
import { poses } from "./poses.ts";

/** Every topic of the machine. A new topic file is added here and nowhere else. */
export const TOPICS: readonly Topic[] = [
  playfieldPanel,
  cabinetPanels,
  poses,
  playfieldWalls,
  playfieldRubbers,
  playfieldDeviceTypes,
  playfieldSwitches,
  playfieldLamps,
  mechanismTypes,
  mechanisms,
];
