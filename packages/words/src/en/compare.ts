/** What differs between two revisions. */
export const compare = {
  nothing: "nothing",
  yes: "yes",
  and: (list: readonly string[]): string =>
    list.length < 2 ? (list[0] ?? "") : `${list.slice(0, -1).join(", ")} and ${list[list.length - 1] ?? ""}`,
  sides: { top: "top side", under: "underside" },
  tables: {
    machine: "Machine",
    outlines: "Outline",
    bill: "Parts in a machine",
    findings: "Finding",
    wires: "Wires",
    harnesses: "Harness",
    devices: "Device",
    boards: "Board",
    mechanisms: "Mechanism",
    fasteners: "Fastener",
    inlines: "In-line connector",
    steps: "Step",
    choices: "Decision",
    panels: "Panel",
    nets: "Net",
    fuses: "Fuse",
    supplies: "Supply",
    parts: "Part",
    tests: "Test",
  },
  isNew: "is new",
  isNewOn: (type: string, panel: string, side: string) => `is new: ${type}, on the ${side} of ${panel}`,
  isGone: "is gone",
  renamed: (from: string, to: string) => `was ${from} and is now called ${to}`,
  moved: (mm: string) => `moved by ${mm} mm`,
  movedAlong: (mm: string, dx: string, dy: string) => `moved by ${mm} mm (x ${dx}, y ${dy})`,
  turned: (from: string, to: string) => `is turned to ${to}° (was ${from}°)`,
  putOn: (fromPanel: string, fromSide: string, panel: string, side: string) =>
    `is now on the ${side} of ${panel} (was on the ${fromSide} of ${fromPanel})`,
  type: (from: string, to: string) => `is now a ${to} (was a ${from})`,
  named: (from: string, to: string) => `is now called “${to}” (was “${from}”)`,
  uses: (from: string, to: string) => `now uses ${to} (was ${from})`,
  joined: (pin: string, from: string, to: string) => `pin ${pin} is now on ${to} (was on ${from})`,
  wireLonger: (wire: string, mm: string, to: string) => `its wire ${wire} is ${mm} mm longer (now ${to} mm)`,
  wireShorter: (wire: string, mm: string, to: string) =>
    `its wire ${wire} is ${mm} mm shorter (now ${to} mm)`,
  wireColour: (wire: string, from: string, to: string) => `its wire ${wire} is now ${to} (was ${from})`,
  wireType: (wire: string, from: string, to: string) =>
    `its wire ${wire} is now made with ${to} (was ${from})`,
  wireEnd: (wire: string, from: string, to: string) =>
    `its wire ${wire} now ends at ${to} (ended at ${from})`,
  wireNumber: (from: string, to: string) => `its wire ${from} is now numbered ${to}`,
  wireNet: (wire: string, from: string, to: string) => `its wire ${wire} now belongs to ${to} (was ${from})`,
  wireNew: (wire: string, colour: string, type: string, mm: string, from: string, to: string) =>
    `has a new wire ${wire}: ${colour}, ${type}, ${mm} mm, from ${from} to ${to}`,
  wireGone: (wire: string) => `its wire ${wire} is gone`,
  wires: (count: number, least: string, most: string) =>
    `${count} of its wires change by ${least} to ${most} mm`,
  wiresLonger: (count: number, least: string, most: string) =>
    least === most
      ? `${count} of its wires are ${most} mm longer`
      : `${count} of its wires are ${least} to ${most} mm longer`,
  wiresShorter: (count: number, least: string, most: string) =>
    least === most
      ? `${count} of its wires are ${most} mm shorter`
      : `${count} of its wires are ${least} to ${most} mm shorter`,
  field: (column: string, from: string, to: string) => `${column}: ${to} (was ${from})`,
  fieldOf: (table: string, key: string, column: string, from: string, to: string) =>
    `${table} ${key}, ${column}: ${to} (was ${from})`,
  rowNew: (table: string, key: string) => `${table}: ${key} is new`,
  rowGone: (table: string, key: string) => `${table}: ${key} is gone`,
  decided: (kind: string, of: string, to: string, from: string) =>
    `${kind} of ${of} is decided: ${to} (was ${from})`,
  undecided: (kind: string, of: string, from: string) =>
    `${kind} of ${of} is no longer decided (was ${from})`,
  kinds: {
    colour: "colour",
    "wire-type": "wire type",
    chain: "order of the chain",
    trunk: "trunk",
    attach: "where a tail leaves",
    "splice-place": "place of the splice",
    "wire-number": "wire number",
    peg: "place of a peg",
    key: "key",
    spare: "spare",
    matrix: "line of the matrix",
    step: "step",
    time: "time",
    symbol: "screw symbol",
    station: "station",
    accept: "acceptance",
  },
  count: (from: string, to: string, unit: string) => `${to}${unit} in a machine (was ${from}${unit})`,
  units: { each: "", m: " m", m2: " m²", kg: " kg", l: " l" },
  symbol: (from: string, to: string) => `its screw symbol is now ${to} (was ${from})`,
  stepOrder: (from: string, to: string) => `is now number ${to} in the order (was ${from})`,
  stepNew: (number: string) => `is new, number ${number} in the order`,
  stepGone: (number: string) => `is gone (was number ${number})`,
  stepIn: (list: string) => `now also takes in ${list}`,
  stepOut: (list: string) => `no longer takes in ${list}`,
  stepSame: "takes in the same in another order",
  stepMinutes: (from: string, to: string) => `takes ${to} min (was ${from} min)`,
  drawn: "is drawn otherwise",
  findingNew: (severity: string, title: string, of: string) => `new ${severity}: ${title} (${of})`,
  findingGone: (severity: string, title: string, of: string) =>
    `${severity} no longer there: ${title} (${of})`,
  accepted: (title: string, of: string, by: string, why: string) =>
    `accepted by ${by}: ${title} (${of}), because ${why}`,
  noLongerAccepted: (title: string, of: string) => `no longer accepted: ${title} (${of})`,
  severities: { error: "error", warning: "warning", note: "note" },
  harnessDoes: {
    fits: "can be used as it is",
    "longer-tails": "needs longer tails",
    rework: "must be reworked",
    scrap: "is not worth reworking",
    gone: "is no longer used",
  },
};
