import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["packages/**/*.test.ts", "examples/**/*.test.ts", "tools/**/*.test.ts", "prove/**/*.test.ts"],
    testTimeout: 60_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
