const mm = (value: number): string => `${Number(value.toFixed(1))} mm`;
const round2 = (value: number): number => Number(value.toFixed(2));
const plain = (value: number): string => String(Number(value.toPrecision(9))).replace("-", "−");

/** Screws over the drawing of a panel, and the screen at the bench. */
export const screws = {
  map: (panel: string, side: string) =>
    `Screws of ${panel}, ${side}. Arrow keys push the drawing, plus and minus enlarge it, comma and point go from step to step, space plays the order, T turns the panel over.`,
  steps: "Steps",
  findStep: "Number or name of a step",
  noSteps: (text: string) => `No step is called “${text}”.`,
  screws: (n: number) => (n === 1 ? "1 screw" : `${n} screws`),
  count: (at: number, of: number) => `${at} / ${of}`,
  stepOf: (at: number, of: number, title: string) => `Step ${at} of ${of}: ${title}`,
  times: (n: number) => `${n} ×`,
  play: {
    title: "Play the order of assembly",
    start: "Play (space)",
    pause: "Pause (space)",
    back: "Step before (,)",
    forward: "Next step (.)",
    slider: "Step",
    speed: "Speed",
    times: (n: number) => `${n} ×`,
  },
  bar: {
    title: "Panel and view",
    list: "List of steps",
    fit: "Show the whole panel (0)",
    fitStep: "Show what the step is about (F)",
    larger: "Larger (+)",
    smaller: "Smaller (−)",
    bench: "This step on the screen at the bench",
    fromTop: "Seen from the top",
    fromTopHint:
      "Off: the underside as the builder sees it, mirrored left to right. On: as if one looked through the panel from the top.",
  },
  onBench: "This step is done on a bench of its own: nothing of it goes into a panel.",
  onNoPanel: "This step is about no panel.",
  elsewhere: (panel: string, side: string) => `This step is done on ${panel}, ${side}.`,
  empty:
    "No step of assembly has been derived yet. Steps come from mechanisms, boards, fasteners and harnesses; place fasteners on the panel, or say in a mechanism type how it is screwed down.",
  toFasteners: "Open the table of fasteners",
  toSteps: "In Steps",
  timesDone: (n: number) => `${n} times for one machine`,
  caution: "Beware:",
  screwsHeading: "Screws",
  types: "Types of screws",
  allTypes: "All types of the machine",
  typeSize: (thread: string, diameterMm: number, lengthMm: number, drive: string) =>
    [thread === "" ? `⌀ ${mm(diameterMm)}` : thread, lengthMm > 0 ? mm(lengthMm) : "", drive]
      .filter(Boolean)
      .join(" · "),
  allOfType: (n: number) => `show all ${n}`,
  sought: (here: number, all: number) =>
    `${here} of this type on this side, ${all} in the machine. They are ringed on the drawing.`,
  tools: "Tool",
  harness: "Harness",
  parts: "Parts",
  benchWork: "Work at the mechanism's bench",
  benchKinds: { build: "Build", adjust: "Adjust", cycle: "Cycle", retighten: "Tighten again" },
  gauge: (nominal: number | null, min: number | null, max: number | null, unit: string) => {
    const limits =
      min !== null && max !== null
        ? `${plain(min)} to ${plain(max)}`
        : min !== null
          ? `at least ${plain(min)}`
          : max !== null
            ? `at most ${plain(max)}`
            : "";
    const value =
      nominal === null ? limits : limits === "" ? plain(nominal) : `${plain(nominal)} (${limits})`;
    return `${value} ${unit}`.trim();
  },
  closeScrew: "Back to the step",
  purpose: "For",
  holds: "Holds",
  holdsNothing: "the panel itself or a bought part",
  step: "Step",
  noStep: "in no step",
  turn: (step: number, turn: number) => `${step}, screw ${turn} of it`,
  moments: "Driven",
  momentNames: {
    start: "started loose",
    align: "aligned",
    tighten: "tightened",
    recheck: "checked after burn-in",
  },
  washer: "Washer",
  nut: "Nut",
  threadlocker: "Threadlocker",
  threadlockerYes: "yes",
  typeTable: "Its type",
  stack: {
    title: "How it holds",
    unknown: "How it holds has not been worked out.",
    length: "Length under the head",
    flange: "Passes through",
    recess: "Head sits below the face",
    wood: "Wood there",
    woodOf: (woodMm: number, thicknessMm: number) =>
      Math.abs(woodMm - thicknessMm) < 0.05 ? mm(woodMm) : `${mm(woodMm)} of ${mm(thicknessMm)}`,
    engaged: "Thread that holds",
    engagedOf: (engagedMm: number, leastMm: number, where: string) =>
      leastMm > 0 ? `${mm(engagedMm)} ${where}, at least ${mm(leastMm)}` : `${mm(engagedMm)} ${where}`,
    holdsIn: { wood: "in wood", nut: "in its nut", tapped: "in a tapped hole", nothing: "in nothing" },
    margin: "Point to the far face",
    goesThrough: "is to go through",
    comesOut: (by: number) => `comes out by ${mm(by)}`,
    hole: "Hole to drill",
    noHole: "none",
    holeOf: (
      kind: "pilot" | "clearance",
      diameterMm: number,
      depthMm: number | null,
      allowedMm: readonly [number, number] | null,
    ) =>
      `${kind === "pilot" ? "pilot" : "clearance"} ⌀ ${round2(diameterMm)} mm, ${
        depthMm === null ? "right through" : `${mm(depthMm)} deep`
      }${allowedMm === null ? "" : `; the table allows ${round2(allowedMm[0])} to ${round2(allowedMm[1])} mm`}`,
    drawing: (lengthMm: number, flangeMm: number, woodMm: number) =>
      `A screw of ${mm(lengthMm)} through ${mm(flangeMm)} into ${mm(woodMm)} of wood.`,
  },
  reach: {
    title: "How it is reached",
    unknown: "Whether a tool reaches it has not been worked out.",
    driver: "Tool",
    noTool: "the shop has none that fits",
    inWay: "In its way",
    free: "nothing",
    nutDriver: "At the nut",
    nutInWay: "In the way there",
    comesOff: "Off first, for service",
    nothingOff: "nothing has to come off",
    own: "What it holds is itself in the way: it can never be driven once that is in place.",
  },
  bench: {
    title: "Bench",
    leave: "Leave the bench screen",
    place: "Place",
    all: "All steps",
    stepOf: (at: number, of: number) => `Step ${at} of ${of}`,
    doneOf: (done: number, of: number) => `${done} of ${of} ticked`,
    planned: (clock: string) => `planned ${clock}`,
    back: "Back",
    next: "Done, next",
    last: "Done",
    done: "Done",
    kept: "Ticks and times are kept on this device only, until its tab is closed; nobody else sees them.",
    empty: "There are no steps yet: nothing in this book is mounted, screwed or wired.",
    nothingHere: (place: string) => `${place} has no steps in the plan of a usual day.`,
  },
};
