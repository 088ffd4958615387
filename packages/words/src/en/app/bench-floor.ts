const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** The live floor page, and what is at which site. */
export const benchFloor = {
  title: "Floor now",
  empty:
    "Nothing is in work. Here belongs every unit that was begun and not released: at which stage it is, and what keeps it.",
  emptyHow: "Give out serial numbers on the tab Units; from then on the floor is seen here.",
  noRun: "Without a run",
  screen: "Full screen",
  leave: "Leave",
  asOf: (time: string) => `as of ${time}`,
  live: "live",
  notCurrent: (time: string) => `NOT CURRENT: as of ${time}`,
  page: (at: number, of: number) => `${at} / ${of}`,
  more: "More",
  hold: "Hold this page",
  turn: "Turn pages",
  stage: "Stage",
  atBench: "At the bench",
  kinds: { machine: "Machines", board: "Boards", harness: "Harnesses", mechanism: "Mechanisms" },
  released: (done: number, of: number) => `${done} of ${of} released`,
  begun: "Begun",
  today: "Today at the first try",
  todayNone: "nothing tested yet today",
  todayYield: (first: number, units: number) => `${first} of ${units}`,
  defectsToday: (count: number) => n(count, "defect today", "defects today"),

  stuck: "Stuck",
  noStuck: "Nothing is stuck.",
  quietAfter: "Quiet after",
  hours: (hours: number) => n(hours, "hour", "hours"),
  why: {
    defect: (what: string) => `open defect: ${what}`,
    test: (test: string) => `failed: ${test}`,
    way: (site: string) => `on the way to ${site}`,
    quiet: "nothing recorded",
  },
  since: (minutes: number) =>
    minutes < 60
      ? `${minutes} min`
      : minutes < 48 * 60
        ? `${Math.floor(minutes / 60)} h`
        : `${Math.floor(minutes / 1440)} d`,
  others: (count: number) => `+${count}`,

  waits: "Who waits for what",
  waitsUnknown: "Not known yet: the book is being opened.",
  noWaits: "No machine waits for a board or a harness.",
  waitsFor: (machines: number) => n(machines, "machine waits for", "machines wait for"),
  waitLine: (missing: number, inWork: number, ready: number) =>
    [
      `${missing} missing`,
      ready > 0 ? `${ready} ready` : "",
      inWork > 0 ? `${inWork} in work` : "",
      ready + inWork < missing ? `${missing - ready - inWork} not begun` : "",
    ]
      .filter((text) => text !== "")
      .join(", "),
  shelf: "Nothing on the shelf of",

  sites: {
    title: "Sites",
    about:
      "What is where, what is on the way between sites, and what waits for the work of each site. A site that is cut off shows here as it was when it was last heard of.",
    noSites: "The shop has no sites. A designer writes them in the shop’s table of sites.",
    none: "Nothing in work is anywhere yet.",
    unknown: "Nobody said where",
    matrix: "Units by site and stage",
    site: "Site",
    all: "All",
    way: "On the way",
    noWay: "Nothing is on the way.",
    transport: (transport: string) => `Transport ${transport}`,
    to: (site: string) => `to ${site}`,
    sentAt: (when: string, ago: string) => `since ${when} (${ago})`,
    unitsOn: (out: number, counted: number) =>
      counted === 0 ? n(out, "unit", "units") : `${n(out, "unit", "units")} on it, ${counted} counted in`,
    missing: (count: number) => `${n(count, "unit is", "units are")} missing: the others were counted in.`,
    list: "Transport list",
    unit: "Unit",
    type: "Type",
    state: "State",
    states: { way: "on the way", missing: "missing", in: "counted in" },
    own: (site: string) => `Work at: ${site}`,
    noStages: "No stage of the shop has a bench at this site.",
    waits: "Waits there",
    coming: "Is coming",
    last: "Last heard of",
    never: "never",
    nothing: "nothing",
  },
};
