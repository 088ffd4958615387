/** Bench: what was built, tested and recorded. */
export const bench = {
  tabs: {
    units: "Units",
    trace: "Trace and recall",
    defects: "Defects",
    charts: "Charts",
    floor: "Floor now",
    sites: "Sites",
    minutes: "Minutes",
    records: "Records",
  },
  notYet: "This page shows nothing yet.",
  noMemory: "This browser keeps nothing on the device, so nothing can be recorded here:",
  continuityOf: (harness: string) => `Continuity: ${harness}`,
  thisComputer: "at this computer",
};
