export { type About, aboutId, knownIds, type PointAbout, type WireAbout } from "./about.ts";
export { acceptSubject } from "./accept.ts";
export { harnessOrder, Line } from "./line.ts";
