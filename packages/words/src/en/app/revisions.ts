/** Revisions: what was released, and what differs. */
export const revisions = {
  tabs: { releases: "Releases", compare: "Compare" },
};
