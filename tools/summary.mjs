// Prints the closing line of a test run: how many tests passed, failed and were skipped. Of a file that was run again,
// the later report counts.
import { readFileSync } from "node:fs";

const [first, ...later] = process.argv.slice(2).map((path) => JSON.parse(readFileSync(path, "utf8")));
const files = new Map();
for (const { testResults } of [first, ...later]) for (const file of testResults) files.set(file.name, file);
const tests = [...files.values()].flatMap(({ assertionResults }) => assertionResults);
const count = (...states) => tests.filter(({ status }) => states.includes(status)).length;
const [passed, skipped] = [count("passed"), count("pending", "skipped", "todo", "disabled")];
const broken = [...files.values()].filter(
  ({ status, assertionResults }) =>
    status === "failed" && !assertionResults.some((test) => test.status === "failed"),
).length;
const failed = tests.length - passed - skipped + broken;
const again = later.reduce((sum, { testResults }) => sum + testResults.length, 0);
console.log(
  `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}${
    again > 0 ? ` (${again} ${again === 1 ? "file" : "files"} run again alone)` : ""
  }`,
);
if (passed === 0 || failed > 0) process.exitCode = 1;
