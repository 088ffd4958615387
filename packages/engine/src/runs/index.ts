export { dayNumber, dayText } from "./days.ts";
