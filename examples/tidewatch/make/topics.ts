import { accepted } from "./accepted.ts";
import { activity } from "./activity.ts";
import type { Topic } from "./author.ts";
import { cabinetBodies } from "./cabinet-bodies.ts";
import { cabinetCutouts } from "./cabinet-cutouts.ts";
import { cabinetDevices } from "./cabinet-devices.ts";
import { cabinetFasteners } from "./cabinet-fasteners.ts";
import { cabinetPanels } from "./cabinet-panels.ts";
import { deviceBodies } from "./device-bodies.ts";
import { earthDevices } from "./earth-devices.ts";
import { headBoards } from "./electrics-head-boards.ts";
import { mechanismBoards } from "./electrics-mechanism-boards.ts";
import { nodeBoards } from "./electrics-node-boards.ts";
import { electricsParts } from "./electrics-parts.ts";
import { powerBoards } from "./electrics-power-boards.ts";
import { supplies } from "./electrics-supplies.ts";
import { families } from "./families.ts";
import { fastenerTypes } from "./fastener-types.ts";
import { mechanismBodies } from "./mechanism-bodies.ts";
import { mechanismSteps } from "./mechanism-steps.ts";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldCutouts } from "./playfield-cutouts.ts";
import { playfieldDeviceTypes } from "./playfield-device-types.ts";
import { playfieldFasteners } from "./playfield-fasteners.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldPanel } from "./playfield-panel.ts";
import { playfieldRamps } from "./playfield-ramps.ts";
import { playfieldRubbers, rubberBodies } from "./playfield-rubbers.ts";
import { playfieldSwitches } from "./playfield-switches.ts";
import { playfieldWalls } from "./playfield-walls.ts";
import { poses } from "./poses.ts";
import { windings } from "./windings.ts";
import { wireTypes } from "./wire-types.ts";
import { boards, cables, harnesses, wiring } from "./wiring.ts";

/** Every topic of the machine. A new topic file is added here and nowhere else. */
export const TOPICS: readonly Topic[] = [
  playfieldPanel,
  cabinetPanels,
  poses,
  playfieldWalls,
  playfieldRubbers,
  rubberBodies,
  playfieldRamps,
  playfieldDeviceTypes,
  deviceBodies,
  windings,
  playfieldSwitches,
  playfieldLamps,
  mechanismTypes,
  mechanismBodies,
  mechanismSteps,
  mechanisms,
  playfieldCutouts,
  fastenerTypes,
  playfieldFasteners,
  activity,
  cabinetDevices,
  cabinetBodies,
  cabinetCutouts,
  cabinetFasteners,
  earthDevices,
  families,
  wireTypes,
  nodeBoards,
  mechanismBoards,
  powerBoards,
  headBoards,
  boards,
  wiring,
  harnesses,
  cables,
  supplies,
  electricsParts,
  accepted,
];
