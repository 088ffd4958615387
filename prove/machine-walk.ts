/**
 * A whole machine of Tidewatch by taps: every step, every board and harness scanned into its place, every test in the order
 * of risk, until it may be released. Counts how often a finger comes down and a label is scanned. Its boards and harnesses
 * come built and tested. `npx tsx prove/machine-walk.ts`
 */
import { loadavg } from "node:os";
import { look, openBrowser } from "../packages/web/src/browser/testing/browser.ts";
import { lead } from "../packages/web/src/browser/testing/floor-hand.ts";
import { stand, walk } from "../packages/web/src/browser/testing/floor-walk.ts";
import { buildParts, giveParts } from "../packages/web/src/browser/testing/machine-parts.ts";
import { toTheEnd } from "../packages/web/src/browser/testing/machine-walk.ts";
import { gateOf, otherHands } from "../packages/web/src/browser/testing/other-hands.ts";
import { startApp } from "../packages/web/src/browser/testing/start-app.ts";
import { writeJson } from "./write-json.ts";

const BOOK = "tidewatch";

const app = await startApp();
const browser = await openBrowser();
try {
  const others = await otherHands(app.address, BOOK);
  const office = await lead(app.address);
  const given = await giveParts(office, others, BOOK);
  const [unit = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
  await buildParts(others, BOOK, given);
  const at = await walk((options) => look(browser, app.address, options), "zh");
  await stand(at, "守潮人", at.says.place.all);
  await at.scan(unit);
  const began = performance.now();
  const done = await toTheEnd(at, others, given, { book: BOOK, unit });
  const walkS = Math.round((performance.now() - began) / 1000);
  await at.page.getByText(at.words.floorBench.hand.complete).waitFor();
  await at.sent();
  const { blocks } = await gateOf(app.address, unit);
  const result = {
    book: BOOK,
    steps: others.work("machine", BOOK).stepIds.length,
    tests: others.work("machine", BOOK).tests.length,
    places: given.size,
    screens: done.length,
    ...at.hand(),
    walkS,
    blocks: blocks.length,
    complaints: at.complaints,
    load: loadavg()[0],
  };
  writeJson("machine-walk.json", result);
} finally {
  await browser.close();
  await app.stop();
}
