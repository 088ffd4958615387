/** Boards: register, stuffing, soldering, tests. */
export const boards = {
  empty: "No board is in the machine yet.",
};
