import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { goTo, type LookOptions, openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const PLACES = [
  ...[
    "layout",
    "layout/pf/under?id=sw.left",
    "wiring",
    "wiring?id=sw.left",
    "wiring?id=p24.fused",
    "wiring/currents",
    "wiring/currents/fuses?id=fuse.coils",
    "wiring/currents/ladder?id=s24",
    "harnesses",
    "harnesses/hs.deck",
    "boards",
    "boards/io",
    "boards/io?stage=2&people=2&way=bath",
    "boards/solder?machines=20",
    "boards/tests",
    "panels",
    "panels/cutting",
    "panels/fits",
    "panels/paint",
    "screws",
    "screws/pf/under?step=st.boards",
    "screws/bench/all/6",
    "steps",
    "steps/table",
    "steps/table?id=st.boards",
    "steps/learning",
    "steps/order",
    "parts",
    "parts?id=p.contact-25",
    "parts?view=list",
    "parts?view=level",
    "parts/ways",
    "parts/stock",
    "parts/stock?id=p.contact-25",
    "parts/outside",
    "runs",
    "bench",
    "bench/units/b-000001",
    "bench/trace",
    "bench/trace?part=p.contact-25",
    "bench/defects",
    "bench/charts",
    "bench/floor",
    "bench/sites",
    "bench/minutes",
    "bench/records",
    "findings",
    "findings?show=all",
    "tables/devices",
    "tables/machine",
    "tables/import",
    "sheets",
    "history",
    "revisions",
    "revisions/compare",
    "service",
    "service/faults",
    "service/thing/sw.left",
    "service/thing/fuse.coils",
    "service/problems",
    "service/problems?new=yes&about=sw.left",
  ].map((place) => `/b/first-light/${place}`),
  "/",
  "/print",
  "/set-up",
  "/people",
  "/audit",
];

/** Accessibility is the same on every size but where the page is built otherwise: on a phone. */
const LOOKS: readonly (Required<LookOptions> & { readonly axe: boolean })[] = [
  { language: "en", scheme: "light", screen: "desktop", axe: true },
  { language: "zh", scheme: "dark", screen: "desktop", axe: true },
  { language: "en", scheme: "light", screen: "phone", axe: true },
  { language: "zh", scheme: "light", screen: "tablet", axe: false },
  { language: "en", scheme: "dark", screen: "tablet upright", axe: false },
];

describe("every section", { timeout: 4 * PATIENCE_MS }, () => {
  it.each(LOOKS)("is accessible and fits: $language, $scheme, $screen", async ({ axe, ...options }) => {
    const { page, context, complaints } = await app.look(options);
    await openBook(page, "/b/first-light/findings");
    const found: string[] = [];
    for (const place of PLACES) {
      await goTo(page, place);
      if (axe) found.push(...(await accessFaults(page)).map((fault) => `${place}: ${fault}`));
      const px = await sidewaysPx(page);
      if (px > 0) found.push(`${place}: ${px} px wider than the screen`);
      if ((await page.getByText("There is no such place").count()) > 0) found.push(`${place}: no such place`);
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("would be found out if it were not accessible, or too wide", async () => {
    const { page } = await app.look();
    await openBook(page, "/b/first-light/findings");
    await page.evaluate(`
      const planted = document.createElement("div");
      planted.innerHTML = '<button></button><p style="color:#999;background:#fff">faint</p><input>' +
        '<div style="width:5000px;height:1px"></div>';
      document.body.append(planted);
    `);
    const found = (await accessFaults(page)).map((fault) => fault.split(":")[0]);
    expect(found).toEqual(expect.arrayContaining(["button-name", "color-contrast", "label"]));
    expect(await sidewaysPx(page)).toBeGreaterThan(1000);
  });

  it("speaks Chinese when the browser does, and English when asked to", async () => {
    const { page } = await app.look({ language: "zh" });
    await page.goto("/");
    await page.getByRole("link", { name: "初光" }).click();
    await page.getByRole("navigation").getByText("检查结果").click();
    await page.getByText("为什么重要").first().waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("zh-Hans");
    await page.getByRole("button", { name: /English/u }).click();
    await page.getByText("Why it matters").first().waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("en");
    await page.reload();
    await page.getByText("Why it matters").first().waitFor();
  });
});
