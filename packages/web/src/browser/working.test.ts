import { expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

/** A worker that is at everything for two seconds longer: a large book on a slow computer. */
const SLOW_WORKER = `
  window.Worker = class extends Worker {
    set onmessage(heard) {
      let ending;
      super.onmessage = (event) => {
        if (event.data.type !== "working") return heard(event);
        clearTimeout(ending);
        if (event.data.working) heard(event);
        else ending = setTimeout(() => heard(event), 2000);
      };
    }
  };
`;

it("says so when work takes longer than a moment, and leaves what was there", {
  timeout: PATIENCE_MS,
}, async () => {
  const other = await someoneElse(app.address());
  const { page, complaints } = await app.look({ language: "zh" });
  await page.addInitScript(SLOW_WORKER);
  await page.goto("/b/first-light/layout/pf/under");
  const working = page.getByText("正在计算……目前显示的是之前的结果。");
  await openBook(page, "/b/first-light/layout/pf/under");
  const shown = page.locator(".drawing .item");
  await shown.first().waitFor({ state: "attached" });
  const count = await shown.count();
  await working.waitFor({ state: "detached" });
  await other.put("first-light", "devices", "sw.top", "x_mm", "201");
  await working.waitFor();
  expect(await shown.count()).toBe(count);
  await working.waitFor({ state: "detached" });
  expect(complaints).toEqual([]);
});
