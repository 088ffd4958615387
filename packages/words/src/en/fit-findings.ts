import type { RuleWords } from "../finding.ts";

const TYPES = {
  wood: { softwood: "softwood", hardwood: "hardwood", any: "any panel" },
  hole: { pilot: "pilot hole", clearance: "clearance hole" },
} as const;

/** Wording of the rules of how fasteners hold: length, wood, pilot holes, edges, threadlocker, and look-alike screws. */
export const fitFindings: Readonly<Record<string, RuleWords>> = {
  "screw-no-wood": {
    title: "A fastener has nothing to hold in",
    says: "{0} ({type}): {where}, {1}. Fasteners alike: {count}.",
    values: {
      where: {
        outside: "it lies outside its panel",
        panel: "its panel is no wood",
        hole: "its thread lies over a hole",
        pocket: "a pocket leaves no wood under it",
      },
    },
    why: "It turns without holding, and what it holds comes off.",
    todo: "Move it or the hole; or give it a nut or a tapped hole; or say of what wood the panel is.",
  },
  "screw-through": {
    title: "A screw comes through, or nearly",
    says: "{0} ({type}) at {1}: it goes {reach_mm} mm deep, {face} is at {wood_mm} mm and {margin_mm} mm are to be left; it {comes}. Longest that fits: {longest_mm} mm. Fasteners alike: {count}.",
    values: {
      face: { played: "the playing surface", far: "the far face", pocket: "the floor of a pocket" },
      comes: { out: "comes out", near: "comes too near" },
    },
    why: "A point that comes through lifts the face, catches the ball or cuts a hand; near it, a pilot hole breaks out.",
    todo: "Take a shorter screw, put a washer or a thicker flange under its head, or move it off the pocket.",
  },
  "screw-short": {
    title: "A screw has too little thread in the wood",
    says: "{0} ({type}) in {1}: {length_mm} mm long, {flange_mm} mm of it above the wood; {engaged_mm} mm hold, {least_mm} mm are wanted. Shortest that holds: {shortest_mm} mm. Fasteners alike: {count}.",
    why: "It pulls out when the machine shakes.",
    todo: "Take a longer screw where the wood allows it, or more of them; or move it where more wood is.",
  },
  "screw-edge": {
    title: "A screw is near an edge or a hole",
    says: "{0} ({type}): {distance_mm} mm from {side} {1}, {least_mm} mm are wanted. Fasteners alike: {count}.",
    values: { side: { outline: "the outline of", cutout: "the side of" } },
    why: "The wood splits or breaks out beside it, and it no longer holds.",
    todo: "Move the screw, turn what it holds, or take a thinner screw.",
  },
  "screw-spacing": {
    title: "Two screws are near each other",
    says: "{0} and {1}: {distance_mm} mm apart, {least_mm} mm are wanted.",
    why: "The wood between them splits, and neither holds.",
    todo: "Move one of them, or take thinner screws.",
  },
  "screw-meets": {
    title: "Two fasteners meet inside the panel",
    says: "{0} and {1}: {distance_mm} mm apart, {least_mm} mm are wanted; they share {shared_mm} mm of the panel's thickness.",
    why: "The second one that is driven strikes the first, or breaks into its hole.",
    todo: "Move one of them, or take shorter screws.",
  },
  "pilot-size": {
    title: "A hole does not suit its screw",
    says: "{0}: {hole} of {hole_mm} mm in {wood}; the table allows {least_mm} to {most_mm} mm. Fasteners: {count}.",
    values: TYPES,
    why: "In a hole too small the wood splits or the screw breaks, or it does not go through; in one too large it does not hold.",
    todo: "Correct the hole of the type, or leave it blank: the table's is used.",
  },
  "nut-missing": {
    title: "A machine screw has nothing to screw into",
    says: "{0} ({type}, {thread}) in {1}: neither a nut nor the depth of a tapped hole is given. Fasteners alike: {count}.",
    why: "Nobody knows what it holds in, so its length cannot be checked.",
    todo: "Give its nut, or the depth of the tapped hole beyond the panel.",
  },
  "nut-thread": {
    title: "A nut does not fit its screw",
    says: "{0}: {type} has {thread}, {1} has {nut_thread}. Fasteners alike: {count}.",
    why: "They cannot be screwed together.",
    todo: "Choose the nut or the screw that fits.",
  },
  "nut-short": {
    title: "A screw is too short for its nut",
    says: "{0} ({type}), nut {1}: {length_mm} mm long through a stack of {stack_mm} mm; {engaged_mm} mm hold, {least_mm} mm are wanted. Shortest that holds: {shortest_mm} mm. Fasteners alike: {count}.",
    why: "A nut that is not filled strips its thread.",
    todo: "Take a longer screw or a thinner stack.",
  },
  "tapped-short": {
    title: "A screw has too little thread in its tapped hole",
    says: "{0} ({type}) in {1}: {length_mm} mm long through a stack of {stack_mm} mm; {engaged_mm} mm hold, {least_mm} mm are wanted. Shortest that holds: {shortest_mm} mm; the hole is {tapped_mm} mm deep. Fasteners alike: {count}.",
    why: "The thread strips when it is tightened.",
    todo: "Take a longer screw, or a deeper hole.",
  },
  "tapped-bottom": {
    title: "A screw meets the bottom of its hole",
    says: "{0} ({type}) in {1}: {length_mm} mm long through a stack of {stack_mm} mm into a tapped hole {tapped_mm} mm deep. Longest that fits: {longest_mm} mm. Fasteners alike: {count}.",
    why: "It is tight before its head clamps anything, or it breaks through.",
    todo: "Take a shorter screw, a washer, or a deeper hole.",
  },
  "threadlocker-wood": {
    title: "Threadlocker on a screw in wood",
    says: "{0}: {1} has threadlocker and holds in wood. Fasteners alike: {count}.",
    why: "It does not set without metal on both sides; it only makes the wood slippery.",
    todo: "Take a type without threadlocker.",
  },
  "threadlocker-plastic": {
    title: "Threadlocker beside a plastic",
    says: "{0} ({type}) has threadlocker and holds {1}, a plastic. Fasteners alike: {count}.",
    why: "Threadlocker cracks clear and moulded plastics, often weeks later.",
    todo: "Take a type without threadlocker, or a nut that locks by itself.",
  },
  "head-through": {
    title: "A head, washer or nut does not suit its hole",
    says: "{0} ({type}): {part} of {part_mm} mm over a hole of {hole_mm} mm, {1}. Fasteners alike: {count}.",
    values: {
      part: {
        head: "head",
        washer: "washer",
        nut: "nut",
        "in-washer": "head in its washer",
        thread: "thread in its washer",
      },
    },
    why: "It slips through and holds nothing, or does not go on at all.",
    todo: "Choose a washer that suits screw and hole, or make the hole smaller.",
  },
};
