import { begins, like, type Walk } from "./floor-walk.ts";
import type { Given } from "./machine-parts.ts";
import { goodValue, type OtherHands } from "./other-hands.ts";

/** The resistance of an earth bond that is loose, Ω. */
const BAD_OHM = 0.4;
/** Values that the design has for tests that measure, by the name of the test; null: it is only judged. */
type Values = ReadonlyMap<string, number | null>;

/** Does what is on the screen: scans whatever has a number of its own into its place, and ends the step. */
export async function stepByTaps(at: Walk, others: OtherHands, given: Given): Promise<string> {
  const { page, says, on, tap } = at;
  const title = page.locator(".bench-text").getByRole("heading", { level: 1 });
  await title.waitFor();
  const name = (await title.textContent()) ?? "";
  const places = others.filledBy(name);
  for (const { id } of places) await at.scan(given.get(id) ?? "");
  if (places.length > 0) await page.getByText(says.fit.filled(places.length, places.length)).waitFor();
  await on(() => tap(says.work.doneNext));
  return name;
}

/** Goes to another station with the tablet and takes the machine up there. */
export async function moveTo(
  { says, see, tap, on, scan }: Walk,
  station: string,
  machine: string,
): Promise<void> {
  await on(() => tap(says.close));
  await tap(new RegExp(says.place.change, "u"));
  await tap(station);
  await see(says.pick.title);
  await scan(machine);
}

/** Waits for a test, past the caution that comes before it; its name. */
export async function testName({ page, says, words, tap, button }: Walk): Promise<string> {
  const ready = button(says.test.good)
    .or(button(says.test.take))
    .or(button(like(words.floorMeasure.walk.allGood(Number.NaN))));
  const understood = button(says.work.understood);
  await ready.or(understood).first().waitFor();
  if (await understood.isVisible()) await tap(says.work.understood);
  await ready.first().waitFor();
  return (await page.getByRole("heading", { level: 1 }).textContent()) ?? "";
}

/** Goes along all devices of a test, stretch by stretch. */
async function alongDevices({ page, words, tap, on }: Walk): Promise<void> {
  const own = words.floorMeasure.walk;
  const good = like(own.allGood(Number.NaN));
  const told = page.getByText(like(own.stretch(1, Number.NaN)));
  const stretches = Number(/([0-9]+)[^0-9]*$/u.exec((await told.textContent()) ?? "")?.[1]);
  for (let at = 1; at < stretches; at++) {
    await page.getByText(own.stretch(at, stretches)).waitFor();
    await tap(good);
  }
  await page.getByText(own.stretch(stretches, stretches)).waitFor();
  await on(() => tap(good));
}

/** Passes the test that is on the screen: device by device, by the value that its design has, or by one tap. */
async function passTest(at: Walk, values: Values): Promise<string> {
  const { says, words, on, tap, button } = at;
  const name = await testName(at);
  const value = values.get(name) ?? null;
  if (await button(like(words.floorMeasure.walk.allGood(Number.NaN))).isVisible()) await alongDevices(at);
  else await on(() => (value === null ? tap(says.test.good) : at.measure(value)));
  return name;
}

/** An earth bond that is loose: measured, told with the place on the drawing of the coin door, and mended. */
export async function looseBond({ page, says, see, tap, tapOn, on, measure }: Walk): Promise<void> {
  await measure(BAD_OHM);
  await see(says.test.out);
  await on(() => tap(says.test.recordBad));
  await see(says.defect.whats["test-failed"]);
  await tap("投币门");
  await tap(says.defect.top);
  await tapOn(page.getByRole("img", { name: begins("投币门") }));
  await page.getByText(begins(says.defect.at(""))).waitFor();
  await on(() => tap(says.defect.record));
  await see(says.mend.title);
  await tapOn(
    page.locator(".floor-tiles").getByRole("button", { name: begins(says.defect.whats["test-failed"]) }),
  );
  await tap(says.mend.causes.work);
  await page.getByText(says.mend.none).waitFor();
}

/** Goes on with whatever is on the screen until nothing is left; what it was. */
export async function toTheEnd(
  at: Walk,
  others: OtherHands,
  given: Given,
  { book, unit }: { readonly book: string; readonly unit: string },
): Promise<readonly string[]> {
  const { page, says, button } = at;
  const { tests } = others.work("machine", book);
  const values: Values = new Map(
    tests.map((test) => [test.labelZh, test.kind === "measure" ? goodValue(test) : null]),
  );
  const names: string[] = [];
  for (;;) {
    const step = page.locator(".bench-text");
    const end = page.getByRole("heading", { name: begins(says.hand.title) });
    const test = page.getByText(says.test.of(unit)).or(button(says.work.understood));
    await step.or(end).or(test).first().waitFor();
    if (await end.isVisible()) return names;
    names.push((await step.isVisible()) ? await stepByTaps(at, others, given) : await passTest(at, values));
  }
}
