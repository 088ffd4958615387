/** Hazards of a machine as the service book tells them; each defers to local codes and a licensed electrician. */
export const serviceBookSafety = {
  title: "Safety first",
  hint: "Read this page before you open the machine. The same cautions stand again wherever they can bite.",
  defer:
    "Local codes come first. What they reserve, and what you are not sure of, is work for a licensed electrician.",
  mayTitle: "What you may do, and where it ends",
  may: "You may, with the plug out",
  mayNot: "For a licensed electrician",
  mayList: [
    "look, clean, wiggle, reseat connectors",
    "measure resistance",
    "change fuses for the same kind, lamps, switches, coils, mechanisms and boards that do not carry mains",
    "set gaps and tighten screws",
    "with the plug in again and hands away: the tests that the book gives to the owner",
  ],
  mayNotList: [
    "anything on mains: cord, inlet, filter, switch, mains fuses' holders and wires, inputs of supplies",
    "protective earth, when it was taken off or looks damaged",
    "measuring voltage with covers off near mains",
    "tests of earth bond and insulation",
    "a machine that gave a shock, smells burnt or was wet: plug out, and leave it out",
  ],
  hazard: "Hazard",
  hazards: {
    mains: {
      title: "Mains voltage",
      says: "Mains voltage inside can kill. Pull the plug before you open or touch anything, and keep it in your sight. A switch that is off does not make it safe.",
    },
    stored: {
      title: "Stored charge",
      says: "Charge stays after switching off. Plug out, wait, then measure between plus and return; touch nothing before the meter shows next to nothing.",
    },
    volts: {
      title: "Coil voltage",
      says: "The coil supply is high enough to give a shock. Plug out and let it run down before you reach in. The switch at the door is a help, not a lock.",
    },
    earth: {
      title: "Protective earth",
      says: "The green-yellow wires keep metal safe to touch. Put every one back where it was, with its washer. After any work on them the bond is tested before the plug goes in.",
    },
    moving: {
      title: "Coils and motors move",
      says: "Coils and motors strike hard and without warning. Plug out before fingers go near; hands and hair away when a test moves them.",
    },
    hot: {
      title: "Hot parts",
      says: "Coils get hot enough to burn, above all one that stayed on. One that stays on: switch off at once. Let it cool before you touch it.",
    },
    raised: {
      title: "Raised playfield",
      says: "The playfield is heavy and falls like a lid. Set the prop and latch it before hands go under; push at it to see that it holds.",
    },
    folded: {
      title: "Folding the backbox",
      says: "The backbox is heavy. Two people fold it; keep fingers and wires out of the hinge.",
    },
    glass: {
      title: "Glass",
      says: "Glass bursts when a corner is hit. Gloves, two hands, eye protection; stand it on its long edge on something soft.",
    },
    springs: {
      title: "Springs",
      says: "Springs under tension fly off. Eye protection; let the tension off with pliers before a hook comes free.",
    },
    solder: {
      title: "Soldering",
      says: "The iron burns and flux fumes harm. Plug out, fresh air, eye protection, hands washed afterwards.",
    },
  },
} as const;
