/** Machines that are reckoned with when nobody says how many. */
export const USUAL_MACHINES = 25;
export const MOST_MACHINES = 100_000;
