import { describe, expect, it } from "vitest";
import { openApi } from "./open-api.ts";
import type { Route } from "./route.ts";
import { pathTo, ROUTES } from "./routes.ts";

describe("routes", () => {
  it("are told apart by method and path, and all stand in the OpenAPI document", () => {
    const all = Object.values<Route>(ROUTES).map((r) => `${r.method} ${r.path.replace(/:\w+/g, ":")}`);
    expect(new Set(all).size).toBe(all.length);
    const { paths } = openApi("1");
    const written = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path.replace(/\{\w+\}/g, ":")}`),
    );
    expect(written.sort()).toEqual(all.sort());
  });

  it("escape what they are given", () => {
    expect(pathTo("jobFile", { job: "j1", file: "a/b ü.pdf" })).toBe("/api/jobs/j1/files/a%2Fb%20%C3%BC.pdf");
    expect(pathTo("changesSince", { book: "b" }, { since: 3 })).toBe("/api/books/b/changes?since=3");
  });
});
