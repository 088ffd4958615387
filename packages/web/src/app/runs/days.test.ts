import { expect, it } from "vitest";
import { dayOf, dayText, shortDay, weekday } from "./days.ts";

it.each([
  ["1970-01-01", 0, 3],
  ["2026-11-30", 20_787, 0],
  ["2028-02-29", 21_243, 1],
  ["1969-12-31", -1, 2],
])("%s is day %d, and day %d of its week", (text, day, place) => {
  expect(dayOf(text)).toBe(day);
  expect(dayText(day)).toBe(text);
  expect(weekday(day)).toBe(place);
  expect(shortDay(day)).toBe(text.slice(5));
});

it("knows what is no day", () => {
  expect(dayOf("soon")).toBeNull();
});
