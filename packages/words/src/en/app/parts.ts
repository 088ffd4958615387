/** Parts: the bill, what they cost, and where they come from. */
export const parts = {
  empty: "No part is in the book yet.",
};
