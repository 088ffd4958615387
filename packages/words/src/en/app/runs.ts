/** Runs: what a batch needs, when, and what it costs. */
export const runs = {
  empty: "No run is planned yet.",
};
