/** Cautions that belong to the work on a sheet. */
export const cautions = {
  heading: "Caution",
  crimp:
    "Crimp tools and cutters trap fingers; wire ends fly. Wear eye protection. Use the die named on the sheet.",
  mains:
    "This harness carries mains voltage. It is designed, checked and connected only as a licensed electrician and the local codes allow; nothing on this sheet replaces them.",
  energised:
    "Test only with the harness unplugged from every supply, board and coil, and with every supply off.",
  mainsMachine:
    "Mains is inside. Unplug before you open or touch anything; work on it only as a licensed electrician and the local codes allow; nothing on this sheet replaces them.",
  coilSupply: (supplies: string) =>
    `${supplies}: above 42.4 V DC, which may shock. Cover, interlock and label it; switch it off before you reach in; defer to local codes and a licensed electrician.`,
  stored: (supplies: string) =>
    `Stored charge stays after switching off: ${supplies}. Wait, discharge through a resistor, measure, and only then touch; defer to local codes and a licensed electrician.`,
  filter: "capacitors of the mains filter",
  earth:
    "Protective earth: green-yellow only, nothing left off. After any work on it the bond is tested before power; defer to local codes and a licensed electrician.",
  pull: "Pull tests throw the contact and the wire end: eye protection, and nobody in the line of the pull.",
  solder: "Hot iron and flux fumes: extraction on, hands washed afterwards.",
} as const;
