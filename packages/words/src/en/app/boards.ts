const number = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;
const minutes = (value: number): string =>
  value < 0.95
    ? `${number(value * 60, 0)} s`
    : value < 600
      ? `${number(value, value < 100 ? 1 : 0)} min`
      : `${number(value / 60, 1)} h`;

/** Boards: register, stuffing, soldering, tests. */
export const boards = {
  tabs: { register: "Register", solder: "Soldering", tests: "Tests" },
  empty:
    "No board is in the machine yet. A kind of board has its size and revision; boards are placed in Layout or in their table:",
  print: "Sheets to print:",
  findings: "What is wrong with them",
  noFindings: "Nothing was found.",

  registerTitle: "Register of boards",
  registerAbout: (kinds: number, boards: number, joints: number) =>
    `${n(boards, "board", "boards")} of ${n(kinds, "kind", "kinds")} in one machine, ${number(joints, 0)} joints to solder.`,
  kind: "Kind",
  revision: "Revision",
  count: "In one machine",
  place: "Where",
  purpose: "Purpose",
  parts: "Parts",
  joints: "Joints",
  tests: "Tests",
  comes: "Comes",
  comesHow: { stuffed: "stuffed here", bought: "bought ready", unknown: "not said" },
  noTests: "none",
  more: (count: number) => `and ${count} more`,
  address: (address: number) => `address ${address}`,
  size: "Size",
  sizeOf: (width: number, depth: number, height: number) =>
    `${number(width, 1)} × ${number(depth, 1)} mm, ${number(height, 1)} mm high`,

  noSuchKind: (id: string) => `There is no kind of board “${id}”.`,
  toRegister: "Register of boards",
  boardParts: { stuffing: "Stuffing", kit: "Kit", tests: "Tests", places: "Places" },
  facts: "Facts",
  barePart: "Bare board",
  stuffedPart: "Stuffed board",
  noPlacements:
    "No parts are placed on this kind of board: either it is bought ready, or its placements are still to be written.",

  stuffingTitle: "Stuffing",
  way: "Soldered",
  ways: { hand: "by hand", bath: "in the bath" },
  benches: "People in line",
  stage: (index: number, of: number) => `Stage ${index} of ${of}`,
  stageShort: (index: number) => `Stage ${index}`,
  upTo: (height: number | null) => (height === null ? "the tallest" : `up to ${number(height, 1)} mm high`),
  whenWords: { "before-bath": "before soldering", "after-wash": "after bath and wash" },
  benchOf: (bench: number) => `person ${bench}`,
  busiest: "Busiest person",
  busiestProven: "no split is better",
  busiestGap: (bound: string) => `no split is below ${bound}`,
  perBoard: "One board",
  seconds: (value: number) => minutes(value / 60),
  pictureOf: (name: string, stage: number, parts: number) =>
    `${name}, stage ${stage}: ${n(parts, "part", "parts")} of this stage are dark; the list beside it names them in order`,
  previous: "Stage before",
  next: "Next stage",
  play: "Play",
  pause: "Stop",
  legend: {
    now: "goes in now",
    before: "is in already",
    later: "comes later",
    polar: "the right way round matters",
    washed: "after the wash",
  },
  stepList: "In this order",
  box: (index: number) => `Box ${index}`,
  polarity: "Way round",
  eitherWay: "either way",
  hidden: "joints hidden below parts",
  masked: (holes: number) => `mask ${n(holes, "hole", "holes")}`,
  inBox: (reference: string, box: number) => `${reference}, box ${box}`,
  stageSays: (parts: number, time: string) => `${n(parts, "part", "parts")}, ${time}`,
  allParts: "All parts of this board",
  reference: "Reference",
  part: "Part",
  value: "Value",
  height: "Height",
  mm: (value: number) => `${number(value, 1)} mm`,

  kitTitle: (boards: number) => `Kit for ${n(boards, "board", "boards")}`,
  kitFor: "Boards in the batch",
  boxNo: "Box",
  bareBox: "boards",
  needed: "Needed",
  extra: "For losses",
  total: "To lay out",
  each: "On each",
  packs: "Packs",
  packOf: (packs: number, size: number) => `${packs} × ${number(size, 0)}`,
  noPack: "no price known",

  testsTitle: "Tests of boards",
  testsAbout: "Least risk first, with limits from the design.",
  noBoardTests: "This kind of board has no tests yet. They stand in the table:",
  noTestsAtAll: "No kind of board has tests yet. A test says what is done, with its limits:",
  order: "No.",
  test: "Test",
  do: "What to do",
  judged: "Judged",
  kinds: { visual: "by eye", "yes-no": "yes or no", measure: "measured", sequence: "sequence" },
  limits: "Limits",
  limitsOf: (min: number | null, max: number | null, unit: string) =>
    min === null
      ? max === null
        ? ""
        : `at most ${number(max, 4)} ${unit}`
      : max === null
        ? `at least ${number(min, 4)} ${unit}`
        : `${number(min, 4)} to ${number(max, 4)} ${unit}`,
  nominal: (value: number, unit: string) => `nominally ${number(value, 4)} ${unit}`,
  noLimits: "no limits",
  ofKind: "Kind of board",
  allKinds: "All kinds",

  solderTitle: "By hand or in the solder bath",
  solderAbout:
    "One session: boards of several kinds share the set-up of the bath. Minutes are of work, of one person. The times are the shop's; try others here, the book stays as it is.",
  noSolder: "No kind of board has parts on it, so that there is nothing to solder.",
  session: "Boards of this session",
  machines: "Machines",
  together: (boards: number) => n(boards, "board", "boards"),
  fewerBy: (time: string) => `${time} less`,
  better: { hand: "By hand takes less work", bath: "The bath takes less work" },
  minutes,
  byHand: "By hand",
  inBath: "In the bath",
  crossing: "The bath pays from",
  crossingAt: (machines: number) => n(machines, "machine", "machines"),
  crossingBoards: (boards: number) => `${n(boards, "board", "boards")} in one session`,
  noCrossing: "at no quantity",
  noCrossingNote: "up to 10 000 machines",
  bathKinds: (kinds: string) =>
    `Into the bath go: ${kinds}. The others are soldered by hand within the same session.`,
  allInBath: "All kinds of this session go into the bath.",
  minutesTable: "Minutes of this session",
  entry: "Work",
  entries: {
    setup: "Set-up",
    stuff: "Stuffing",
    solder: "Soldering, dipping and clipping",
    mask: "Masking",
    wash: "Washing",
    mend: "Mending and hidden joints",
    afterWash: "After the wash",
    total: "Together",
  },
  curveTitle: "Work against the number of machines",
  curveChart: (crossing: string) =>
    `Minutes of work by hand and in the bath against the number of machines; they cross at ${crossing}. The table below has the figures.`,
  curveHand: "by hand",
  curveBath: "in the bath",
  curveCross: (machines: number) => `${machines}`,
  machineAxis: "machines in one session",
  hourAxis: (hours: number) => `${number(hours, 1)} h`,
  times: "Times, to try others",
  timesAsShop: "As the shop has them",
  timesChanged: (count: number) => `${n(count, "time is", "times are")} other than the shop's`,
  toSettings: "Shop settings",
  timeNames: {
    hand_joint_s: "One joint by hand",
    hand_setup_min: "Setting up for a kind by hand",
    bath_setup_min: "Lighting and cleaning the bath, each person",
    bath_kind_min: "Carriers and first board of a kind",
    bath_dip_min: "Dipping one carrier, each person",
    bath_mask_s: "Masking one hole",
    bath_wash_min: "Washing and drying one board",
    bath_touch_up_pct: "Joints mended after the bath",
    bath_hidden_s: "One hidden joint after the bath",
    bath_people: "People at the bath",
  },
  units: { s: "s", min: "min", pct: "%", people: "" },
  shiftsTitle: "How sure it is",
  shiftsAbout: (pct: number) =>
    `From how many machines the bath pays, when a time is ${number(pct, 0)} % shorter or longer than thought.`,
  shiftNames: { hand: "All times by hand", bath: "All times of the bath" },
  shorter: (pct: number) => `${number(pct, 0)} % shorter`,
  longer: (pct: number) => `${number(pct, 0)} % longer`,
  never: "never",
  time: "Time",
  aloneTitle: "Each kind by itself",
  aloneAbout: "From how many boards of one kind the bath pays, when nothing else is soldered with it.",
  alone: "Alone, from",
  boardsOf: (count: number) => n(count, "board", "boards"),
  caution:
    "Molten solder, flux fumes and solvent: extraction, eye and skin protection, no water near the bath; follow the makers' data sheets and local rules.",
};
