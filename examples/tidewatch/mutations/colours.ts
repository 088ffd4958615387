import { most, ofNet, only, some, wiresOf } from "./about.ts";
import type { Mutation } from "./mutation.ts";

export const colours: readonly Mutation[] = [
  {
    name: "the longest lamp feed, in green-and-yellow",
    rule: "colour-earth",
    plan: (sound) => {
      const wire = most(
        wiresOf(sound).filter(({ netClass }) => netClass === "lamp"),
        ({ finishedMm }) => finishedMm,
      );
      return {
        victim: [wire.id, wire.netId],
        change: (edit) => edit.set("nets", { id: wire.netId }, { colour: "GNYE" }),
        follows: [only("colour-earth", ofNet(sound, wire.netId))],
      };
    },
  },
  {
    name: "the neutral with the longest wire, in the colour of the line",
    rule: "mains-colour",
    plan: (sound) => {
      const wire = most(
        wiresOf(sound).filter(
          ({ netId, netClass }) => netClass === "mains" && sound.machine.nets.get(netId)?.volts === 0,
        ),
        ({ finishedMm }) => finishedMm,
      );
      const line = wiresOf(sound).find(
        ({ netId, netClass }) => netClass === "mains" && sound.machine.nets.get(netId)?.volts !== 0,
      );
      const own = ofNet(sound, wire.netId);
      return {
        victim: [wire.id, wire.netId],
        change: (edit) => edit.set("nets", { id: wire.netId }, { colour: line?.colour ?? "" }),
        // Line and neutral lie side by side in their housings.
        follows: [only("mains-colour", own), some("colour-alike", own)],
      };
    },
  },
  {
    name: "the longest wire of a coil, in a colour that its reel does not come in",
    rule: "colour-not-stocked",
    plan: (sound) => {
      const wire = most(
        wiresOf(sound).filter(({ netClass }) => netClass === "coil"),
        ({ finishedMm }) => finishedMm,
      );
      return {
        victim: [wire.id],
        change: (edit) => edit.set("nets", { id: wire.netId }, { colour: "PK" }),
        follows: [only("colour-not-stocked", ofNet(sound, wire.netId))],
      };
    },
  },
];
