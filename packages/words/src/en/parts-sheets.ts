/** Words of the lists of parts. */
export const partsSheets = {
  all: "Everything in one machine",
  allShort: "All parts",
  allHint:
    "All levels added up: what is in a harness, board, mechanism or panel is counted here, and the assembly itself as well. Wire as cut, sheet goods as cut before waste; spares and what is spoilt are not in it.",
  byAssembly: "By assembly",
  byAssemblyHint: "What is directly in one of each. Assemblies within it have a list of their own.",
  part: "Part",
  name: "Name",
  inOne: "In one machine",
  forMachines: (machines: number) => `For ${machines} machines`,
  quantity: "Quantity",
  unit: "Unit",
  comes: "Comes as",
  made: "Rev., material, finish",
  at: "Where",
  kinds: {
    harness: "Harnesses",
    board: "Boards",
    panel: "Panels",
    mechanism: "Mechanisms",
    part: "Parts",
    unnamed: "Used, but without a part",
  },
  sources: { buy: "bought", make: "made", "have-made": "made outside" },
  units: { each: "", m: "m", m2: "m²", kg: "kg", l: "l" },
  timesInOne: (times: string) => `${times} in one machine`,
  missing: (count: number) =>
    count === 1
      ? "1 thing has no part: nobody orders it."
      : `${count} things have no part: nobody orders them.`,
  kindsOfParts: (count: number) => (count === 1 ? "1 kind of part" : `${count} kinds of parts`),
} as const;
