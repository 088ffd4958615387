const number = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const mm = (value: number): string => `${number(value, 1)} mm`;
const signed = (value: number): string =>
  `${value > 0 ? "+" : value < 0 ? "−" : "±"}${number(Math.abs(value), 2)}`;
const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Panels: sizes, cutting, fits, paint. */
export const panels = {
  tabs: { sizes: "Sizes", cutting: "Cutting", fits: "Fits", paint: "Paint" },
  empty:
    "No panel is cut from a sheet yet. Give a panel its sheet goods in the column “part” of the table of panels, and put the sheets into the shop's table of stock sheets:",
  mm,
  mm2: (value: number) => `${number(value, 2)} mm`,
  exact: (value: number) => number(value, 2),
  machines: "Machines",
  ofRun: (run: string, count: number) => `${run}: ${count}`,
  print: "Sheets to print:",
  findings: "What is wrong with them",
  noFindings: "Nothing was found.",
  accepted: "accepted",

  sizesTitle: "Sizes of the panels",
  sizesAbout:
    "What each panel is cut to, before its outline and holes are routed. Sizes that follow a thickness follow the one that was measured on the stock.",
  panel: "Panel",
  sheet: "Cut from",
  noSheet: "not cut from a sheet",
  drawn: "Drawn",
  cut: "Cut to",
  by: (width: number, height: number) => `${number(width, 1)} × ${number(height, 1)} mm`,
  differs: (dx: number, dy: number) =>
    [dx === 0 ? "" : `${signed(dx)} in x`, dy === 0 ? "" : `${signed(dy)} in y`]
      .filter((text) => text !== "")
      .join(", "),
  thickness: "Thickness",
  measured: "measured",
  nominal: "nominal",
  nominally: (value: number) => `nominally ${mm(value)}`,
  notMeasured: "not measured",
  setting: "Fence setting",
  settingOf: (direction: "x" | "y", name: string) => `${direction}: ${name}`,
  together: (count: number) => `with ${count} more`,
  tolerance: "Tolerance",
  toleranceOf: (direction: "x" | "y", minus: number, plus: number) =>
    minus === plus
      ? `${direction} ±${number(plus, 2)} mm`
      : `${direction} +${number(plus, 2)} −${number(minus, 2)} mm`,
  grain: "Grain",
  grains: { x: "along x", y: "along y", none: "any" },
  follows: (names: string) => `follows the thickness of ${names}`,
  inLayout: "in the drawing",
  inTable: "in the table",
  showAll: "Show all panels",
  noSuchPanel: (id: string) => `There is no panel “${id}” that is cut.`,

  cuttingTitle: "Cutting the sheets",
  cuttingAbout: (kerf: number) =>
    `For a table saw: every cut goes from edge to edge. The saw takes ${mm(kerf)}; that and the number of stages stand in the`,
  shopSettings: "shop's settings",
  looking: (done: number, of: number) => `Looking for a plan: sheet ${done + 1} of ${of} …`,
  stopped: "Stopped: the sheets below are planned, the others are not.",
  again: "Plan them too",
  sheets: "Sheets",
  sheetCount: (fresh: number, offcuts: number) =>
    offcuts === 0 ? String(fresh) : `${fresh} + ${n(offcuts, "offcut", "offcuts")}`,
  forMates: (sheets: number) =>
    `${n(sheets, "sheet is", "sheets are")} taken beyond the fewest, so that panels that mate are cut at one setting of the fence over the whole run.`,
  split: (names: string) =>
    `Set more than once, so that panels that mate are not all cut at one setting: ${names}.`,
  differentSettings: "Different settings of the fence",
  setups: "Times that the fence is set",
  leastSetups: (least: number) => `these patterns need at least ${least}`,
  leastSetupsMet: "these patterns need as many",
  sawTime: "At the saw",
  minutes: (minutes: number) =>
    minutes < 120 ? `${number(minutes, 0)} min` : `${number(minutes / 60, 1)} h`,
  cutCount: (count: number) => n(count, "cut", "cuts"),
  setupWork: (pattern: number, copies: number, cuts: readonly number[]) =>
    `pattern ${pattern}${copies > 1 ? ` (${copies}×)` : ""}: ${cuts.length === 1 ? "cut" : "cuts"} ${cuts.join(", ")}`,
  settingsHint:
    "In the order of the work, over all sheets: what mates is cut without the fence being moved. Press one to see its cuts.",
  atSetup: (setup: number) => `setting ${setup}`,
  unplaced: (names: string) => `No sheet is left for: ${names}. The shop's stock has too few.`,
  proven: (least: number) => `no plan needs fewer than ${least}`,
  gap: (least: number) => `a plan could need as few as ${least}; none was found`,
  leastSettings: (least: number) => `these sizes need at least ${least}`,
  leastSettingsMet: "these sizes need as many",
  used: "Of the sheets",
  usedPct: (pct: number) => `${number(pct, 0)} %`,
  usedSays: "is panel; the rest is saw dust, offcuts and waste",
  offcuts: "Offcuts worth keeping",
  noOffcuts: "none",
  offcutOf: (count: number, width: number, length: number) =>
    `${count} × ${number(width, 0)} × ${number(length, 0)} mm`,
  allSettings: "Every setting of the fence",
  cutKinds: { trim: "Trim", rip: "Rip", cross: "Cross" },
  cutHelp: {
    trim: "Trim: a first straight edge, off the factory edge",
    rip: "Rip: along the sheet's length",
    cross: "Cross: across the sheet's length",
  },
  fenceAt: (value: number) => number(value, 1),
  pattern: (index: number, copies: number) => `Pattern ${index}: ${n(copies, "sheet", "sheets")}`,
  patternTab: (index: number, copies: number) => `${index} (${copies}×)`,
  patterns: "Patterns",
  ofStock: (id: string, width: number, length: number) =>
    `${id}, ${number(width, 0)} × ${number(length, 0)} mm`,
  offcutStock: "an offcut from stock",
  drawingOf: (index: number, panels: number, cuts: number) =>
    `Pattern ${index}: ${n(panels, "panel", "panels")}, ${n(cuts, "cut", "cuts")}; the order of cutting is the list beside it`,
  order: "Order of cutting",
  orderHint: "Point at a cut, or press it, to see it in the picture. Arrow keys go on.",
  done: (names: string) => `done: ${names}`,
  cutWord: "Cut",
  panelSays: (name: string, width: number, height: number, copy: number) =>
    `${name}, ${number(width, 1)} × ${number(height, 1)} mm, number ${copy}`,
  offcut: "offcut",
  legend: {
    "panel later": "panel",
    "panel now": "done with this cut",
    "panel done": "done before",
    offcut: "offcut to keep",
    waste: "waste and trim",
    cut: "this cut",
    grain: "face grain",
  },
  tooLarge: (names: string) => `Larger than any sheet: ${names}. No plan without a larger sheet.`,
  notPlanned: "Not planned.",
  keepTitle: "When these sheets have been cut",
  keepDo: (count: number) => `Put ${n(count, "offcut", "offcuts")} into stock`,
  takeDo: "Take the sheets out of stock",
  keepAbout:
    "The offcuts of all kinds of sheet become rows of the shop's stock sheets, and counted sheets and offcuts that were used leave it. One undo takes it all back. What is planned here afterwards begins with these offcuts.",
  keepNote: (count: number, sheets: number) =>
    `Sheets cut: ${n(sheets, "sheet", "sheets")} used, ${n(count, "offcut", "offcuts")} put into stock`,
  kept: (count: number) =>
    `${n(count, "offcut is", "offcuts are")} in stock now. The plan above is for the next cutting.`,

  fitsTitle: "Fits of the box",
  fitsAbout:
    "Each gap or size that the box must come out at, from the panels that add up to it. The worst case has every panel at its limit at once; the likely spread is the root of the sum of squares, as when the errors are independent.",
  noFits:
    "No fit is asked for yet. A fit is a gap or size of the assembled box, with its limits and the panels that add up to it:",
  fit: "Fit",
  fitVerdicts: {
    good: "good, even at worst",
    likely: "likely good; at worst it is outside",
    bad: "outside, even as it is likely to come",
    open: "no limits asked for",
  },
  asked: "Asked for",
  limits: (min: number | null, max: number | null) =>
    min === null
      ? max === null
        ? "no limits"
        : `at most ${number(max, 2)} mm`
      : max === null
        ? `at least ${number(min, 2)} mm`
        : `${number(min, 2)} to ${number(max, 2)} mm`,
  middle: "As cut",
  worst: "Worst case",
  rss: "Likely (RSS)",
  range: (min: number, max: number) => `${number(min, 2)} to ${number(max, 2)} mm`,
  fitChart: (name: string, worst: string, rss: string, limits: string) =>
    `${name}: worst case ${worst}, likely ${rss}, asked for ${limits}`,
  terms: "What adds up to it",
  term: "Term",
  dimension: "Size",
  dimensions: { width: "width", height: "height", thickness: "thickness", other: "bought or measured" },
  times: "Times",
  timesOf: (times: number) => `${times < 0 ? "−" : "+"}${number(Math.abs(times), 3)}`,
  value: "Value",
  tolOf: (minus: number, plus: number) =>
    minus === plus ? `±${number(plus, 2)}` : `+${number(plus, 2)} −${number(minus, 2)}`,
  share: "Share of the spread",
  sharePct: (pct: number) => `${number(pct, 0)} %`,
  total: "Together",

  paintTitle: "Painting the cabinets",
  paintAbout: (rack: number, hours: number) =>
    `The rack holds ${n(rack, "cabinet", "cabinets")}; a working day has ${number(hours, 1)} hours. While one batch dries, also at night, the next is worked on as far as the rack has room.`,
  noCoats: "The shop has no coats yet. A coat has its minutes of work and its hours of drying:",
  batch: "Batch",
  batchOf: (index: number, cabinets: number) => `Batch ${index}: ${n(cabinets, "cabinet", "cabinets")}`,
  cabinets: "Cabinets",
  batches: "Batches",
  batchSize: (size: number, several: boolean) =>
    `of ${n(size, "cabinet", "cabinets")}${several ? ", the last may be smaller" : ""}`,
  coat: "Coat",
  worked: "work",
  drying: "drying",
  night: "night: nobody works",
  dayAxis: "working day",
  clock: (hour: number) => {
    const day = Math.floor(hour / 24 + 1e-9);
    return `day ${day + 1}, ${number(hour - 24 * day, 1)} h`;
  },
  clockHelp: "Hours are counted from the beginning of the working day.",
  lastDry: "The last is dry",
  earliest: (time: string) => `not before ${time}, however it is planned`,
  earliestMet: "no plan is earlier",
  paintChart: (batches: number, end: string) =>
    `${n(batches, "batch", "batches")} until ${end}: work and drying of each coat; the table below has the figures.`,
  coatSays: (coat: string, start: string, end: string, dry: string) =>
    `${coat}: work from ${start} to ${end}, dry ${dry}`,
  begins: "Work begins",
  ends: "Work ends",
  dry: "Dry",
  allBatches: (count: number) => `Show all ${count} batches`,
  caution:
    "Solvent, spray and dust: follow the maker's safety data sheet and local rules for ventilation, fire and breathing protection.",
  sawCaution:
    "Saw: guard and riving knife on, push stick, eye and ear protection, dust extraction; long parts need support behind the blade.",
};
