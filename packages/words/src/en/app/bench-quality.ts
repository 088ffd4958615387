const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Defects, yields, control charts and capability. */
export const benchQuality = {
  span: "Time",
  spans: {
    week: "last 7 days",
    month: "last 30 days",
    quarter: "last 90 days",
    year: "last 365 days",
    all: "everything",
  },
  kind: "Kind",
  allKinds: "all",
  percent: (share: number) => {
    const rest = Math.min(share, 1 - share);
    return `${(100 * share).toFixed(rest <= 0 ? 0 : rest < 0.001 ? 2 : rest < 0.01 ? 1 : 0)} %`;
  },
  of: (x: number, count: number) => `${x} of ${count}`,
  between: (low: string, high: string) => `${low} to ${high}`,

  defects: {
    title: "Defects",
    about:
      "What went wrong, where, why, and whether the tests after the mend were passed. Open ones come first.",
    none: "No defect in this time.",
    empty:
      "No defect was recorded yet. Here belongs what the floor finds wrong with boards, harnesses, mechanisms and machines: a tap on the drawing, a photo, the cause and the mend.",
    emptyHow: "On the tablet: “Something is wrong”, then what and where.",
    some: (shown: number, all: number) =>
      `The last ${shown} of ${all} defects; choose a shorter time to count all.`,
    counts: (open: number, mended: number) => `${n(open, "open", "open")}, ${mended} mended`,
    list: "Defects",
    unit: "Unit",
    what: "What",
    where: "Where",
    found: "Found",
    station: "Station",
    cause: "Cause",
    mend: "Mend",
    retest: "Tests since",
    open: "open",
    minutes: (minutes: number) => `${minutes} min`,
    retests: { passed: "passed", failed: "failed", none: "none yet" },
    noPlace: "not said",
    noKey: "not said",
    at: (x: number, y: number) => `${x} / ${y} mm`,
    onPanel: (panel: string, place: string) => `${panel}: ${place}`,
    only: (what: string) => `Only ${what}`,
    showAll: "Show all",
  },

  pareto: {
    title: "What goes wrong most",
    about: "The most comes first; the line adds up to everything. A bar leads to its units.",
    by: "By",
    bys: {
      what: "what is wrong",
      board: "board",
      harness: "harness",
      type: "kind of unit",
      station: "station",
      part: "part",
      cause: "cause",
    },
    measure: "Counted in",
    measures: { count: "defects", minutes: "minutes of mending" },
    chart: (by: string) => `Defects by ${by}`,
    count: "Defects",
    minutes: "Minutes",
    cumulative: "Added up",
    rest: (bars: number) => `${n(bars, "more stands", "more stand")} in the table.`,
    noMinutes: "Nobody recorded minutes of mending in this time.",
    none: "No defect of that kind in this time.",
  },

  yields: {
    title: "First-pass yield",
    about:
      "Units that were good at the first reading of every test, with nothing to mend. With each share stands the interval that holds the true one with 95 % confidence (Wilson 1927).",
    none: "No unit took its first test in this time.",
    byType: "By kind of unit",
    byTest: "By test",
    byStation: "By station",
    type: "Kind of unit",
    test: "Test",
    station: "Station",
    noStation: "not said",
    units: "Units",
    first: "At the first try",
    last: "In the end",
    share: "Share",
    interval: "95 % interval",
    rolled: "Rolled",
    rolledAbout:
      "The product of the first-pass yields of all its tests: the share that comes through all of them if they fail by chance.",
    perUnit: "Defects a unit",
    expected: (share: string) => `${share} without one, if they fall at random`,
    failed: "Failed at the first try",
    failedSome: (shown: number, all: number) => `The last ${shown} of ${all}.`,
    nowGood: "good now",
    nowBad: "not good yet",
  },

  map: {
    title: "Where defects sit",
    about:
      "Each dot is a defect on the drawing; a ring is one that is still open. Numbers are counts at one part.",
    on: "Drawing",
    none: "No defect in this time has a place on a drawing.",
    picture: (name: string, count: number) => `${name}: ${n(count, "defect", "defects")}`,
    sides: { top: "top", under: "underside" },
    table: "Defects by part",
    part: "Part",
  },

  charts: {
    title: "Control charts",
    about:
      "Whether a measurement is steady, and whether it keeps within the design’s limits. Control limits come from the readings; specification limits only from the design.",
    test: "Measurement",
    points: "Points",
    sizes: {
      1: "single readings and moving ranges",
      more: (size: number) => `means and ranges of ${size} units in a row`,
    },
    most: "Readings",
    mostOf: (most: number) => `the last ${most}`,
    empty:
      "Nothing was measured yet. Here belong the readings of every measured test: control chart, histogram and capability.",
    emptyHow:
      "The tests of the book that are measured are made at the bench; each reading comes here by itself.",
    noTests: "The book has no test that is measured. A designer writes them in the table of tests.",
    fewer: "Two readings are needed before a chart says anything; this measurement has fewer.",
    computing: "Computing …",
    first:
      "Only the first reading of each unit counts: what was mended or tried again says nothing of how well it was made.",
    leftOut: {
      again: (count: number) => n(count, "later reading", "later readings"),
      withoutValue: (count: number) => n(count, "reading without a value", "readings without a value"),
      outOfCalibration: (count: number) =>
        n(count, "reading by an instrument out of calibration", "readings by instruments out of calibration"),
    },
    leftOutAll: (what: string) => `Left out: ${what}. Corrected readings never count.`,
    noneLeftOut: "Corrected readings never count.",
    values: { single: "Readings", sample: "Means" },
    ranges: { single: "Moving ranges", sample: "Ranges" },
    order: "Unit after unit, the oldest first",
    histogram: "How the readings are spread",
    histogramPicture: (count: number) => `Histogram of ${count} readings`,
    picture: (name: string, count: number, signals: number) =>
      `${name}: ${count} points, ${n(signals, "signal", "signals")}`,
    units: "Units",
    thinned: (shown: number, all: number) =>
      `${shown} of ${all} points are drawn: of those that lie on top of each other the highest and lowest. All are computed with.`,
    lines: {
      centre: "centre line",
      control: "control limits, from the readings",
      specification: "specification limits, from the design",
      signal: "a rule is broken",
      outside: "outside the design’s limits",
    },
    tip: (unit: string, value: string, at: string) => `${unit}: ${value}, ${at}`,
    signals: "Rules broken",
    noSignals: "No rule is broken: the process is steady as far as these readings show.",
    rule: "Rule",
    ruleAt: "Where",
    rules: {
      beyond: "one point beyond a control limit",
      "one-side": "nine in a row on one side of the centre line",
      trend: "six in a row rising or falling",
      alternating: "fourteen in a row going up and down by turns",
      "two-of-three": "two of three beyond two deviations on one side",
      "four-of-five": "four of five beyond one deviation on one side",
      hugging: "fifteen in a row within one deviation",
      "two-humps": "eight in a row beyond one deviation on either side",
    },
    rulesFrom: "Tests of L. S. Nelson, Journal of Quality Technology 16, 1984.",
    onRanges: "moving range or range beyond its limit",
    rest: (count: number) => `and ${count} more`,
    figures: "Figures",
    figure: {
      count: "Readings",
      mean: "Mean",
      within: "Deviation within",
      overall: "Deviation of all",
      lower: "Design, least",
      upper: "Design, most",
      noLimit: "none",
      normal: "Chance of this if normal",
    },
    capability: "Capability",
    capabilityAbout:
      "Cp and Cpk with the deviation within, from ranges; Pp and Ppk with that of all readings. With 95 % confidence the true figure lies in the interval.",
    noLimits: "The design gives this test no limits, so there is no capability to state.",
    noSpread: "All readings are the same, so there is no capability to state.",
    outside: "Expected outside",
    outsideAbout: "Share beyond the design’s limits if the readings are normal.",
    oneLimit: "one limit only",
    doubts: {
      "out-of-control":
        "The process is not in control: these figures say how it was, not how it will be. Find the causes of the signals first.",
      few: (count: number, enough: number) =>
        `${n(count, "reading is", "readings are")} few; below ${enough} look at the interval, not at the figure.`,
      "not-normal": "The readings are not normal (Anderson–Darling): the expected share outside is a guess.",
      coarse:
        "The readings take only a few different values: the instrument or its rounding is too coarse for this.",
    },
  },
};
